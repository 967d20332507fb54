#include "line/line_times.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "base/error.hpp"
#include "cell/bound/lower_bound.hpp"
#include "cell/timeline/cell_compiler.hpp"
#include "cell/travel/changeover.hpp"
#include "line/takt_count.hpp"
#include "plan/manual_time.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

/// One thing that wears, of one robot.
struct Wear {
  double every = 0, change_s = 0, used = 0;

  /// Time of changes that fall within a unit that uses `use`. Like the torch service they fall before what
  /// would pass the limit.
  double change_for(double use) {
    if (every <= 0 || use <= 0) return 0;
    used += use;
    const double changes = std::max(0.0, std::ceil(used / every * (1 - 1e-12)) - 1);
    used -= changes * every;
    return changes * change_s;
  }
};

Wear tip_of(const Robot& robot, const ConsumableChanges& changes) {
  if (changes.tip_every_arc_s > 0 || !robot.tip_change)
    return {changes.tip_every_arc_s, changes.tip_change_s, 0};
  return {robot.tip_change->every_arc_s, robot.tip_change->time_s, 0};
}

Wear package_of(const Robot& robot, const ConsumableChanges& changes) {
  if (changes.wire_package_kg > 0 || !robot.spool_kg)
    return {changes.wire_package_kg, changes.wire_package_change_s, 0};
  return {*robot.spool_kg, robot.spool_change_s.value_or(0), 0};
}

WorkVariation variation_of(const Stage& stage) {
  const std::vector<double>& range = stage.time_range_s;
  if (range.size() == 3) return WorkVariation::triangular(range[0], range[1], range[2]);
  return stage.cv ? WorkVariation::log_normal(*stage.cv) : WorkVariation();
}

}  // namespace

LineTimes::LineTimes(const Plan& plan, const std::vector<std::string>& weldments)
    : plan_(&plan), cell_(plan.cell.value_or(Cell{})) {
  if (!plan.line || plan.line->stages.empty())
    throw InputError("plan", plan.line ? "a line without stages"_word : "no line"_word,
                     "a plan whose line has stages"_word, plan.line ? "/line/stages" : "/line");
  for (const std::string& id : weldments) {
    const Weldment* weldment = find_by_id(plan.weldments, id);
    if (!weldment) throw std::invalid_argument("line times: weldment " + id + " isn't in the plan");
    weldments_.push_back(weldment);
    manual_s_.push_back(manual_stage_s(plan, *weldment));
  }
  add_stages();
  if (plan.line->calendar) hours_ = std::make_shared<const WorkHours>(*plan.line->calendar);
}

void LineTimes::add_stages() {
  const std::vector<Stage>& given = plan_->line->stages;
  for (std::size_t i = 0; i < given.size(); ++i) {
    const Stage& stage = given[i];
    stages_.push_back({stage.id, stage.servers, stage.buffer_after, stage.availability, stage.repair_s,
                       stage.yield_pct / 100, stage.rework_to.empty() ? -1 : index_of(given, stage.rework_to),
                       stage.rework_s, variation_of(stage)});
    if (stage.time_of == "cell" && cell_stage_ < 0) cell_stage_ = static_cast<int>(i);
    has_load_stage_ = has_load_stage_ || stage.time_of == "load";
  }
  for (const Operators& group : plan_->line->operators) {
    for (const std::string& stage : group.stages)
      stages_[static_cast<std::size_t>(index_of(given, stage))].people = static_cast<int>(people_.size());
    people_.push_back({group.id, group.count});
  }
}

