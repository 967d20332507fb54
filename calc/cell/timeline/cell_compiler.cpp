#include "cell/timeline/cell_compiler.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"
#include "cell/timeline/balance.hpp"
#include "cell/travel/reach.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t most_robots = 64;  ///< as a set of bits has

}  // namespace

CompiledCell CellCompiler::compile(bool with_air_tables) {
  add_robots();
  const auto& seams = weldment_.seams;
  model_of_source_.assign(seams.size(), -1);
  if (std::any_of(seams.begin(), seams.end(), [](const Seam& seam) { return !seam.after.empty(); })) {
    for (std::size_t i = 0; i < seams.size(); ++i) source_of_id_.emplace(seams[i].id, i);
    refuse_circular_after();
  }
  for (std::size_t i = 0; i < weldment_.seams.size(); ++i) add_seam(i);
  for (auto& seam : model_.seams) add_after(seam);
  order_by_precedence();
  add_balance_groups(weldment_, model_, cell_.findings);
  add_cell_rules();
  add_pairs();
  add_points();
  add_service_way();
  add_torch_distance();
  if (with_air_tables) add_air_tables();
  add_times();
  return std::move(cell_);
}

namespace {

bool is_same(const std::optional<CellTrack>& a, const std::optional<CellTrack>& b) {
  if (!a || !b) return !a && !b;
  return a->axis == b->axis && a->from_mm == b->from_mm && a->to_mm == b->to_mm &&
         a->speed_mm_s == b->speed_mm_s && a->acceleration_mm_s2 == b->acceleration_mm_s2;
}

bool is_same(const Motion& a, const Motion& b) {
  return a.speed_mm_s == b.speed_mm_s && a.acceleration_mm_s2 == b.acceleration_mm_s2 &&
         a.wrist_s == b.wrist_s && a.approach_mm == b.approach_mm && a.clearance_mm == b.clearance_mm &&
         is_same(a.track, b.track);
}

}  // namespace

int CellCompiler::motion_of(const Robot& robot) {
  const auto usable = [&](double value, const char* key) {
    if (!(value > 0) || !std::isfinite(value))
      throw InputError("cell/robots/" + robot.id + "/" + key, number_text(value), "a value above 0"_word);
  };
  usable(robot.air_speed_mm_s, "air_speed_mm_s");
  usable(robot.air_acceleration_mm_s2, "air_acceleration_mm_s2");
  Motion motion{robot.air_speed_mm_s, robot.air_acceleration_mm_s2, robot.wrist_s,  {},
                robot.approach_mm,    robot.clearance_mm,           track_of(robot)};
  for (std::size_t i = 0; i < model_.motions.size(); ++i)
    if (is_same(model_.motions[i], motion)) return static_cast<int>(i);
  model_.motions.push_back(std::move(motion));
  return static_cast<int>(model_.motions.size()) - 1;
}

void CellCompiler::add_robots() {
  if (!plan_.cell) return;
  const auto& robots = plan_.cell->robots;
  if (robots.size() > most_robots)
    throw InputError("cell/robots", Sentence("cell.refusal.robots"_key, {{"count", robots.size()}}),
                     Sentence("cell.refusal.at-most"_key, {{"count", most_robots}}));
  for (const Robot& robot : robots) {
    CellRobot compiled;
    compiled.motion = motion_of(robot);
    compiled.sense_point_s = robot.sense_point_s;
    compiled.wire_change_s = robot.wire_change_s.value_or(-1);
    if (robot.loaded)
      compiled.loaded = package(robot.loaded->wire, robot.loaded->gas, robot.loaded->power_source);
    add_wear(robot, compiled);
    model_.robots.push_back(compiled);
  }
}

/// What wears between two changes. Tips and spools are new when a cycle begins, as the torch is clean then.
void CellCompiler::add_wear(const Robot& robot, CellRobot& compiled) {
  if (robot.tip_change) {
    compiled.tip_every_arc_s = robot.tip_change->every_arc_s;
    compiled.tip_change_s = robot.tip_change->time_s;
  }
  if (robot.spool_kg && robot.spool_change_s) {
    compiled.spool_g = 1000 * *robot.spool_kg;
    compiled.spool_change_s = *robot.spool_change_s;
  }
  compiled.tracking_s = robot.tracking_s;
  model_.has_wear = model_.has_wear || compiled.tip_every_arc_s > 0 || compiled.spool_g > 0;
}

