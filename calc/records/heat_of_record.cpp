#include <algorithm>
#include <cmath>

#include "base/units.hpp"
#include "formula/cooling_time.hpp"
#include "formula/guard_band.hpp"
#include "formula/heat_input.hpp"
#include "plan/instrument_uncertainty.hpp"
#include "records/pass_review.hpp"

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

void add_cooling_time(PassReview& review) {
  PassRecord& record = review.record;
  const Seam* seam = review.seam();
  if (seam == nullptr || !record.heat_input_kJ_mm || *record.heat_input_kJ_mm <= 0 ||
      seam->thickness_mm.empty())
    return;
  const auto shape = shape_factors_of(seam->joint);
  const double preheat = review.schedule()->preheat_C;
  if (!shape || preheat >= preheat_below_C) return;
  const double thinner = *std::min_element(seam->thickness_mm.begin(), seam->thickness_mm.end());
  record.cooling_time_s =
      cooling_time(*record.heat_input_kJ_mm, thinner, preheat, shape->f2, shape->f3).time_s;
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
