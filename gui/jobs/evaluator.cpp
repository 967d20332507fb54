#include "jobs/evaluator.hpp"

#include <QDateTime>
#include <algorithm>

#include "plan/evaluate/evaluate.hpp"

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

Evaluator::Evaluator(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void Evaluator::evaluate(const PlanPtr& plan) {
  worker_.queue([this, plan](unsigned run) -> Worker::Said {
    const ResultsPtr first = evaluated(plan);
    worker_.say(run, [this, first] { take(first); });
    if (!worker_.isNewest(run)) return {};
    const ResultsPtr all = with_cycles(*first);
    return [this, all] { take(all); };
  });
}

void Evaluator::take(const ResultsPtr& results) {
  results_ = results;
  emit ready(results);
}

}  // namespace seamtakt::desk
