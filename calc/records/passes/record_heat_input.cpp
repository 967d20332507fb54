#include <algorithm>
#include <cmath>

#include "base/units/units.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/metal/composition.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/uncertainty/guard_band.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

std::optional<double> efficiency_of(PassReview& review) {
  const std::string& process =
      review.schedule() != nullptr ? review.schedule()->process : review.options.process;
  if (process.empty()) {
    review.add("record.process.unknown", Severity::note,
               "Neither a plan nor --process tells the process, so no thermal efficiency: arc energy, but no "
               "heat input.",
               "EN 1011-1:2009, Table 1");
    return std::nullopt;
  }
  const auto k = thermal_efficiency_of(process);
  if (!k)
    review.undecide("record.process.no-efficiency",
                    "No thermal efficiency is given for process " + process + ": no heat input.",
                    "EN 1011-1:2009, Table 1");
  return k;
}

/// E = W/L with W from u, i and time: relative uncertainties add as squares (JCGM 100:2008, 5.1.6); k is a
/// convention and has none, that of time is negligible.
void add_uncertainty(PassReview& review) {
  PassRecord& record = review.record;
  if (review.plan == nullptr || !record.heat_input_kJ_mm) return;
  const Plan& plan = review.plan->plan();
  const std::string robot = review.robot != nullptr ? review.robot->id : record.robot;
  double squares = 0;
  bool any = false;
  const auto include = [&](const char* quantity, const std::optional<double>& value) {
    const auto u = value ? relative_uncertainty(plan, robot, quantity, *value) : std::nullopt;
    any = any || u.has_value();
    squares += u.value_or(0) * u.value_or(0);
  };
  include("current", record.mean_current_A);
  include("voltage", record.mean_voltage_V);
  include("travel_speed", record.travel_speed_mm_s);
  if (any) record.U_heat_input_kJ_mm = coverage_factor * std::sqrt(squares) * *record.heat_input_kJ_mm;
}

/// The harder of the two plates, each by its own composition and cooling (yurioka); empty where a composition
/// is missing.
std::optional<double> hardness_of(const Plan& plan, const Seam& seam, double heat_input_kJ_mm, double from_C,
                                  const ShapeFactors& shape) {
  std::optional<double> worse;
  for (std::size_t plate = 0; plate < std::min(seam.thickness_mm.size(), seam.base_metals.size()); ++plate) {
    const BaseMetal* metal = find_by_id(plan.base_metals, seam.base_metals[plate]);
    if (metal == nullptr || metal->composition_pct.empty()) return std::nullopt;
    const double time_s =
        cooling_time(heat_input_kJ_mm, seam.thickness_mm[plate], from_C, shape.f2, shape.f3).time_s;
    const auto hardness =
        yurioka_hardness_HV(hardening_elements(composition_of<double>(metal->composition_pct)), time_s);
    if (hardness && (!worse || *hardness > *worse)) worse = hardness;
  }
  return worse;
}

/// From the logged temperature where there is one: T0 of the formula is the preheat or interpass temperature
/// that the weld begins at (en-1011-2, Annex D, D.5), and that is measured rather than planned.
void add_cooling_time(PassReview& review) {
  PassRecord& record = review.record;
  const Seam* seam = review.seam();
  if (seam == nullptr || !record.heat_input_kJ_mm || *record.heat_input_kJ_mm <= 0 ||
      seam->thickness_mm.empty())
    return;
  const auto shape = shape_factors_of(seam->joint);
  const double from_C = record.interpass_C.value_or(review.schedule()->preheat_C);
  if (!shape || from_C >= preheat_below_C) return;
  record.cooling_from_C = from_C;
  record.cooling_from_source = record.interpass_C ? "log" : "schedule";
  const double thinner = *std::min_element(seam->thickness_mm.begin(), seam->thickness_mm.end());
  const double Q = *record.heat_input_kJ_mm;
  record.cooling_time_s = cooling_time(Q, thinner, from_C, shape->f2, shape->f3).time_s;
  record.haz_hardness_HV = hardness_of(review.plan->plan(), *seam, Q, from_C, *shape);
}

}  // namespace

void fill_heat_input(PassReview& review) {
  PassRecord& record = review.record;
  if (!record.energy_J || !record.length_mm || *record.length_mm <= 0) return;
  record.arc_energy_kJ_mm = arc_energy_of_weld_kJ_mm(*record.energy_J, *record.length_mm);
  if (const auto k = efficiency_of(review))
    record.heat_input_kJ_mm = heat_input_kJ_mm(*record.arc_energy_kJ_mm, *k);
  add_uncertainty(review);
  add_cooling_time(review);
}

}  // namespace seamtakt
