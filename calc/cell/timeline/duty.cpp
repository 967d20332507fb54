#include "cell/timeline/duty.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <limits>
#include <map>
#include <string_view>
#include <unordered_map>

#include "base/parallel/thread_pool.hpp"
#include "cell/bound/lower_bound.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline/weldment_rows.hpp"
#include "formula/wire/duty_cycle.hpp"
#include "plan/plan_index.hpp"
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

/// The arcs of each robot with each power source that it welds with.
class ArcsBySource {
 public:
  void add(std::string_view robot, std::string_view power_source, const Arc& arc) {
    const auto [at, is_new] = of_.try_emplace({robot, power_source}, all_.size());
    if (is_new) all_.push_back({robot, power_source, {}});
    all_[at->second].arcs.push_back(arc);
  }

  /// In the order in which they were first added; the arcs are used up.
  std::vector<RobotDuty> duties(double cycle_s) {
    std::vector<RobotDuty> duties;
    for (auto& [robot, power_source, arcs] : all_) {
      const Heating heating(std::move(arcs), cycle_s);
      const double start_s = heating.worst_start_s();
      const double heat = std::max(0.0, heating.until(start_s + period_s) - heating.until(start_s));
      duties.push_back({std::string(robot), std::string(power_source), std::sqrt(heat / period_s),
                        std::fmod(start_s, cycle_s)});
    }
    return duties;
  }

 private:
  struct OfSource {
    std::string_view robot, power_source;
    std::vector<Arc> arcs;
  };
  std::vector<OfSource> all_;
  std::map<std::pair<std::string_view, std::string_view>, std::size_t> of_;
};

/// What a pass asks of a power source.
struct PassLoad {
  double current_A = 0;
  std::string_view power_source;  ///< as scheduled; empty: the one that the robot has loaded
};

PassLoad load_of(const PlanIndex& index, const PassEvaluation& pass) {
  const Schedule* schedule = index.schedule(pass.schedule);
  return {pass.current_A, schedule ? std::string_view(schedule->power_source) : std::string_view()};
}

std::string_view loaded_source(const Robot* robot) {
  return robot && robot->loaded ? std::string_view(robot->loaded->power_source) : std::string_view();
}

void add_arc(ArcsBySource& arcs, const PassLoad& load, std::string_view robot_id, const Robot* robot,
             double start_s, double end_s) {
  if (!(end_s > start_s)) return;
  arcs.add(robot_id, load.power_source.empty() ? loaded_source(robot) : load.power_source,
           {start_s, end_s, load.current_A * load.current_A});
}

}  // namespace

std::vector<RobotDuty> duty_of_robots(const Plan& plan, const Weldment& weldment,
                                      const Evaluation& evaluation, const CycleResult& cycle) {
  const PlanIndex index(plan);
  std::map<std::pair<std::string_view, int>, PassLoad> loads;
  for (const PassEvaluation& pass : WeldmentRows(evaluation, weldment.id).passes())
    loads[{pass.seam, pass.pass}] = load_of(index, pass);
  ArcsBySource arcs;
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc) continue;
    if (const auto load = loads.find({move.seam, move.pass}); load != loads.end())
      add_arc(arcs, load->second, move.robot, index.robot(move.robot), move.start_s, move.end_s);
  }
  return arcs.duties(cycle.cycle_time_s);
}

namespace {

constexpr const char* duty_rule = "cycle.duty.exceeded";

Findings judge_duties(const Plan& plan, const Weldment& weldment, const std::vector<RobotDuty>& duties) {
  Findings findings;
  for (const RobotDuty& duty : duties) {
    const PowerSource* source = find_by_id(plan.power_sources, duty.power_source);
    if (!source || !source->rated_current_A) continue;
    const double rated_A = *source->rated_current_A, duty_pct = source->rated_duty_pct.value_or(100);
    const double limit_A = current_at_duty_A(rated_A, duty_pct, 100.0);
    if (duty.equivalent_current_A <= limit_A * (1 + 1e-9)) continue;
    findings.push_back(
        {duty_rule, Severity::fail, weldment.id + "/" + duty.robot + "/" + duty.power_source,
         duty.equivalent_current_A, limit_A, "A",
         Sentence("cycle.duty.exceeded"_key, {{"period", UnitValue{period_s / 60, "min"}},
                                              {"current", UnitValue{duty.equivalent_current_A, "A"}},
                                              {"rated", UnitValue{rated_A, "A", UnitValue::typed_digits}},
                                              {"duty", UnitValue{duty_pct, "%", UnitValue::typed_digits}},
                                              {"limit", UnitValue{limit_A, "A"}}}),
         "IEC 60974-1 duty cycle of 10 min (recalled); I2 = I1*sqrt(D1/D2), an estimate"});
  }
  return findings;
}

}  // namespace

