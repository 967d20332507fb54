#include "cell/timeline/cycle_result.hpp"

#include <algorithm>
#include <string>

#include "base/error.hpp"
#include "cell/bound/lower_bound.hpp"
#include "cell/timeline/balance.hpp"
#include "cell/timeline/hot_timeline.hpp"

namespace seamtakt {

namespace {

bool has_pass(MoveKind kind) {
  return kind != MoveKind::orientation && kind != MoveKind::load && kind != MoveKind::index;
}

/// The limit that the pass before has to cool to, as a sentence names it.
Sentence cooling_sentence(const Plan& plan, const Seam& seam, int pass) {
  std::vector<Argument> arguments{{"seam", seam.id}, {"pass", pass}};
  const Schedule* schedule =
      find_by_id(plan.schedules, seam.schedules.at(static_cast<std::size_t>(pass) - 1));
  if (!schedule || !schedule->limits || !schedule->limits->interpass_C ||
      !schedule->limits->interpass_C->upper)
    return Sentence("cycle.why.cooling"_key, std::move(arguments));
  arguments.emplace_back("limit", UnitValue{*schedule->limits->interpass_C->upper, "C"});
  return Sentence("cycle.why.cooling.to"_key, std::move(arguments));
}

Sentence why(const Plan& plan, const Weldment& weldment, const CellModel& model, const BareMove& bare) {
  const WaitReason& reason = bare.reason;
  const auto seam = [&]() -> const Seam& { return weldment.seams[model.seams[reason.seam].source]; };
  const auto robot = [&] { return plan.cell->robots[reason.robot].id; };
  switch (reason.cause) {
    case WaitCause::none:
      return {};
    case WaitCause::cooling:
      return cooling_sentence(plan, seam(), bare.pass);
    case WaitCause::zone:
      return Sentence("cycle.why.zone"_key, {{"zone", plan.cell->zones[reason.zone].id}, {"robot", robot()}});
    case WaitCause::after:
      return Sentence("cycle.why.after"_key, {{"seam", seam().id}});
    case WaitCause::positioner:
      return Sentence("cycle.why.positioner"_key);
    case WaitCause::others:
      return Sentence("cycle.why.others"_key, {{"robot", robot()}});
    case WaitCause::balance:
      return Sentence("cycle.why.balance"_key, {{"group", seam().balance}});
    case WaitCause::together:
      return Sentence("cycle.why.together"_key, {{"seam", seam().id}});
    case WaitCause::apart:
      return Sentence("cycle.why.apart"_key, {{"robot", robot()}, {"seam", seam().id}});
  }
  return {};
}

Move named(const Plan& plan, const Weldment& weldment, const CellModel& model, const BareMove& bare) {
  Move move;
  move.robot = plan.cell->robots[bare.robot].id;
  move.start_s = bare.start_s;
  move.end_s = bare.end_s;
  move.kind = bare.kind;
  if (bare.kind == MoveKind::wait) {
    move.cause = bare.reason.cause;
    move.why = why(plan, weldment, model, bare);
  }
  if (bare.seam >= 0) {
    const Seam& seam = weldment.seams[model.seams[bare.seam].source];
    move.seam = seam.id;
    move.reversed = bare.reversed;
    if (has_pass(bare.kind)) move.pass = bare.pass;
    if (bare.kind == MoveKind::arc) {
      const CellRun& run = model.runs[bare.run];
      move.points = bare.reversed ? path_between(seam, run.to_mm, run.from_mm)
                                  : path_between(seam, run.from_mm, run.to_mm);
      return move;
    }
  }
  move.points = bare.kind == MoveKind::air ? std::vector<Point_mm>{bare.from, bare.to}
                                           : std::vector<Point_mm>{bare.from};
  return move;
}

double* sum_of(CycleResult& result, MoveKind kind) {
  switch (kind) {
    case MoveKind::air:
      return &result.air_s;
    case MoveKind::sense:
      return &result.sense_s;
    case MoveKind::start:
    case MoveKind::end:
      return &result.start_end_s;
    case MoveKind::arc:
      return &result.arc_on_s;
    case MoveKind::wait:
      return &result.wait_s;
    case MoveKind::orientation:
      return &result.orientation_s;
    case MoveKind::service:
      return &result.service_s;
    case MoveKind::wire_change:
      return &result.wire_change_s;
    case MoveKind::tip_change:
      return &result.tip_change_s;
    case MoveKind::spool_change:
      return &result.spool_change_s;
    case MoveKind::load:
    case MoveKind::index:
      return nullptr;  // of the stations, not the robots
  }
  return nullptr;
}

void add_station_moves(const Weldment& weldment, const Cell& cell, CycleResult& result) {
  const auto add = [&](MoveKind kind, double start_s, double end_s) {
    if (end_s > start_s) result.moves.push_back({"", "", 0, false, start_s, end_s, kind, {}});
  };
  const double begin_s = cell.stations < 2 ? result.weld_s : 0;
  add(MoveKind::load, begin_s, begin_s + weldment.unload_s);
  add(MoveKind::load, begin_s + weldment.unload_s, begin_s + weldment.unload_s + weldment.load_s);
  if (cell.stations >= 2) add(MoveKind::index, result.cycle_time_s - cell.index_s, result.cycle_time_s);
}

/// A weldment with unwelded seams isn't finished, however short the time for the others.
void judge_unwelded(CycleResult& result) {
  if (result.unwelded.empty()) return;
  const std::size_t count = result.unwelded.size();
  result.findings.push_back(
      {"cycle.weldment.unwelded", Severity::fail, result.weldment, static_cast<double>(count), 0, "",
       Sentence("cycle.weldment.unwelded"_key, {{"unwelded", count}, {"seams", result.robot_seams}}),
       "plan"});
}

void judge_takt(const Plan& plan, CycleResult& result) {
  if (!plan.line || !plan.line->takt_s) return;
  const double takt_s = *plan.line->takt_s, limit_s = takt_s * plan.line->planning_pct / 100;
  result.takt_s = takt_s;
  result.takt_limit_s = limit_s;
  if (!result.unwelded.empty()) return;
  result.takt_margin_s = limit_s - result.cycle_time_s;
  if (*result.takt_margin_s >= 0) return;
  const bool is_share = plan.line->planning_pct != 100;
  std::vector<Argument> arguments{{"cycle", UnitValue{result.cycle_time_s, "s", 5}},
                                  {"limit", UnitValue{limit_s, "s", 5}}};
  if (is_share) {
    arguments.emplace_back("share", UnitValue{plan.line->planning_pct, "%", UnitValue::typed_digits});
    arguments.emplace_back("takt", UnitValue{takt_s, "s", UnitValue::typed_digits});
  }
  result.findings.push_back(
      {"cycle.takt.missed", Severity::fail, result.weldment, result.cycle_time_s, limit_s, "s",
       Sentence(is_share ? "cycle.takt.missed.share"_key : "cycle.takt.missed"_key, std::move(arguments)),
       "plan limit"});
}

/// Runs that no service interval can hold.
void judge_runs(const Weldment& weldment, const CellModel& model, Findings& findings) {
  if (model.service_every_arc_s <= 0) return;
  for (const CellSeam& seam : model.seams)
    for (int pass = 0; pass < seam.pass_count; ++pass) {
      double longest_s = 0;
      for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
        longest_s = std::max(longest_s, model.passes[seam.first_pass + pass].arc_s * model.runs[run].share);
      if (longest_s <= model.service_every_arc_s * (1 + 1e-9)) continue;
      findings.push_back(
          {"cycle.service.run-too-long", Severity::warn,
           weldment.id + "/" + weldment.seams[seam.source].id + "/pass " + std::to_string(pass + 1),
           longest_s, model.service_every_arc_s, "s", Sentence("cycle.service.run-too-long"_key),
           "plan limit"});
    }
}

std::string package_text(const Plan& plan, const Package& package) {
  std::string text;
  const auto add = [&](const auto& list, int index) {
    if (index >= 0) text += (text.empty() ? "" : ", ") + list[index].id;
  };
  add(plan.wires, package.wire);
  add(plan.gases, package.gas);
  add(plan.power_sources, package.power_source);
  return text;
}

/// A robot that ends with something else loaded than it began with: the next unit's change back isn't in this
/// cycle.
void note_changes_left(const Plan& plan, const Weldment& weldment, const CellModel& model,
                       const Sequence& sequence, Findings& findings) {
  for (int i = 0; i < model.robot_count(); ++i) {
    std::vector<int> done(model.seams.size(), 0);
    Package loaded = model.robots[i].loaded;
    for (const Step& step : sequence) {
      const CellSeam& seam = model.seams[step.seam];
      const Package& need = model.passes[seam.first_pass + done[step.seam]++].need;
      if (step.robot == i && !fits(loaded, need)) loaded = changed(loaded, need);
    }
    if (fits(loaded, model.robots[i].loaded)) continue;
    findings.push_back(
        {"cycle.wire-change.back", Severity::note, weldment.id + "/" + plan.cell->robots[i].id,
         model.robots[i].wire_change_s, std::nullopt, "s",
         Sentence("cycle.wire-change.back"_key, {{"ends", package_text(plan, loaded)},
                                                 {"began", package_text(plan, model.robots[i].loaded)}}),
         "plan"});
  }
}

void add_bound(const Weldment& weldment, const Cell& cell, const CellModel& model, const HeatHistory& heat,
               CycleResult& result) {
  const double at_work_s =
      heat.has_limits() ? makespan_bound_s(without_covered_waits(model, heat)) : makespan_bound_s(model);
  const double bound_s =
      station_cycle_s(cell.stations, at_work_s, weldment.load_s, weldment.unload_s, cell.index_s);
  // Sums in another order differ in their last bits: a bound that is reached must not pass the cycle.
  const bool reached = bound_s >= result.cycle_time_s * (1 - 1e-12);
  result.lower_bound_s = reached ? result.cycle_time_s : bound_s;
  result.gap_pct = gap_to_bound_pct(result.cycle_time_s, *result.lower_bound_s);
}

CycleResult timeline_of(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                        Sequence sequence, Balance balance, std::vector<BareMove>& moves, HeatHistory& heat) {
  const CellModel& model = compiled.model;
  const Cell cell = plan.cell.value_or(Cell{});
  CycleResult result;
  result.weldment = weldment.id;
  result.findings = compiled.findings;
  result.robot_seams = compiled.robot_seams;
  for (const int seam : compiled.unwelded) result.unwelded.push_back(weldment.seams[seam].id);
  result.weld_s = heat.is_empty() ? Scheduler(model, balance).makespan_s(sequence, moves)
                                  : makespan_on_plates_s(model, balance, heat, sequence, moves);
  if (result.weld_s == Scheduler::impossible)
    throw InputError(weldment.id, "a sequence of seams that can't be welded"_word,
                     "every pass once, in an allowed order"_word);
  result.cycle_time_s =
      station_cycle_s(cell.stations, result.weld_s, weldment.load_s, weldment.unload_s, cell.index_s);
  result.load_unload_s = weldment.load_s + weldment.unload_s;
  result.moves.reserve(moves.size() + 3);
  for (const BareMove& bare : moves) {
    result.moves.push_back(named(plan, weldment, model, bare));
    if (bare.kind == MoveKind::arc && heat.covers(bare.seam))
      result.moves.back().start_temperature_C =
          heat.start_C(bare.seam, bare.pass, bare.run, bare.reversed, bare.start_s);
  }
  for (const Step& step : sequence)
    result.order.push_back({weldment.seams[model.seams[step.seam].source].id,
                            cell.robots[step.robot].id,
                            step.reversed ? "reversed" : "as-drawn",
                            {}});
  add_station_moves(weldment, cell, result);
  for (const Move& move : result.moves)
    if (double* sum = sum_of(result, move.kind)) *sum += move.end_s - move.start_s;
  if (model.robot_count() > 0 && result.cycle_time_s > 0)
    result.arc_on_ratio = result.arc_on_s / (model.robot_count() * result.cycle_time_s);
  return result;
}

}  // namespace

CycleResult timeline_of(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                        const Sequence& sequence, Balance balance) {
  std::vector<BareMove> moves;
  HeatHistory heat(plan, weldment, compiled.model);
  return timeline_of(plan, weldment, compiled, sequence, balance, moves, heat);
}

CycleResult cycle_of(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                     const Sequence& sequence, Balance balance) {
  std::vector<BareMove> moves;
  HeatHistory heat(plan, weldment, compiled.model);
  CycleResult result = timeline_of(plan, weldment, compiled, sequence, balance, moves, heat);
  add_bound(weldment, plan.cell.value_or(Cell{}), compiled.model, heat, result);
  for (Finding& finding : balance_findings(weldment, compiled.model, moves))
    result.findings.push_back(std::move(finding));
  judge_runs(weldment, compiled.model, result.findings);
  judge_heat(weldment, compiled.model, heat, moves, result.findings);
  note_changes_left(plan, weldment, compiled.model, sequence, result.findings);
  judge_unwelded(result);
  judge_takt(plan, result);
  return result;
}

}  // namespace seamtakt
