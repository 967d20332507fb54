#pragma once

#include <string_view>
#include <unordered_map>

#include "formula/tolerance/qualification_range.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Finds a plan's parts by id in constant time. Borrows the plan: it must outlive the index, unchanged.
/// Each look-up returns nullptr where there is no such id.
class PlanIndex {
 public:
  explicit PlanIndex(const Plan& plan);

  const BaseMetal* base_metal(std::string_view id) const { return at(base_metals_, id); }
  const Wire* wire(std::string_view id) const { return at(wires_, id); }
  const Gas* gas(std::string_view id) const { return at(gases_, id); }
  const PowerSource* power_source(std::string_view id) const { return at(power_sources_, id); }
  const Schedule* schedule(std::string_view id) const { return at(schedules_, id); }
  const Qualification* qualification(std::string_view id) const { return at(qualifications_, id); }
  /// What a schedule of the plan names; nullptr where it names none.
  struct ScheduleParts {
    const Wire* wire = nullptr;
    const Gas* gas = nullptr;
    const PowerSource* power_source = nullptr;
    /// What the schedule's qualification was tested with, by ISO 15614-1 or by AWS D1.1; at most one of them.
    const TestedWeld *iso_test = nullptr, *d1_1_test = nullptr;
    /// What the ranges of `iso_test` depend on, by the edition that its basis names, else the latest.
    QualifiedTest iso_ranges{};
  };
  const ScheduleParts& parts_of(const Schedule& schedule) const {
    return parts_[static_cast<std::size_t>(&schedule - first_schedule_)];
  }
  const Weldment* weldment(std::string_view id) const { return at(weldments_, id); }
  const Robot* robot(std::string_view id) const { return at(robots_, id); }

 private:
  template <class T>
  using Map = std::unordered_map<std::string_view, const T*>;
  template <class T>
  static const T* at(const Map<T>& map, std::string_view id) {
    auto found = map.find(id);
    return found == map.end() ? nullptr : found->second;
  }

  const Schedule* first_schedule_;
  std::vector<ScheduleParts> parts_;  ///< of each schedule, in their order
  Map<BaseMetal> base_metals_;
  Map<Wire> wires_;
  Map<Gas> gases_;
  Map<PowerSource> power_sources_;
  Map<Schedule> schedules_;
  Map<Qualification> qualifications_;
  Map<Weldment> weldments_;
  Map<Robot> robots_;
};

/// "BD-2/S03" and "BD-2/S03/pass 1": how findings, explanations and records name a place.
std::string seam_place(std::string_view weldment, std::string_view seam);
std::string pass_place(std::string_view weldment, std::string_view seam, int pass);

}  // namespace seamtakt
