#include "records/passes/lead_correction.hpp"

#include "plan/evaluate/instrument_uncertainty.hpp"

namespace seamtakt {

namespace {

void take_off(std::optional<double>& value, double lost) {
  if (value) *value -= lost;
}

}  // namespace

void correct_for_leads(PassReview& review) {
  PassRecord& record = review.record;
  const double ohm = review.plan != nullptr ? lead_ohm(review.plan->plan(), review.measured_robot()) : 0;
  if (ohm <= 0 || !record.mean_voltage_V || !record.mean_current_A) return;
  record.lead_resistance_mOhm = 1000 * ohm;
  take_off(record.mean_voltage_V, ohm * *record.mean_current_A);
  record.product_power_W = *record.mean_voltage_V * *record.mean_current_A;
  if (record.steady.current_A) take_off(record.steady.voltage_V, ohm * *record.steady.current_A);
  if (review.entry.energy_source != EnergySource::voltage_and_current || !record.rms_current_A) return;
  const double lost_W = ohm * *record.rms_current_A * *record.rms_current_A;
  take_off(record.mean_power_W, lost_W);
  // The energy is of trapezoids, this of steps: they differ by half a sample at each end of an arc.
  take_off(record.energy_J, lost_W * seconds(review.totals.whole.means.power.ns));
  if (!record.steady.current_A) return;
  // The ripple of the steady part is taken to be that of the pass.
  const double ratio = *record.steady.current_A / *record.mean_current_A;
  take_off(record.steady.power_W, lost_W * ratio * ratio);
}

}  // namespace seamtakt
