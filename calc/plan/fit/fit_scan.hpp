#pragma once

#include "formula/wire/deposition.hpp"
#include "plan/fit/fit_search.hpp"

namespace seamtakt {

template <class Visit>
void scan(const WindowModel& model, const std::vector<double>& feeds, const std::vector<double>& speeds,
          const Visit& visit) {
  const std::size_t count = speeds.size();
  std::vector<double> room(7 * count);
  const auto part = [&](std::size_t k) { return room.data() + k * count; };
  const RowFigures figures{part(0), part(1), part(2), part(3), model.preheat ? part(4) : nullptr,
                           part(5), part(6)};
  std::vector<std::uint32_t> masks(count);
  for (const double feed_speed : feeds) {
    const FeedFigures feed = feed_figures(model, feed_speed);
    compute_row(model, feed_speed, feed, speeds, figures, masks.data());
    FitPoint point;
    point.wire_feed_speed_m_min = feed_speed;
    point.arc_voltage_V = feed.arc_voltage_V;
    point.current_A = feed.current_A;
    point.arc_power_W = feed.power_W;
    point.melting_rate_kg_h = melting_rate_kg_h(model.wire_area_mm2, feed_speed, model.wire_density_g_cm3);
    point.passes = static_cast<int>(model.passes);
    for (std::size_t j = 0; j < count; ++j) {
      point.travel_speed_mm_s = speeds[j];
      point.heat_input_kJ_mm = figures.heat_input_kJ_mm[j];
      visit(point, masks[j], figures.leg_mm[j], figures.deposit_area_mm2[j]);
    }
  }
}

}  // namespace seamtakt