/// Depth first over the whole weldment, manual seams included.
void CellCompiler::refuse_circular_after() const {
  enum class Mark { fresh, open, closed };
  std::vector<Mark> marks(weldment_.seams.size(), Mark::fresh);
  std::vector<std::pair<std::size_t, std::size_t>> path;  // seam, next of its predecessors
  for (std::size_t root = 0; root < marks.size(); ++root) {
    if (marks[root] == Mark::fresh) path.emplace_back(root, 0);
    while (!path.empty()) {
      auto& [seam, next] = path.back();
      const Seam& at = weldment_.seams[seam];
      marks[seam] = Mark::open;
      if (next == at.after.size()) {
        marks[seam] = Mark::closed;
        path.pop_back();
        continue;
      }
      const std::string& id = at.after[next++];
      const auto before = source_of_id_.find(id);
      if (before == source_of_id_.end())
        throw InputError(place(at) + "/after", "\"" + printable(id) + "\"", "a seam of the weldment"_word);
      if (marks[before->second] == Mark::open)
        throw InputError(place(at) + "/after", Sentence("cell.refusal.circle"_key, {{"seam", printable(id)}}),
                         "an order that can be welded"_word);
      if (marks[before->second] == Mark::fresh) path.emplace_back(before->second, 0);
    }
  }
}

const Schedule& CellCompiler::schedule_of(const Seam& seam, std::size_t pass) const {
  const Schedule* schedule = index_.schedule(seam.schedules[pass]);
  if (!schedule)
    throw InputError(place(seam) + "/schedules", "\"" + printable(seam.schedules[pass]) + "\"",
                     "the id of a schedule"_word);
  return *schedule;
}

Package CellCompiler::package(const std::string& wire, const std::string& gas,
                              const std::string& power_source) const {
  return {index_of(plan_.wires, wire), index_of(plan_.gases, gas),
          index_of(plan_.power_sources, power_source)};
}

/// Each weld is some events of the timeline, and those take some 2 KB, 3 KB where JSON is written: with no
/// limit a plan of a few MB would fill any memory.
void CellCompiler::check_weld_count(const Seam& seam, std::size_t count) {
  constexpr std::size_t most_welds = 500'000;
  weld_count_ += count;
  if (weld_count_ > most_welds)
    throw InputError(place(seam) + "/schedules", Sentence("cell.refusal.welds"_key, {{"count", weld_count_}}),
                     Sentence("cell.refusal.at-most"_key, {{"count", most_welds}}));
}

void CellCompiler::add_seam(std::size_t index) {
  const Seam& source = weldment_.seams[index];
  if (source.by == "manual") return;
  ++cell_.robot_seams;
  const auto runs = weld_runs(source);
  if (source.schedules.empty() || runs.empty()) {
    note("cycle.seam.nothing-to-weld", Severity::fail, place(source),
         source.schedules.empty() ? Sentence("cycle.seam.nothing-to-weld.no-schedule"_key)
                                  : Sentence("cycle.seam.nothing-to-weld.too-short"_key));
    cell_.unwelded.push_back(static_cast<int>(index));
    return;
  }
  check_weld_count(source, runs.size() * source.schedules.size());
  std::vector<Package> needs;
  for (std::size_t pass = 0; pass < source.schedules.size(); ++pass) {
    const Schedule& schedule = schedule_of(source, pass);
    needs.push_back(package(schedule.wire, schedule.gas, schedule.power_source));
    schedules_.push_back(&schedule);
  }
  CellSeam seam;
  if (!add_robots_of(source, seam, needs)) {
    schedules_.resize(model_.passes.size());
    cell_.unwelded.push_back(static_cast<int>(index));
    return;
  }
  seam.source = static_cast<int>(index);
  seam.first_run = static_cast<int>(model_.runs.size());
  seam.run_count = static_cast<int>(runs.size());
  seam.first_pass = static_cast<int>(model_.passes.size());
  seam.pass_count = static_cast<int>(needs.size());
  seam.reversible = may_reverse(source);
  seam.sense_points = std::max(0, source.sense_points);
  if (plan_.cell) seam.orientation = index_of(plan_.cell->orientations, source.orientation);
  add_runs(source, runs);
  add_passes(source, needs);
  model_of_source_[index] = static_cast<int>(model_.seams.size());
  model_.seams.push_back(seam);
}

/// The robots of a seam's list, or all; without those that don't reach it. A named one that doesn't is a
/// finding.
std::vector<int> CellCompiler::robots_in_reach(const Seam& source, double& least_missing_mm) {
  std::vector<int> listed, in_reach;
  const std::vector<Robot> none;
  const auto& robots = plan_.cell ? plan_.cell->robots : none;
  if (source.robots.empty())
    for (int robot = 0; robot < model_.robot_count(); ++robot) listed.push_back(robot);
  for (const std::string& id : source.robots)
    if (const int robot = index_of(robots, id); robot >= 0) listed.push_back(robot);
  for (const int robot : listed) {
    const double beyond_mm = beyond_reach_mm(robots[robot], source).value_or(0);
    if (beyond_mm <= 0) {
      in_reach.push_back(robot);
      continue;
    }
    least_missing_mm = least_missing_mm > 0 ? std::min(least_missing_mm, beyond_mm) : beyond_mm;
    if (source.robots.empty()) continue;
    cell_.findings.push_back({"cycle.robot.reach", Severity::fail, place(source), beyond_mm, 0, "mm",
                              Sentence("cycle.robot.reach"_key, {{"robot", robots[robot].id},
                                                                 {"missing", UnitValue{beyond_mm, "mm"}}}),
                              "common practice: reach as a sphere about the base"});
  }
  return in_reach;
}

