#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A plan for a shift without one of its robots, and what that means for the seams.
struct PlanWithoutRobot {
  Plan plan;
  std::vector<std::string> taken_over;  ///< "WELDMENT/SEAM" that it would have welded first, now another's
  std::vector<std::string> unreached;   ///< that no other robot of its list is there for
  Findings findings;
};

/// Takes the robot out of the cell and of every seam's list. A seam that only it reaches keeps its list (an
/// empty one would mean all robots) and stands in `unreached` and, as cell.robot-out.unreached (fail), in the
/// findings: it is to be welded by hand or to wait. cell.robot-out.taken-over (note) counts a weldment's
/// seams that another robot takes. Whether the other one has the wire for it is for the cycle to say.
/// InputError at `where`: the cell has no such robot.
PlanWithoutRobot without_robot(const Plan& plan, std::string_view id,
                               const std::string& where = "--without-robot");

}  // namespace seamtakt
