#include "jobs/line_job.hpp"

namespace seamtakt::desk {

namespace {

LineResultPtr run_line_of(const LineQuestion& question, const Results& results) {
  const std::vector<Order> orders = read_orders(question.orders.toStdString(), *results.plan);
  LineRequest request;
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

LineJob::LineJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void LineJob::ask(const LineQuestion& question, const ResultsPtr& results) {
  worker_.queue([this, question, results](unsigned) -> Worker::Said {
    const LineResultPtr result = run_line_of(question, *results);
    return [this, result] { emit answered(result); };
  });
}

}  // namespace seamtakt::desk
