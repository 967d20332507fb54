#include "cell/timeline/duty.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <span>
#include <string_view>
#include <unordered_map>

#include "base/parallel/thread_pool.hpp"
#include "base/units/units.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "formula/wire/duty_cycle.hpp"
#include "plan/rules/acceptance.hpp"

namespace seamtakt {

namespace {

constexpr double period_s = 600;

struct Arc {
  double start_s, end_s, square_A2;
};

/// Integral of I^2 over a timeline that repeats every `cycle_s`.
class Heating {
 public:
  Heating(std::vector<Arc> arcs, double cycle_s) : arcs_(std::move(arcs)), cycle_s_(cycle_s), before_{0} {
    std::sort(arcs_.begin(), arcs_.end(), [](const Arc& a, const Arc& b) { return a.start_s < b.start_s; });
    for (const Arc& arc : arcs_)
      before_.push_back(before_.back() + (arc.end_s - arc.start_s) * arc.square_A2);
  }

  /// From time 0 to `at_s` >= 0 (A^2 s).
  double until(double at_s) const {
    const double cycles = std::floor(at_s / cycle_s_);
    return cycles * before_.back() + within(at_s - cycles * cycle_s_);
  }

  /// The start of the window of ten minutes that heats most: it begins or ends with an arc's beginning or
  /// end.
  double worst_start_s() const {
    double worst_s = 0, most = -1;
    const double whole = std::ceil(period_s / cycle_s_) * cycle_s_;
    for (const Arc& arc : arcs_)
      for (const double start_s : {arc.start_s, arc.end_s + whole - period_s}) {
        const double heat = until(start_s + period_s) - until(start_s);
        if (heat <= most) continue;
        most = heat;
        worst_s = start_s;
      }
    return worst_s;
  }

 private:
  double within(double at_s) const {
    const auto next = std::upper_bound(arcs_.begin(), arcs_.end(), at_s,
                                       [](double time_s, const Arc& arc) { return time_s < arc.start_s; });
    if (next == arcs_.begin()) return 0;
    const Arc& arc = *(next - 1);
    const double whole = before_[static_cast<std::size_t>(next - 1 - arcs_.begin())];
    return whole + (std::min(at_s, arc.end_s) - arc.start_s) * arc.square_A2;
  }

  std::vector<Arc> arcs_;
  double cycle_s_;
  std::vector<double> before_;
};

using SourceOfRobot = std::pair<std::string, std::string>;

/// The power source of a pass: as scheduled, else as loaded.
std::string power_source_of(const Plan& plan, const PassEvaluation& pass, const std::string& robot_id) {
  const Schedule* schedule = find_by_id(plan.schedules, pass.schedule);
  if (schedule && !schedule->power_source.empty()) return schedule->power_source;
  const Robot* robot = plan.cell ? find_by_id(plan.cell->robots, robot_id) : nullptr;
  return robot && robot->loaded ? robot->loaded->power_source : std::string();
}

}  // namespace

std::vector<RobotDuty> duty_of_robots(const Plan& plan, const Weldment& weldment,
                                      const Evaluation& evaluation, const CycleResult& cycle) {
  std::map<std::pair<std::string_view, int>, const PassEvaluation*> passes;
  for (const PassEvaluation& pass : evaluation.passes)
    if (pass.weldment == weldment.id) passes[{pass.seam, pass.pass}] = &pass;
  std::vector<SourceOfRobot> order;
  std::map<SourceOfRobot, std::vector<Arc>> arcs;
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc || !(move.end_s > move.start_s)) continue;
    const auto pass = passes.find({move.seam, move.pass});
    if (pass == passes.end()) continue;
    const double current_A = pass->second->current_A;
    const SourceOfRobot key{move.robot, power_source_of(plan, *pass->second, move.robot)};
    if (!arcs.contains(key)) order.push_back(key);
    arcs[key].push_back({move.start_s, move.end_s, current_A * current_A});
  }
  std::vector<RobotDuty> duties;
  for (const SourceOfRobot& key : order) {
    const Heating heating(std::move(arcs[key]), cycle.cycle_time_s);
    const double start_s = heating.worst_start_s();
    const double heat = std::max(0.0, heating.until(start_s + period_s) - heating.until(start_s));
    duties.push_back(
        {key.first, key.second, std::sqrt(heat / period_s), std::fmod(start_s, cycle.cycle_time_s)});
  }
  return duties;
}

namespace {

constexpr const char* duty_rule = "cycle.duty.exceeded";

}  // namespace

