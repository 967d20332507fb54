#include "jobs/fit_job.hpp"

#include <algorithm>

namespace seamtakt::desk {

Plan with_existing_schedules(const Plan& plan, const FitResult& result) {
  Plan changed = plan;
  for (const FittedSeam& fitted : result.seams) {
    if (!fitted.is_existing) continue;
    const auto at = find_seam(changed, fitted.weldment, fitted.seam);
    if (!at) continue;
    auto& schedules = changed.weldments[at->weldment].seams[at->seam].schedules;
    std::ranges::replace(schedules, fitted.before.schedule, fitted.after.schedule);
  }
  return changed;
}

FitJob::FitJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void FitJob::ask(const PlanPtr& plan, const FitOptions& options) {
  worker_.queue([this, plan, options](unsigned) -> Worker::Said {
    const auto found = std::make_shared<const FoundFit>(FoundFit{plan, fit(*plan, options)});
    return [this, found] { emit answered(found); };
  });
}

}  // namespace seamtakt::desk
