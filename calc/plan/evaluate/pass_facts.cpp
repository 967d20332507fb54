#include "plan/evaluate/pass_facts.hpp"

#include <stdexcept>

namespace seamtakt {

namespace {

[[noreturn]] void unresolved(const std::string& place, const std::string& id) {
  throw std::logic_error(place + ": unresolved reference \"" + id + "\" in a plan that was checked");
}

}  // namespace

PassFacts pass_facts(const Plan& plan, const PlanIndex& index, const Weldment& weldment, const Seam& seam,
                     int pass) {
  const auto resolved = [&](const auto* found, const std::string& id) -> const auto& {
    if (!found) unresolved(pass_place(weldment.id, seam.id, pass), id);
    return *found;
  };
  const std::string& schedule_id = seam.schedules[static_cast<std::size_t>(pass - 1)];
  const Schedule& schedule = resolved(index.schedule(schedule_id), schedule_id);
  const PlanIndex::ScheduleParts& parts = index.parts_of(schedule);
  const Wire& wire = resolved(parts.wire, schedule.wire);
  return {plan,
          index,
          weldment,
          seam,
          pass,
          schedule,
          wire,
          parts.gas,
          parts.power_source,
          {&resolved(index.base_metal(seam.base_metals[0]), seam.base_metals[0]),
           &resolved(index.base_metal(seam.base_metals[1]), seam.base_metals[1])}};
}

}  // namespace seamtakt
