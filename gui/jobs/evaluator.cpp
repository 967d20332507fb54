#include "jobs/evaluator.hpp"

#include <QCoreApplication>
#include <QDateTime>
#include <QMetaObject>
#include <algorithm>

#include "plan/evaluate.hpp"

namespace seamtakt::desk {

namespace {

QDateTime now_utc() {
  bool given = false;
  const qlonglong epoch = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&given);
  return given ? QDateTime::fromSecsSinceEpoch(epoch, Qt::UTC) : QDateTime::currentDateTimeUtc();
}

void sort_findings(Results& results) {
  std::stable_sort(results.findings.begin(), results.findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
}

ResultsPtr evaluated(const PlanPtr& plan) {
  auto results = std::make_shared<Results>();
  results->plan = plan;
  results->evaluation = evaluate(*plan, date_of_today());
  results->findings = results->evaluation.findings;
  sort_findings(*results);
  return results;
}

ResultsPtr with_cycles(const Results& evaluated) {
  auto results = std::make_shared<Results>(evaluated);
  results->has_cycles = true;
  if (results->plan->cell)
    for (const Weldment& weldment : results->plan->weldments) {
      results->cycles.push_back(cycle_given(*results->plan, weldment, results->evaluation));
      const Findings& findings = results->cycles.back().findings;
      results->findings.insert(results->findings.end(), findings.begin(), findings.end());
    }
  sort_findings(*results);
  return results;
}

}  // namespace

std::string date_of_today() {
  return now_utc().date().toString(Qt::ISODate).toStdString();
}
std::string utc_moment() {
  return now_utc().toString(Qt::ISODate).toStdString();
}

ResultsPtr results_of(const PlanPtr& plan) {
  return with_cycles(*evaluated(plan));
}

Evaluator::Evaluator(QObject* parent) : QObject(parent) {
  thread_.setMaxThreadCount(1);
}

Evaluator::~Evaluator() {
  ++run_;
  thread_.waitForDone();
}

void Evaluator::evaluate(const PlanPtr& plan) {
  wanted_ = plan;
  ++run_;
  if (!busy_) begin();
}

void Evaluator::begin() {
  busy_ = true;
  thread_.start([this, plan = wanted_, run = run_.load()] {
    const auto give = [&](ResultsPtr results) {
      QMetaObject::invokeMethod(
          this, [this, run, results] { take(run, results); }, Qt::QueuedConnection);
    };
    try {
      const ResultsPtr first = evaluated(plan);
      give(first);
      give(run == run_.load() ? with_cycles(*first) : nullptr);
    } catch (const std::exception& error) {
      const QString reason = QString::fromUtf8(error.what());
      QMetaObject::invokeMethod(
          this, [this, reason] { emit failed(reason); }, Qt::QueuedConnection);
      give(nullptr);
    }
  });
}

void Evaluator::take(unsigned run, const ResultsPtr& results) {
  const bool last = !results || results->has_cycles;
  if (last) busy_ = false;
  if (run == run_ && results) {
    results_ = results;
    emit ready(results);
  }
  if (last && run != run_) begin();
}

void Evaluator::wait() {
  while (busy_) {
    thread_.waitForDone();
    QCoreApplication::processEvents();
  }
}

}  // namespace seamtakt::desk