void LineTimes::add_cell_load(const Evaluation& evaluation, CycleResult cycle, Findings& findings) {
  CellLoad load;
  load.arc_s.assign(cell_.robots.size(), 0.0);
  load.wire_kg.assign(cell_.robots.size(), 0.0);
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc) continue;
    const auto robot = static_cast<std::size_t>(index_of(cell_.robots, move.robot));
    load.arc_s[robot] += move.end_s - move.start_s;
    for (const PassEvaluation& pass : evaluation.passes)
      if (pass.weldment == cycle.weldment && pass.seam == move.seam && pass.pass == move.pass &&
          pass.arc_time_s > 0)
        load.wire_kg[robot] += pass.wire_g / 1000 * (move.end_s - move.start_s) / pass.arc_time_s;
  }
  for (const Finding& finding : cycle.findings) {
    if (finding.rule == "cycle.wire-change.back") {
      load.change_back_s = std::max(load.change_back_s, finding.value.value_or(0));
      Finding counted = finding;
      counted.rule = "line.wire-change.back";
      counted.sentence = Sentence("line.wire-change.back"_key);
      findings.push_back(counted);
    } else if (finding.rule != "cycle.takt.missed" && finding.rule != "cycle.weldment.unwelded") {
      findings.push_back(finding);
    }
  }
  load.cycle = std::move(cycle);
  cell_loads_.push_back(std::move(load));
}

void LineTimes::note_times(const Weldment& weldment, Findings& findings) const {
  const bool has_manual_stage = std::any_of(plan_->line->stages.begin(), plan_->line->stages.end(),
                                            [](const Stage& stage) { return stage.time_of == "manual"; });
  const auto manual_seams = std::count_if(weldment.seams.begin(), weldment.seams.end(),
                                          [](const Seam& seam) { return seam.by == "manual"; });
  if (has_manual_stage && manual_seams > 0 && manual_stage_s(*plan_, weldment) <= 0)
    findings.push_back({"line.manual.no-time", Severity::warn, weldment.id, 0, std::nullopt, "s",
                        Sentence("line.manual.no-time"_key, {{"seams", std::int64_t{manual_seams}}}),
                        "plan"});
}

void LineTimes::note_stages(Findings& findings) const {
  for (const Stage& stage : plan_->line->stages)
    if (stage.time_of == "load" && cell_.stations >= 2 && has_cell())
      findings.push_back({"line.load.two-stations", Severity::warn, stage.id, 0, std::nullopt, "s",
                          Sentence("line.load.two-stations"_key), "plan"});
}

double LineTimes::cell_work_s(int weldment, int next) const {
  const Weldment& unit = *weldments_[static_cast<std::size_t>(weldment)];
  const CellLoad& load = cell_loads_[static_cast<std::size_t>(weldment)];
  const double weld_s = load.cycle.weld_s + load.change_back_s;
  if (cell_.stations >= 2) {
    const double load_s = next < 0 ? 0 : weldments_[static_cast<std::size_t>(next)]->load_s;
    return station_cycle_s(cell_.stations, weld_s, load_s, unit.unload_s, cell_.index_s);
  }
  return station_cycle_s(1, weld_s, has_load_stage_ ? 0 : unit.load_s, unit.unload_s, cell_.index_s);
}

double LineTimes::work_s(int weldment, int next, int stage) const {
  const Stage& given = plan_->line->stages[static_cast<std::size_t>(stage)];
  const Weldment& unit = *weldments_[static_cast<std::size_t>(weldment)];
  if (given.time_range_s.size() == 3)
    return (given.time_range_s[0] + given.time_range_s[1] + given.time_range_s[2]) / 3;
  if (given.time_s) return *given.time_s;
  if (given.time_of == "cell") return cell_work_s(weldment, next);
  if (given.time_of == "load") return has_cell() && cell_.stations >= 2 ? 0 : unit.load_s;
  if (given.time_of == "tack") return unit.tack_s;
  if (given.time_of == "manual") return manual_s_[static_cast<std::size_t>(weldment)];
  if (given.time_of == "measure") return unit.measure_s;
  if (given.time_of == "inspect") return unit.inspect_s;
  return 0;  // kit
}