Findings duty_of_timeline(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                          const CycleResult& cycle) {
  Findings findings;
  for (const RobotDuty& duty : duty_of_robots(plan, weldment, evaluation, cycle)) {
    const PowerSource* source = find_by_id(plan.power_sources, duty.power_source);
    if (!source || !source->rated_current_A) continue;
    const double rated_A = *source->rated_current_A, duty_pct = source->rated_duty_pct.value_or(100);
    const double limit_A = current_at_duty_A(rated_A, duty_pct, 100.0);
    if (duty.equivalent_current_A <= limit_A * (1 + 1e-9)) continue;
    findings.push_back({duty_rule, Severity::fail, weldment.id + "/" + duty.robot + "/" + duty.power_source,
                        duty.equivalent_current_A, limit_A, "A",
                        "In its worst 10 min the source heats like " +
                            rounded_text(duty.equivalent_current_A, 4) + " A for ever; rated " +
                            number_text(rated_A) + " A at " + number_text(duty_pct) + " % it carries " +
                            rounded_text(limit_A, 4) + " A.",
                        "IEC 60974-1 duty cycle of 10 min (recalled); I2 = I1*sqrt(D1/D2), an estimate"});
  }
  return findings;
}

namespace {

/// The rows of one weldment, which stand together and in the plan's order; `next` is the first not yet taken.
template <class Row>
std::span<const Row> rows_of(const std::vector<Row>& rows, const std::string& weldment, std::size_t& next) {
  const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(next);
  const auto end = std::find_if(begin, rows.end(), [&](const Row& row) { return row.weldment != weldment; });
  next = static_cast<std::size_t>(end - rows.begin());
  return {begin, end};
}

/// The current that a power source carries for ever; infinite where it isn't rated.
double lasting_current_A(const PowerSource* source) {
  if (!source || !source->rated_current_A) return std::numeric_limits<double>::infinity();
  return current_at_duty_A(*source->rated_current_A, source->rated_duty_pct.value_or(100), 100.0);
}

/// The least current that a source which may weld with a schedule carries for ever: its own source, else what
/// any robot has loaded.
double least_lasting_current_A(const Plan& plan, const Schedule& schedule) {
  if (!schedule.power_source.empty())
    return lasting_current_A(find_by_id(plan.power_sources, schedule.power_source));
  double least_A = std::numeric_limits<double>::infinity();
  for (const Robot& robot : plan.cell->robots)
    if (robot.loaded)
      least_A =
          std::min(least_A, lasting_current_A(find_by_id(plan.power_sources, robot.loaded->power_source)));
  return least_A;
}

/// No mean over ten minutes is above the largest current: where that can be carried for ever, the timeline
/// needn't be laid out to know that nothing is exceeded.
class DutyInDoubt {
 public:
  explicit DutyInDoubt(const Plan& plan) {
    for (const Schedule& schedule : plan.schedules)
      limits_A_.emplace(schedule.id, least_lasting_current_A(plan, schedule));
  }
  bool operator()(const PassEvaluation& pass) const {
    const auto limit_A = limits_A_.find(pass.schedule);
    return limit_A == limits_A_.end() || !(pass.current_A <= limit_A->second);
  }

 private:
  std::unordered_map<std::string_view, double> limits_A_;
};

/// `cycle.duty.exceeded` of one weldment, whose rows alone `own` holds.
Findings duty_of_weldment(const Plan& plan, const Weldment& weldment, const Evaluation& own) {
  const CompiledCell compiled = compile_cell(plan, weldment, own);
  const CycleResult cycle = timeline_of(plan, weldment, compiled, sequence_given(compiled.model));
  Findings findings = duty_of_timeline(plan, weldment, own, cycle);
  apply_acceptances(plan, AcceptanceScope::cycle_of(weldment.id), findings);
  std::erase_if(findings, [](const Finding& finding) { return finding.rule != duty_rule; });
  return findings;
}

}  // namespace

Findings duty_findings(const Plan& plan, const Evaluation& evaluation) {
  Findings findings;
  if (!plan.cell) return findings;
  const DutyInDoubt in_doubt(plan);
  std::vector<std::pair<const Weldment*, Evaluation>> doubtful;
  std::size_t next_pass = 0, next_seam = 0;
  for (const Weldment& weldment : plan.weldments) {
    // A weldment's own rows only: looking through all rows for each weldment takes the square of a plan's
    // size.
    const auto passes = rows_of(evaluation.passes, weldment.id, next_pass);
    const auto seams = rows_of(evaluation.seams, weldment.id, next_seam);
    if (std::none_of(passes.begin(), passes.end(), in_doubt)) continue;
    Evaluation own;
    own.passes.assign(passes.begin(), passes.end());
    own.seams.assign(seams.begin(), seams.end());
    doubtful.emplace_back(&weldment, std::move(own));
  }
  std::vector<Findings> of_weldment(doubtful.size());
  ThreadPool::shared().parallel_for(doubtful.size(), 1, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      of_weldment[i] = duty_of_weldment(plan, *doubtful[i].first, doubtful[i].second);
  });
  for (Findings& each : of_weldment)
    findings.insert(findings.end(), std::make_move_iterator(each.begin()),
                    std::make_move_iterator(each.end()));
  return findings;
}

}  // namespace seamtakt
