#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "base/json/json_writer.hpp"
#include "cell/timeline/timeline.hpp"
#include "cell/timeline/to_manual.hpp"
#include "cli/common/command_line.hpp"
#include "cli/plan/plan_option.hpp"

namespace seamtakt::cli {

/// What a shift lacks, and what becomes of the seams.
struct ShiftOptions {
  std::string without_robot, output_plan;
  bool to_manual = false;

  bool given() const { return !without_robot.empty() || to_manual; }
};
/// Adds --without-robot, --to-manual and --output-plan. Returned: the first two, which another option may
/// exclude.
std::vector<Option> add_shift_options(const Command& command, ShiftOptions& options);

/// Where a seam goes that its robot doesn't weld: to another robot, by hand, or (neither) to nobody.
struct SeamMove {
  std::string weldment, seam, robot;
  std::optional<MovedSeam> by_hand;
};

/// A shift's plan is the loaded one; this is what makes it differ from the plan's file.
struct Shift {
  std::vector<SeamMove> seams;
  Findings findings;
};

/// `--without-robot ID` and `--to-manual`: the plan of a shift without that robot, in which seams that nobody
/// reaches are welded by hand, and what it means for the seams of one weldment or (empty) of all. The plan
/// stays where neither is given. InputError: the cell has no such robot; no arc share is stated; a plan is to
/// be written of which nobody welds some seams, or over the one that is read, or over a file of another kind.
Shift take_shift(LoadedPlan& loaded, const ShiftOptions& options, const std::string& weldment = "");

/// The weldment of each seam that is welded by hand instead.
std::vector<std::string> weldments_by_hand(const Shift& shift);

/// Which robots weld the seams in these cycles.
void tell_robots(Shift& shift, const std::vector<CycleResult>& cycles);

/// Adds what the cycle or line found; a seam that no robot reaches without the one that is out is reported
/// once.
void add_findings_without_robot(const Findings& found, Findings& findings);

/// A line a seam; empty where no seam goes elsewhere.
std::string shift_text(const Shift& shift);
/// The member "moved_seams" of the open object.
void write_shift(JsonWriter& json, const Shift& shift);

/// Writes the shift's plan to --output-plan where that is given; returned: the line that says so.
std::string save_shift_plan(const Plan& plan, const ShiftOptions& options);

}  // namespace seamtakt::cli
