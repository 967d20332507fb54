#include <cmath>

#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"
#include "formula/wire/weld_metal_density.hpp"
#include "plan/wire_extension.hpp"
#include "records/passes/pass_review.hpp"
#include "records/passes/unit_order.hpp"

namespace seamtakt {

namespace {

constexpr double suspicious_pct = 25;

void compare(const char* rule, const PassRecord& record, double found, double by, const char* unit,
             Sentence sentence, Findings& findings) {
  if (!(by > 0) || std::fabs(found / by - 1) * 100 <= suspicious_pct) return;
  findings.push_back({rule, Severity::warn, record.place(), found, by, unit, std::move(sentence), no_source});
}

/// Area that the wire fed lays (mm2).
double fed_area_mm2(const Wire& wire, double feed_m_min, double travel_mm_s) {
  const double weld_metal = weld_metal_density_g_cm3(wire.material);
  const double density = wire.density_g_cm3 > 0 ? wire.density_g_cm3 : weld_metal;
  const double efficiency = wire.deposition_efficiency > 0 ? wire.deposition_efficiency : 1;
  const double melted_kg_h = melting_rate_kg_h(wire_area_mm2(wire.diameter_mm), feed_m_min, density);
  return deposit_area_mm2(deposition_rate_kg_h(melted_kg_h, efficiency), travel_mm_s, weld_metal);
}

}  // namespace

void check_contradictions(const std::vector<PassRecord>& records, const PlannedPasses& plan,
                          Findings& findings) {
  for (const PassRecord& record : records) {
    const Schedule* schedule = find_by_id(plan.plan().schedules, record.schedule);
    const Wire* wire = schedule != nullptr ? find_by_id(plan.plan().wires, schedule->wire) : nullptr;
    const auto& feed = record.steady.wire_feed_speed_m_min;
    if (wire == nullptr || !feed || *feed <= 0) continue;
    const double feed_mm_s = feed_mm_s_from_m_min(*feed);
    const double extension = wire_extension_mm(*schedule);
    const bool has_law = wire->alpha_mm_s_A > 0 || wire->beta_per_s_A2 > 0;
    if (record.steady.current_A && has_law && extension > 0 && schedule->waveform != "waveform-controlled") {
      const double melts_at =
          melting_current_A(feed_mm_s, extension, wire->alpha_mm_s_A, wire->beta_per_s_A2);
      compare("record.contradiction.current", record, *record.steady.current_A, melts_at, "A",
              Sentence("record.contradiction.current"_key,
                       {{"feed", UnitValue{*feed, "m/min"}},
                        {"melts_at", UnitValue{melts_at, "A", 3}},
                        {"logged", UnitValue{*record.steady.current_A, "A", 3}}}),
              findings);
    }
    const auto& travel = record.steady.travel_speed_mm_s;
    if (!travel || *travel <= 0 || schedule->travel_speed_mm_s <= 0) continue;
    const double planned = fed_area_mm2(*wire, schedule->wire_feed_speed_m_min, schedule->travel_speed_mm_s);
    const double fed = fed_area_mm2(*wire, *feed, *travel);
    compare("record.contradiction.area", record, fed, planned, "mm2",
            Sentence("record.contradiction.area"_key,
                     {{"fed", UnitValue{fed, "mm2", 3}}, {"planned", UnitValue{planned, "mm2", 3}}}),
            findings);
  }
}

}  // namespace seamtakt
