#include "plan/evaluate/evaluate_weldment.hpp"

#include <cmath>

#include "formula/strength/distortion.hpp"

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

/// How far a seam is from the neutral axis (y, z), at the middle of its path's points, and its extent along
/// x.
struct SeamLever {
  double y_mm = 0, z_mm = 0, extent_x_mm = 0;
};

SeamLever lever_of(const Seam& seam, const Section& section) {
  double y = 0, z = 0, low = seam.path_mm[0][0], high = low;
  for (const Point_mm& point : seam.path_mm) {
    y += point[1];
    z += point[2];
    low = std::min(low, point[0]);
    high = std::max(high, point[0]);
  }
  const auto points = static_cast<double>(seam.path_mm.size());
  return {y / points - section.neutral_axis_mm[0], z / points - section.neutral_axis_mm[1], high - low};
}

std::optional<double> bow_mm(const Weldment& weldment, std::span<const PassEvaluation> passes) {
  if (!weldment.section || !weldment.section->second_moment_mm4 ||
      weldment.section->neutral_axis_mm.size() != 2)
    return {};
  double bow_y = 0, bow_z = 0;
  std::size_t next = 0;
  for (const Seam& seam : weldment.seams) {
    double area = 0;
    for (std::size_t pass = 0; pass < seam.schedules.size(); ++pass) area += passes[next++].deposit_area_mm2;
    const SeamLever lever = lever_of(seam, *weldment.section);
    bow_y += longitudinal_bow_mm(area, lever.extent_x_mm, lever.y_mm, *weldment.section->second_moment_mm4);
    bow_z += longitudinal_bow_mm(area, lever.extent_x_mm, lever.z_mm, *weldment.section->second_moment_mm4);
  }
  return std::hypot(bow_y, bow_z);
}

}  // namespace

WeldmentEvaluation evaluate_weldment(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                                     std::span<const PassEvaluation> passes) {
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
  result.bow_mm = bow_mm(weldment, passes);
  return result;
}

}  // namespace seamtakt
