#pragma once

#include <string>

#include "base/finding.hpp"
#include "cli/plan/plan_option.hpp"

namespace seamtakt::cli {

/// `--without-robot ID`: the plan of a shift without that robot, and what it means for the seams of one
/// weldment or (empty) of all. Nothing where no robot is named. InputError where the cell has none of that
/// id.
Findings take_robot_out(LoadedPlan& loaded, const std::string& robot, const std::string& weldment = "");

/// Adds what the cycle or line found; a seam that nobody reaches for want of the robot that is out is said
/// once.
void add_findings_without_robot(const Findings& found, Findings& findings);

}  // namespace seamtakt::cli