namespace {

Sentence nobody_sentence(const std::vector<std::string>& refused, double least_missing_mm) {
  if (!refused.empty()) return Sentence("cycle.robot.none.loaded"_key, {{"robots", comma_list(refused)}});
  if (least_missing_mm > 0)
    return Sentence("cycle.robot.none.reach"_key, {{"missing", UnitValue{least_missing_mm, "mm"}}});
  return Sentence("cycle.robot.none"_key);
}

}  // namespace

/// False, with a finding, where no robot can weld the seam.
bool CellCompiler::add_robots_of(const Seam& source, CellSeam& seam, const std::vector<Package>& needs) {
  double least_missing_mm = 0;
  const std::vector<int> listed = robots_in_reach(source, least_missing_mm);
  seam.first_robot = static_cast<int>(model_.robots_of.size());
  std::vector<std::string> refused;  // what they have loaded neither fits nor can be changed
  for (const int robot : listed) {
    const CellRobot& compiled = model_.robots[robot];
    const auto fit = [&](const Package& need) { return fits(compiled.loaded, need); };
    const std::uint64_t bit = std::uint64_t{1} << robot;
    if (seam.robot_mask & bit) continue;
    if (compiled.wire_change_s >= 0 || std::all_of(needs.begin(), needs.end(), fit)) {
      seam.robot_mask |= bit;
      model_.robots_of.push_back(robot);
    } else if (seam.robot_mask == 0) {
      refused.push_back(plan_.cell->robots[robot].id);
    }
  }
  seam.robot_count = static_cast<int>(model_.robots_of.size()) - seam.first_robot;
  if (seam.robot_count == 0) {
    note("cycle.robot.none", Severity::fail, place(source), nobody_sentence(refused, least_missing_mm));
    return false;
  }
  if (!refused.empty())
    note("cycle.robot.next", Severity::note, place(source),
         Sentence("cycle.robot.next"_key,
                  {{"robots", comma_list(refused)},
                   {"next", plan_.cell->robots[model_.robots_of[seam.first_robot]].id}}));
  return true;
}

void CellCompiler::add_runs(const Seam& source, const std::vector<WeldRun>& runs) {
  double total = 0;
  for (const WeldRun& run : runs) total += run.to_mm - run.from_mm;
  for (const WeldRun& run : runs) {
    CellRun compiled;
    compiled.share = total > 0 ? (run.to_mm - run.from_mm) / total : 1.0 / static_cast<double>(runs.size());
    compiled.from_mm = run.from_mm;
    compiled.to_mm = run.to_mm;
    compiled.begin = point_at(source, run.from_mm);
    compiled.end = point_at(source, run.to_mm);
    model_.runs.push_back(compiled);
  }
}

void CellCompiler::add_passes(const Seam& source, const std::vector<Package>& needs) {
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const PassEvaluation* evaluated = rows_.pass(source.id, static_cast<int>(i) + 1);
    if (evaluated == nullptr)
      throw std::invalid_argument("the evaluation lacks pass " + std::to_string(i + 1) + " of " +
                                  place(source));
    CellPass pass;
    pass.arc_s = evaluated->arc_time_s;
    pass.need = needs[i];
    pass.wire_g = evaluated->wire_g;
    pass.tracked = !source.tracking.empty() && source.tracking != "none";
    const SeamEvaluation* seam = i > 0 ? rows_.seam(source.id) : nullptr;
    if (seam != nullptr && i - 1 < seam->interpass_waits_s.size())
      pass.interpass_wait_s = std::max(0.0, seam->interpass_waits_s[i - 1]);
    model_.passes.push_back(pass);
    model_.heat_J_mm.push_back(evaluated->heat_input_kJ_mm * 1000);
  }
}

CompiledCell compile_cell(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                          const WeldmentRows& rows) {
  return CellCompiler(plan, index, weldment, rows).compile(false);
}

CompiledCell compile_cell(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation) {
  return CellCompiler(plan, PlanIndex(plan), weldment, WeldmentRows(evaluation, weldment.id)).compile(true);
}

}  // namespace seamtakt
