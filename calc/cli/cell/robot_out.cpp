#include "cli/cell/robot_out.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_node.hpp"
#include "cell/timeline/plan_order.hpp"
#include "cell/timeline/without_robot.hpp"
#include "cli/common/output.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt::cli {

namespace {

bool belongs_to(const Finding& finding, const std::string& weldment) {
  return weldment.empty() || finding.where == weldment || finding.where.starts_with(weldment + "/");
}

void check_output_plan(const ShiftOptions& options, const std::string& read) {
  if (options.output_plan.empty()) return;
  if (!options.given())
    throw InputError("--output-plan", "neither --without-robot nor --to-manual"_word,
                     "one of the two, or both"_word);
  refuse_plan_that_is_read(read, options.output_plan, "--output-plan");
  check_output(options.output_plan, FileKind::plan);
}

/// A list that names the absent robot alone can't be written: nothing in the cell has that name.
void check_unreached(const ShiftOptions& options, const std::vector<std::string>& unreached) {
  if (options.output_plan.empty() || options.to_manual || unreached.empty()) return;
  throw InputError("--output-plan",
                   Sentence("cli.shift.refusal.unreached"_key, {{"seams", unreached.size()}}),
                   "--to-manual with it"_word);
}

/// "WELDMENT/SEAM" -> what became of it.
using MovedSeams = std::map<std::string, const MovedSeam*>;

MovedSeams by_place(const std::vector<MovedSeam>& moved) {
  MovedSeams places;
  for (const MovedSeam& seam : moved) places.emplace(seam_place(seam.weldment, seam.seam), &seam);
  return places;
}

std::string first_robot_of(const Plan& plan, const Seam& seam) {
  if (!seam.robots.empty()) return seam.robots.front();
  return plan.cell && !plan.cell->robots.empty() ? plan.cell->robots.front().id : std::string();
}

/// In the plan's order.
std::vector<SeamMove> seam_moves(const Plan& plan, const std::string& weldment_id,
                                 const PlanWithoutRobot& without, const MovedSeams& moved) {
  const std::set<std::string> taken_over(without.taken_over.begin(), without.taken_over.end()),
      unreached(without.unreached.begin(), without.unreached.end());
  std::vector<SeamMove> moves;
  for (const Weldment& weldment : plan.weldments) {
    if (!weldment_id.empty() && weldment.id != weldment_id) continue;
    for (const Seam& seam : weldment.seams) {
      const std::string place = seam_place(weldment.id, seam.id);
      if (const auto by_hand = moved.find(place); by_hand != moved.end())
        moves.push_back({weldment.id, seam.id, {}, *by_hand->second});
      else if (taken_over.contains(place))
        moves.push_back({weldment.id, seam.id, first_robot_of(plan, seam), {}});
      else if (unreached.contains(place))
        moves.push_back({weldment.id, seam.id, {}, {}});
    }
  }
  return moves;
}

/// What is said of a seam that is now welded by hand takes the place of "nobody reaches it".
Findings findings_of(PlanWithoutRobot& without, PlanToManual& manual, const MovedSeams& moved,
                     const std::string& weldment) {
  Findings findings;
  for (Finding& finding : without.findings)
    if (finding.rule != "cell.robot-out.unreached" || !moved.contains(finding.where))
      findings.push_back(std::move(finding));
  std::move(manual.findings.begin(), manual.findings.end(), std::back_inserter(findings));
  std::erase_if(findings, [&](const Finding& finding) { return !belongs_to(finding, weldment); });
  return findings;
}

Sentence sentence_of(const SeamMove& move) {
  const std::string place = printable(seam_place(move.weldment, move.seam));
  if (!move.by_hand)
    return move.robot.empty()
               ? Sentence("cli.shift.nobody"_key, {{"seam", place}})
               : Sentence("cli.shift.robot"_key, {{"seam", place}, {"robot", printable(move.robot)}});
  if (move.by_hand->schedule.empty())
    return Sentence("cli.shift.hand.no-schedule"_key,
                    {{"seam", place}, {"time", UnitValue{move.by_hand->hand_time_s / 3600, "h", 3}}});
  return Sentence("cli.shift.hand"_key, {{"seam", place},
                                         {"time", UnitValue{move.by_hand->hand_time_s / 60, "min", 3}},
                                         {"schedule", printable(move.by_hand->schedule)}});
}

/// An empty text is null.
std::optional<std::string> some(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(text);
}

void write_move(JsonWriter& json, const SeamMove& move) {
  json.begin_object(JsonWriter::Layout::compact).member("weldment", move.weldment).member("seam", move.seam);
  if (move.by_hand) {
    const char* basis = move.by_hand->schedule.empty() ? "no manual schedule" : "manual schedule";
    json.member("to", "manual").member("schedule", some(move.by_hand->schedule));
    json.member("hand_time_s", move.by_hand->hand_time_s).member("basis", basis);
  } else {
    json.member("to", some(move.robot));
    for (const char* key : {"schedule", "hand_time_s", "basis"}) json.null_member(key);
  }
  json.end_object();
}

}  // namespace

