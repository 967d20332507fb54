#include "jobs/schedule_trial.hpp"

#include <algorithm>

#include "document/plan_address.hpp"
#include "jobs/evaluator.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/window/seam_alone.hpp"

namespace seamtakt::desk {

namespace {

/// All passes of the seam are welded with the schedule.
TriedSchedule try_schedule(const Plan& plan, const Weldment& weldment, const Seam& seam,
                           const std::string& schedule) {
  Seam with = seam;
  with.schedules.assign(std::max<std::size_t>(1, seam.schedules.size()), schedule);
  TriedSchedule tried;
  try {
    const SeamAlone alone = seam_alone(plan, weldment, with);
    for (const Finding& finding : evaluate(alone.plan, date_of_today()).findings) {
      if (!lies_in(finding.where, alone.place())) continue;
      if (!tried.worst || tried.worst->severity < finding.severity) tried.worst = finding;
    }
  } catch (const InputError& error) {
    tried.refused = error;
  }
  return tried;
}

}  // namespace

ScheduleTrial::ScheduleTrial(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void ScheduleTrial::ask(const PlanPtr& plan, const SeamPlace& at) {
  worker_.start([this, plan, at](unsigned) -> Worker::Said {
    const Weldment& weldment = plan->weldments.at(at.weldment);
    auto tried = std::make_shared<TriedSchedules>();
    for (const Schedule& schedule : plan->schedules) {
      if (worker_.isStopped()) throw Worker::Stopped();
      tried->push_back(try_schedule(*plan, weldment, weldment.seams.at(at.seam), schedule.id));
    }
    return [this, tried] { emit answered(tried); };
  });
}

}  // namespace seamtakt::desk
