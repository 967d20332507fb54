#include "records/keep/heat_basis.hpp"

#include <algorithm>
#include <cmath>

#include "base/json/json_writer.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "ledger/store/ledger.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

namespace {

/// The plan that is kept with the record may not be the one that judged it: then its figures differ.
bool is_same(double a, double b) {
  return std::fabs(a - b) <= 1e-9 * std::fabs(b);
}

std::optional<double> number_at(const JsonNode& body, std::string_view path) {
  const JsonNode* value = body_member(body, path);
  return value != nullptr && value->kind == JsonNode::Kind::number ? std::optional<double>(value->number)
                                                                   : std::nullopt;
}

const Seam* seam_of(const Plan& plan, const PassRecord& record) {
  for (const Weldment& weldment : plan.weldments)
    if (weldment.id == record.weldment) return find_by_id(weldment.seams, record.seam);
  return nullptr;
}

void take_plate(const Plan& plan, const PassRecord& record, const Schedule& schedule, HeatBasis& basis) {
  const Seam* seam = seam_of(plan, record);
  if (seam == nullptr || seam->thickness_mm.empty() || !record.cooling_time_s || !record.heat_input_kJ_mm)
    return;
  const auto shape = shape_factors_of(seam->joint);
  if (!shape) return;
  const double thinner = *std::min_element(seam->thickness_mm.begin(), seam->thickness_mm.end());
  for (const std::optional<double>& from_C :
       {std::optional<double>(schedule.preheat_C), record.interpass_C}) {
    if (!from_C || *from_C >= preheat_below_C) continue;
    const double time_s =
        cooling_time(*record.heat_input_kJ_mm, thinner, *from_C, shape->f2, shape->f3).time_s;
    if (!is_same(time_s, *record.cooling_time_s)) continue;
    basis.thickness_mm = thinner;
    basis.F2 = shape->f2;
    basis.F3 = shape->f3;
    basis.from_C = from_C;
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
    basis.efficiency = number_at(*kept, "k");
    basis.thickness_mm = number_at(*kept, "thickness_mm");
    basis.F2 = number_at(*kept, "F2");
    basis.F3 = number_at(*kept, "F3");
    basis.from_C = number_at(*kept, "from_C");
  }
  const auto heat = number_at(body, "results.heat_input_kJ_mm"),
             arc = number_at(body, "results.arc_energy_kJ_mm");
  if (!basis.efficiency && heat && arc && *arc > 0) basis.efficiency = *heat / *arc;
  return basis;
}

}  // namespace seamtakt