std::vector<Option> add_shift_options(const Command& command, ShiftOptions& options) {
  const Option without =
      command.option("--without-robot", options.without_robot, "the robot that is out for the shift");
  const Option manual = command.flag("--to-manual", options.to_manual,
                                     "seams that no robot reaches are welded by hand, as cell.manual states");
  command.option("--output-plan", options.output_plan, "write the shift's plan to this file");
  return {without, manual};
}

Shift take_shift(LoadedPlan& loaded, const ShiftOptions& options, const std::string& weldment) {
  check_output_plan(options, loaded.provenance.plan_file);
  if (!options.given()) return {};
  PlanWithoutRobot without;
  if (!options.without_robot.empty()) {
    without = without_robot(loaded.plan, options.without_robot);
    check_unreached(options, without.unreached);
    loaded.plan = std::move(without.plan);
  }
  PlanToManual manual;
  if (options.to_manual) {
    manual = to_manual(loaded.plan, evaluate(loaded.plan));
    loaded.plan = std::move(manual.plan);
  }
  Shift shift;
  const MovedSeams moved = by_place(manual.moved);
  shift.seams = seam_moves(loaded.plan, weldment, without, moved);
  shift.findings = findings_of(without, manual, moved, weldment);
  return shift;
}

std::vector<std::string> weldments_by_hand(const Shift& shift) {
  std::vector<std::string> weldments;
  for (const SeamMove& move : shift.seams)
    if (move.by_hand) weldments.push_back(move.weldment);
  return weldments;
}

void tell_robots(Shift& shift, const std::vector<CycleResult>& cycles) {
  for (SeamMove& move : shift.seams) {
    const auto cycle = std::find_if(cycles.begin(), cycles.end(),
                                    [&](const CycleResult& each) { return each.weldment == move.weldment; });
    if (!move.by_hand && cycle != cycles.end()) move.robot = robot_of(*cycle, move.seam);
  }
}

void add_findings_without_robot(const Findings& found, Findings& findings) {
  std::set<std::string> said;
  for (const Finding& finding : findings)
    if (finding.rule == "cell.robot-out.unreached") said.insert(finding.where);
  for (const Finding& finding : found)
    if (finding.rule != "cycle.robot.none" || !said.contains(finding.where)) findings.push_back(finding);
}

std::string shift_text(const Shift& shift) {
  if (shift.seams.empty()) return "";
  std::string text = "\n" + shown_text(Sentence("cli.shift"_key)) + "\n";
  for (const SeamMove& move : shift.seams) text += "  " + shown_text(sentence_of(move)) + "\n";
  return text;
}

void write_shift(JsonWriter& json, const Shift& shift) {
  json.key("moved_seams").begin_array();
  for (const SeamMove& move : shift.seams) write_move(json, move);
  json.end_array();
}

std::string save_shift_plan(const Plan& plan, const ShiftOptions& options) {
  if (options.output_plan.empty()) return "";
  const Plan shift = without_absent_robots(plan);
  check_plan(shift, options.output_plan);
  save_output(options.output_plan, FileKind::plan, write_plan(shift));
  return "\n" + shown_text(Sentence("cli.shift.written"_key, {{"file", options.output_plan}})) + "\n";
}

}  // namespace seamtakt::cli