Findings duty_of_timeline(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                          const CycleResult& cycle) {
  return judge_duties(plan, weldment, duty_of_robots(plan, weldment, evaluation, cycle));
}

namespace {

/// The current that a power source carries permanently; infinite where it isn't rated.
double lasting_current_A(const PowerSource* source) {
  if (!source || !source->rated_current_A) return std::numeric_limits<double>::infinity();
  return current_at_duty_A(*source->rated_current_A, source->rated_duty_pct.value_or(100), 100.0);
}

/// The least permanent current of the sources that may weld with a schedule: its own source, else what
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
/// isn't needed to know that nothing is exceeded.
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

/// What each pass of the model asks of its source, in their order.
std::vector<PassLoad> loads_of(const Weldment& weldment, const PlanIndex& index, WeldmentRows rows,
                               const CellModel& model) {
  std::vector<PassLoad> loads;
  loads.reserve(model.passes.size());
  for (const CellSeam& seam : model.seams)
    for (int pass = 1; pass <= seam.pass_count; ++pass)
      loads.push_back(load_of(index, *rows.pass(weldment.seams[seam.source].id, pass)));
  return loads;
}

/// The timeline of the given order, of which only the arcs are kept: the cycle's other bars take many times
/// their memory.
std::vector<RobotDuty> duties_as_given(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                                       const WeldmentRows& rows) {
  const CellModel model = compile_cell(plan, index, weldment, rows).model;
  std::vector<ArcTime> times;
  const double weld_s = Scheduler(model).makespan_s(sequence_given(model), times);
  const std::vector<PassLoad> loads = loads_of(weldment, index, rows, model);
  ArcsBySource arcs;
  // By robot, as the bars of a cycle are.
  for (int i = 0; i < model.robot_count(); ++i) {
    const Robot& robot = plan.cell->robots[static_cast<std::size_t>(i)];
    for (const ArcTime& time : times)
      if (time.robot == i)
        add_arc(arcs, loads[static_cast<std::size_t>(time.pass)], robot.id, &robot, time.start_s, time.end_s);
  }
  return arcs.duties(
      station_cycle_s(plan.cell->stations, weld_s, weldment.load_s, weldment.unload_s, plan.cell->index_s));
}

/// `cycle.duty.exceeded` of one weldment.
Findings duty_of_weldment(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                          const WeldmentRows& rows) {
  Findings findings = judge_duties(plan, weldment, duties_as_given(plan, index, weldment, rows));
  apply_acceptances(plan, AcceptanceScope::cycle_of(weldment.id), findings);
  std::erase_if(findings, [](const Finding& finding) { return finding.rule != duty_rule; });
  return findings;
}

}  // namespace

Findings duty_findings(const Plan& plan, const Evaluation& evaluation) {
  Findings findings;
  if (!plan.cell) return findings;
  const DutyInDoubt in_doubt(plan);
  std::vector<std::pair<const Weldment*, WeldmentRows>> doubtful;
  RowsByWeldment rows(evaluation);
  for (const Weldment& weldment : plan.weldments) {
    const WeldmentRows own = rows.next(weldment.id);
    if (std::any_of(own.passes().begin(), own.passes().end(), std::cref(in_doubt)))
      doubtful.emplace_back(&weldment, own);
  }
  if (doubtful.empty()) return findings;
  const PlanIndex index(plan);
  std::vector<Findings> of_weldment(doubtful.size());
  ThreadPool::shared().parallel_for(doubtful.size(), 1, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      of_weldment[i] = duty_of_weldment(plan, index, *doubtful[i].first, doubtful[i].second);
  });
  for (Findings& each : of_weldment)
    findings.insert(findings.end(), std::make_move_iterator(each.begin()),
                    std::make_move_iterator(each.end()));
  return findings;
}

}  // namespace seamtakt