LineModel LineTimes::model(const std::vector<int>& weldment_of_unit,
                           const std::vector<std::uint32_t>& random_stream_id,
                           const ConsumableChanges& changes) const {
  LineModel model;
  model.stages = stages_;
  model.random_stream_id = random_stream_id;
  model.work_s.reserve(weldment_of_unit.size() * stages_.size());
  for (std::size_t unit = 0; unit < weldment_of_unit.size(); ++unit)
    for (std::size_t stage = 0; stage < stages_.size(); ++stage) {
      const std::size_t follows = unit + static_cast<std::size_t>(stages_[stage].servers);
      const int next = follows < weldment_of_unit.size() ? weldment_of_unit[follows] : -1;
      model.work_s.push_back(work_s(weldment_of_unit[unit], next, static_cast<int>(stage)));
    }
  add_changes(weldment_of_unit, changes, model);
  add_changeovers(weldment_of_unit, model);
  model.people = people_;
  model.hours = hours_;
  if (const Line& line = *plan_->line; line.pull == "takt" && line.takt_s) {
    const TaktGoal goal = takt_goal(model, *line.takt_s * line.planning_pct / 100);
    model.pull = LinePull{goal.takt_s, goal.first_s};
  }
  return model;
}

/// Fixtures are changed before a unit of another weldment than its cell's last one.
void LineTimes::add_changeovers(const std::vector<int>& weldment_of_unit, LineModel& model) const {
  if (!has_cell() || (cell_.changeover_s <= 0 && cell_.changeovers.empty())) return;
  const auto cells = static_cast<std::size_t>(stages_[static_cast<std::size_t>(cell_stage_)].servers);
  model.change_stage = cell_stage_;
  model.change_s.resize(weldment_of_unit.size(), 0.0);
  const auto id_of = [&](std::size_t unit) -> const std::string& {
    return weldments_[static_cast<std::size_t>(weldment_of_unit[unit])]->id;
  };
  for (std::size_t unit = cells; unit < weldment_of_unit.size(); ++unit)
    model.change_s[unit] += changeover_s(*plan_, id_of(unit - cells), id_of(unit));
}

/// Robots change at their own times, and the cell waits for each. Several cells take the units in turn. What
/// the shift states goes before what the plan says of a robot; changes that a cycle already has count once.
void LineTimes::add_changes(const std::vector<int>& weldment_of_unit, const ConsumableChanges& changes,
                            LineModel& model) const {
  if (!has_cell()) return;
  std::vector<Wear> of_robots;
  for (const Robot& robot : cell_.robots) {
    of_robots.push_back(tip_of(robot, changes));
    of_robots.push_back(package_of(robot, changes));
  }
  if (std::none_of(of_robots.begin(), of_robots.end(),
                   [](const Wear& wear) { return wear.every > 0 && wear.change_s > 0; }))
    return;
  const auto cells = static_cast<std::size_t>(stages_[static_cast<std::size_t>(cell_stage_)].servers);
  std::vector<Wear> worn;
  for (std::size_t cell = 0; cell < cells; ++cell)
    worn.insert(worn.end(), of_robots.begin(), of_robots.end());
  model.change_stage = cell_stage_;
  for (std::size_t unit = 0; unit < weldment_of_unit.size(); ++unit) {
    const CellLoad& load = cell_loads_[static_cast<std::size_t>(weldment_of_unit[unit])];
    double change_s = 0;
    for (std::size_t robot = 0; robot < cell_.robots.size(); ++robot) {
      Wear* const tip = &worn[2 * (unit % cells * cell_.robots.size() + robot)];
      change_s += tip[0].change_for(load.arc_s[robot]) + tip[1].change_for(load.wire_kg[robot]);
    }
    const double in_cycle_s = load.cycle.tip_change_s + load.cycle.spool_change_s;
    model.change_s.push_back(std::max(0.0, change_s - in_cycle_s));
  }
}

}  // namespace seamtakt
