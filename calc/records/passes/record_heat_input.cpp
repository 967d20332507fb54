#include <algorithm>

#include "formula/heat/heat_input.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "plan/evaluate/heat_uncertainty.hpp"
#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/steel_of_metal.hpp"
#include "records/passes/heat_figures.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

std::optional<double> efficiency_of(PassReview& review) {
  const std::string& process =
      review.schedule() != nullptr ? review.schedule()->process : review.options.process;
  if (process.empty()) {
    review.add("record.process.unknown", Severity::note,
               "Neither a plan nor --process tells the process, so no thermal efficiency: arc energy, but no "
               "heat input."_word,
               "EN 1011-1:2009, Table 1");
    return std::nullopt;
  }
  const auto k = thermal_efficiency_of(process);
  if (!k)
    review.undecide("record.process.no-efficiency",
                    Sentence("record.process.no-efficiency"_key, {{"process", process}}),
                    "EN 1011-1:2009, Table 1");
  return k;
}

/// The harder of the two plates, each by its own composition and cooling (yurioka); empty where a composition
/// is missing.
std::optional<double> hardness_of(const Plan& plan, const Seam& seam, double heat_input_kJ_mm,
                                  HeatBasis basis) {
  std::optional<double> worse;
  for (std::size_t plate = 0; plate < std::min(seam.thickness_mm.size(), seam.base_metals.size()); ++plate) {
    const BaseMetal* metal = find_by_id(plan.base_metals, seam.base_metals[plate]);
    if (metal == nullptr || metal->composition_pct.empty()) return std::nullopt;
    basis.thickness_mm = seam.thickness_mm[plate];
    const auto hardness =
        yurioka_hardness_HV(hardening_elements(steel_of(*metal, seam.thickness_mm[plate]).steel),
                            *recorded_cooling_time_s(heat_input_kJ_mm, basis));
    if (hardness && (!worse || *hardness > *worse)) worse = hardness;
  }
  return worse;
}

/// From the logged temperature where there is one: T0 of the formula is the preheat or interpass temperature
/// that the weld begins at (en-1011-2, Annex D, D.5), and that is measured rather than planned.
void add_cooling_time(PassReview& review, HeatBasis& basis) {
  PassRecord& record = review.record;
  const Seam* seam = review.seam();
  if (seam == nullptr) return;
  const double from_C = record.interpass_C.value_or(review.schedule()->preheat_C);
  if (!set_plate(basis, *seam, from_C)) return;
  record.cooling_time_s = recorded_cooling_time_s(record.heat_input_kJ_mm, basis);
  if (!record.cooling_time_s) return;
  record.cooling_from_C = from_C;
  record.cooling_from_source = record.interpass_C ? "log" : "schedule";
  record.haz_hardness_HV = hardness_of(review.plan->plan(), *seam, *record.heat_input_kJ_mm, basis);
}

void fill_uncertainty(PassRecord& record, const MeasuringUncertainty& measured) {
  record.U_heat_input_kJ_mm = U_heat_input_kJ_mm(*record.heat_input_kJ_mm, measured);
  if (!record.U_heat_input_kJ_mm) return;
  record.u_voltage_pct = 100 * measured.voltage_in_all();
  record.u_current_pct = 100 * measured.current;
  record.u_travel_speed_pct = 100 * measured.travel_speed;
  if (record.waveform_factor) record.u_waveform_factor_pct = 100 * measured.waveform_factor;
}

}  // namespace

MeasuringUncertainty measured_with(const PassReview& review) {
  const PassRecord& record = review.record;
  MeasuringUncertainty u = measuring_uncertainty(review.plan->plan(), review.measured_robot(),
                                                 {.current_A = record.mean_current_A,
                                                  .voltage_V = record.mean_voltage_V,
                                                  .travel_speed_mm_s = record.travel_speed_mm_s,
                                                  .wire_feed_speed_m_min = {}});
  // Energy that was logged as such isn't corrected for the leads (correct_for_leads).
  if (review.entry.energy_source != EnergySource::voltage_and_current) u.leads = 0;
  if (record.waveform_factor) u.waveform_factor = waveform_factor_uncertainty(*review.schedule());
  return u;
}

void fill_heat_input(PassReview& review) {
  PassRecord& record = review.record;
  record.arc_energy_kJ_mm = recorded_arc_energy_kJ_mm(record.energy_J, record.length_mm);
  if (!record.arc_energy_kJ_mm) return;
  HeatBasis basis;
  basis.efficiency = efficiency_of(review);
  record.thermal_efficiency = basis.efficiency;
  record.heat_input_kJ_mm = recorded_heat_input_kJ_mm(record.arc_energy_kJ_mm, basis);
  if (record.heat_input_kJ_mm && review.plan != nullptr) fill_uncertainty(record, measured_with(review));
  add_cooling_time(review, basis);
}

}  // namespace seamtakt
