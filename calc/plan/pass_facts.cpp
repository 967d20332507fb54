#include "plan/pass_facts.hpp"

#include <stdexcept>

namespace seamtakt {

namespace {

template <class T>
const T& resolved(const T* found, const std::string& place, const std::string& id) {
  if (!found) throw std::logic_error(place + ": unresolved reference \"" + id + "\" in a plan that was checked");
  return *found;
}

}  // namespace

PassFacts pass_facts(const Plan& plan, const PlanIndex& index, const Weldment& weldment, const Seam& seam, int pass) {
  const std::string place = pass_place(weldment.id, seam.id, pass);
  const std::string& schedule_id = seam.schedules[static_cast<std::size_t>(pass - 1)];
  const Schedule& schedule = resolved(index.schedule(schedule_id), place, schedule_id);
  const Wire& wire = resolved(index.wire(schedule.wire), place, schedule.wire);
  return {plan,
          index,
          weldment,
          seam,
          pass,
          schedule,
          wire,
          index.gas(schedule.gas),
          index.power_source(schedule.power_source),
          {&resolved(index.base_metal(seam.base_metals[0]), place, seam.base_metals[0]),
           &resolved(index.base_metal(seam.base_metals[1]), place, seam.base_metals[1])}};
}

}  // namespace seamtakt
