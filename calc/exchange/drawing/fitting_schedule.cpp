#include "exchange/drawing/fitting_schedule.hpp"

#include "plan/rules/use_of_schedule.hpp"

namespace seamtakt {

const Schedule* fitting_schedule(const Plan& plan, const Seam& seam) {
  for (const Schedule& schedule : plan.schedules)
    if (schedule.use && use_holds(*schedule.use, seam)) return &schedule;
  return nullptr;
}

}  // namespace seamtakt
