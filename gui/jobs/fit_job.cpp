#include "jobs/fit_job.hpp"

namespace seamtakt::desk {

FitJob::FitJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void FitJob::ask(const PlanPtr& plan, const FitOptions& options) {
  worker_.queue([this, plan, options](unsigned) -> Worker::Said {
    const auto found = std::make_shared<const FoundFit>(FoundFit{plan, fit(*plan, options)});
    return [this, found] { emit answered(found); };
  });
}

}  // namespace seamtakt::desk
