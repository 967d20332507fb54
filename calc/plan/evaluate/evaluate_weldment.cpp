#include "plan/evaluate/evaluate_weldment.hpp"

#include "plan/bow/weldment_bow.hpp"

namespace seamtakt {

namespace {

/// What robots do of a sum, beside the whole.
struct Share {
  double robot = 0, all = 0;
  void add(double amount, bool by_robot) {
    all += amount;
    if (by_robot) robot += amount;
  }
  double pct() const { return all > 0 ? 100 * robot / all : 0; }
};

double pass_cost(const Costs& costs, const PlanIndex& index, bool by_robot, const PassEvaluation& pass) {
  const PlanIndex::ScheduleParts& parts = index.parts_of(*index.schedule(pass.schedule));
  const double hourly = by_robot ? costs.robot_per_h : costs.labour_per_h;
  return pass.wire_g / 1000 * parts.wire->price_per_kg +
         pass.gas_l / 1000 * (parts.gas ? parts.gas->price_per_m3 : 0) +
         pass.energy_kWh * costs.energy_per_kWh + pass.arc_time_s / 3600 * hourly;
}

}  // namespace

WeldmentEvaluation evaluate_weldment(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                                     std::span<const PassEvaluation> passes, ExplanationSink* sink) {
  WeldmentEvaluation result;
  result.weldment = weldment.id;
  const Costs costs = plan.costs.value_or(Costs{});
  Share length, deposit, time;
  std::size_t next = 0;
  for (const Seam& seam : weldment.seams)
    for (std::size_t k = 0; k < seam.schedules.size(); ++k) {
      const PassEvaluation& pass = passes[next++];
      const bool robot = seam.by == "robot";
      result.arc_time_s += pass.arc_time_s;
      result.wire_kg += pass.wire_g / 1000;
      result.gas_l += pass.gas_l;
      result.energy_kWh += pass.energy_kWh;
      result.cost += pass_cost(costs, index, robot, pass);
      length.add(k == 0 ? pass.length_mm : 0, robot);
      deposit.add(pass.deposition_rate_kg_h * pass.arc_time_s, robot);
      time.add(pass.arc_time_s, robot);
    }
  result.robot_share_pct = length.pct();
  result.robot_share_deposit_pct = deposit.pct();
  result.robot_share_arc_time_pct = time.pct();
  if (const auto bow = weldment_bow(weldment, passes, sink)) result.bow_mm = bow->bow_mm;
  return result;
}

}  // namespace seamtakt
