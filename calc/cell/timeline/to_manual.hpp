#pragma once

#include <string>
#include <vector>

#include "base/finding.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A seam that went to hand work.
struct MovedSeam {
  std::string weldment, seam;
  std::string schedule;    ///< its manual one; empty: it has none
  double hand_time_s = 0;  ///< without a manual schedule only a least one: of the robot's arc time
};

/// A plan whose seams that nobody reaches are welded by hand.
struct PlanToManual {
  Plan plan;
  std::vector<MovedSeam> moved;
  Findings findings;
};

/// Moves the seams that no robot of the cell can weld to hand work: `by` becomes manual, each pass gets the
/// manual schedule, robots and steps of the order go, and a manual_s of the weldment grows by the time by
/// hand (one that is absent follows from the seams, manual_stage_s). `evaluation` is of this plan.
/// Findings: cell.to-manual (note) for each seam; cell.to-manual.no-schedule (fail) for one without a manual
/// schedule: a robot's isn't weldable by hand, so its hours are the least that the robot's arc time alone
/// makes, and are marked so. A seam that has nothing to weld isn't moved. InputError at `where`: seams are to
/// be moved and the cell states no arc share (`cell.manual`).
PlanToManual to_manual(const Plan& plan, const Evaluation& evaluation,
                       const std::string& where = "--to-manual");

/// The plan as a file of its own: what names robots that the cell hasn't is left out of lists of seams and of
/// instruments. Only for a plan in which nobody's seams are moved: a list that named absent robots alone
/// would then mean all of them.
Plan without_absent_robots(Plan plan);

}  // namespace seamtakt
