#include "records/keep/heat_basis.hpp"

#include <cmath>

#include "base/json/json_writer.hpp"
#include "formula/heat/heat_input.hpp"
#include "ledger/store/ledger.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

namespace {

/// The plan that is kept with the record may not be the one that judged it: then its figures differ.
bool is_same(double a, double b) {
  return std::fabs(a - b) <= 1e-9 * std::fabs(b);
}

void take_plate(const Plan& plan, const PassRecord& record, const Schedule& schedule, HeatBasis& basis) {
  const Seam* seam = planned_seam(plan, record);
  if (seam == nullptr || !record.cooling_time_s) return;
  for (const std::optional<double>& from_C :
       {std::optional<double>(schedule.preheat_C), record.interpass_C}) {
    HeatBasis tried = basis;
    if (!from_C || !set_plate(tried, *seam, *from_C)) continue;
    const auto time_s = recorded_cooling_time_s(record.heat_input_kJ_mm, tried);
    if (!time_s || !is_same(*time_s, *record.cooling_time_s)) continue;
    basis = tried;
    return;
  }
}

}  // namespace

std::string heat_basis_text(const Plan& plan, const PassRecord& record) {
  const Schedule* schedule = find_by_id(plan.schedules, record.schedule);
  if (schedule == nullptr || !record.heat_input_kJ_mm || !record.arc_energy_kJ_mm) return {};
  HeatBasis basis;
  if (const auto k = thermal_efficiency_of(schedule->process);
      k && is_same(heat_input_kJ_mm(*record.arc_energy_kJ_mm, *k), *record.heat_input_kJ_mm))
    basis.efficiency = k;
  take_plate(plan, record, *schedule, basis);
  if (!basis.efficiency) return {};
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("k", basis.efficiency);
  if (basis.thickness_mm)
    json.member("thickness_mm", basis.thickness_mm)
        .member("F2", basis.F2)
        .member("F3", basis.F3)
        .member("from_C", basis.from_C);
  json.end_object();
  return json.take();
}

HeatBasis heat_basis_of(const JsonNode& body) {
  HeatBasis basis;
  if (const JsonNode* kept = body.find(heat_basis_member)) {
    basis.efficiency = body_number(*kept, "k");
    basis.thickness_mm = body_number(*kept, "thickness_mm");
    basis.F2 = body_number(*kept, "F2");
    basis.F3 = body_number(*kept, "F3");
    basis.from_C = body_number(*kept, "from_C");
  }
  const auto heat = body_number(body, "results.heat_input_kJ_mm"),
             arc = body_number(body, "results.arc_energy_kJ_mm");
  if (!basis.efficiency && heat && arc && *arc > 0) basis.efficiency = *heat / *arc;
  return basis;
}

}  // namespace seamtakt
