#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "plan/plan.hpp"
#include "plan/plan_index.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// A pass as the plan has it.
struct PlannedPass {
  const Weldment* weldment = nullptr;
  const Seam* seam = nullptr;
  int pass = 1;
  const Schedule* schedule = nullptr;
};

/// Finds what the plan says of a logged pass. Borrows the plan.
class PlannedPasses {
 public:
  explicit PlannedPasses(const Plan& plan);

  const Plan& plan() const { return plan_; }
  /// The only weldment of a plan with one; empty else.
  std::string_view only_weldment() const;
  const Seam* seam(std::string_view weldment, std::string_view seam) const;
  /// Empty where the plan doesn't know the pass. pass 0 (not logged) is 1 where the seam has a single pass.
  std::optional<PlannedPass> find(std::string_view weldment, std::string_view seam, int pass) const;
  /// The robot of this name; where it is unknown, the seam's first robot, else the cell's first; nullptr
  /// else.
  const Robot* robot(const Seam& seam, std::string_view logged) const;
  const Weldment* weldment(std::string_view id) const { return index_.weldment(id); }

 private:
  const Plan& plan_;
  PlanIndex index_;
  std::map<std::pair<std::string_view, std::string_view>, const Seam*> seams_;
};

/// The seam that a record names; nullptr where the plan has none such.
const Seam* planned_seam(const Plan& plan, const PassRecord& record);

/// Times cut off each arc to get its steady part (s): the schedule's, else the robot's.
double arc_start_s(const PlannedPass& planned, const Robot* robot);
double crater_fill_s(const PlannedPass& planned, const Robot* robot);

/// Width of the bins whose means are judged, where nobody sets one: the longer of 1 s and 5 weaves (common
/// practice, no source). A pulsed arc's 20 pulses are shorter from 20 Hz on.
double default_limits_window_s(const Schedule& schedule);

}  // namespace seamtakt
