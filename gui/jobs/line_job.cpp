#include "jobs/line_job.hpp"

#include <QCoreApplication>
#include <QMetaObject>

namespace seamtakt::desk {

namespace {

/// Fewer runs with different luck than the command line's: an answer within a second, that says its standard
/// error.
constexpr int runs = 60;

LineResultPtr run_line_of(const LineQuestion& question, const Results& results) {
  const std::vector<Order> orders = read_orders(question.orders.toStdString(), *results.plan);
  LineRequest request;
  request.runs = runs;
  request.level = question.level;
  request.cycle_of = [&](const Weldment& weldment) {
    for (const CycleResult& cycle : results.cycles)
      if (cycle.weldment == weldment.id) return cycle;
    return cycle_given(*results.plan, weldment, results.evaluation);
  };
  const Release release = question.carts.isEmpty()
                              ? release_all(orders)
                              : release_complete(orders, *results.plan, question.carts.toStdString());
  return std::make_shared<const LineResult>(
      simulate_line(*results.plan, results.evaluation, release, request));
}

}  // namespace

LineJob::LineJob(QObject* parent) : QObject(parent) {
  thread_.setMaxThreadCount(1);
}

LineJob::~LineJob() {
  ++run_;
  thread_.waitForDone();
}

void LineJob::ask(const LineQuestion& question, const ResultsPtr& results) {
  question_ = question;
  results_ = results;
  ++run_;
  if (!busy_) begin();
}

void LineJob::begin() {
  busy_ = true;
  thread_.start([this, question = question_, results = results_, run = run_] {
    LineResultPtr result;
    QString reason;
    try {
      result = run_line_of(question, *results);
    } catch (const std::exception& error) {
      reason = QString::fromUtf8(error.what());
    }
    QMetaObject::invokeMethod(
        this, [this, run, result, reason] { done(run, result, reason); }, Qt::QueuedConnection);
  });
}

void LineJob::done(unsigned run, const LineResultPtr& result, const QString& reason) {
  busy_ = false;
  if (run != run_) return begin();
  if (result)
    emit answered(result);
  else
    emit failed(reason);
}

void LineJob::wait() {
  while (busy_) {
    thread_.waitForDone();
    QCoreApplication::processEvents();
  }
}

}  // namespace seamtakt::desk
