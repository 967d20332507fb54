#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A plan for a shift without one of its robots, and the effect on the seams.
struct PlanWithoutRobot {
  Plan plan;
  std::vector<std::string> taken_over;  ///< "WELDMENT/SEAM" that it would have welded first, now another's
  std::vector<std::string> unreached;   ///< that no other robot of its list is there for
  Findings findings;
};

/// Takes the robot out of the cell and of every seam's list. A seam that only it reaches keeps its list (an
/// empty one would mean all robots) and is listed in `unreached` and, as cell.robot-out.unreached (fail), in
/// the findings: it has to be welded manually or to wait. cell.robot-out.taken-over (note) counts a
/// weldment's seams that another robot takes. Whether the other one has the wire for it is checked by the
/// cycle. InputError at `where`: the cell has no such robot.
PlanWithoutRobot without_robot(const Plan& plan, std::string_view id,
                               const std::string& where = "--without-robot");

}  // namespace seamtakt
