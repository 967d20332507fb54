#include "base/units/units.hpp"
#include "records/passes/lead_correction.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

std::uint64_t samples_of(const PassEntry& entry, const PassTotals& totals) {
  return entry.numbered ? totals.samples_to_arc_end : totals.samples;
}

void fill_identity(PassReview& review) {
  const PassEntry& entry = review.entry;
  PassRecord& record = review.record;
  record.unit_serial = entry.key.unit_serial;
  record.weldment = entry.key.weldment;
  record.seam = entry.key.seam;
  if (entry.key.pass > 0) record.pass = entry.key.pass;
  if (entry.planned) record.schedule = entry.planned->schedule->id;
  record.schedule_revision_logged = entry.schedule_revision;
  record.robot = entry.robot;
  record.carried = entry.carried;
}

void fill_times(PassReview& review) {
  const PassTotals& totals = review.totals;
  PassRecord& record = review.record;
  const std::int64_t last_ns = review.entry.numbered ? totals.arc_end_ns : totals.latest_ns;
  record.samples = samples_of(review.entry, totals);
  record.duration_s = seconds(last_ns - totals.first_ns);
  record.arc_time_s = seconds(totals.whole.means.time_ns);
  record.arc_starts = totals.arc_starts;
  record.frozen_s = seconds(totals.frozen_ns);
  record.interruptions = totals.interruptions;
  record.interruption_count = totals.interruption_count;
  record.source_line_first = totals.first_line;
  record.source_line_last = review.entry.numbered ? totals.line_of_arc_end : totals.last_line;
  record.first_ns = totals.first_ns;
  record.first_arc_ns = totals.first_arc_ns;
  record.last_arc_ns = totals.arc_end_ns;
  record.has_calendar_time = !review.entry.counts_seconds;
  if (review.entry.counts_seconds) return;
  record.started = utc_text_of_ns(totals.first_ns);
  record.date = date_text({totals.first_ns, totals.utc_offset_min, true});
}

/// The schedule's waveform factor, where averaged signals would give the product of means instead of the mean
/// product.
std::optional<double> factor_to_apply(const PassReview& review) {
  const Schedule* schedule = review.schedule();
  const bool product_of_means = review.entry.signal == LogSignal::averaged &&
                                review.entry.energy_source == EnergySource::voltage_and_current;
  if (!product_of_means || schedule == nullptr || schedule->waveform != "waveform-controlled")
    return std::nullopt;
  return schedule->waveform_factor;
}

void fill_means(PassReview& review) {
  const ArcSums& whole = review.totals.whole;
  PassRecord& record = review.record;
  record.mean_current_A = whole.means.current.mean();
  record.mean_voltage_V = whole.means.voltage.mean();
  record.mean_power_W = whole.mean_power_W();
  if (record.mean_current_A && record.mean_voltage_V)
    record.product_power_W = *record.mean_current_A * *record.mean_voltage_V;
  record.wire_feed_speed_m_min = whole.means.wire_feed.mean();
  record.gas_flow_l_min = whole.means.gas_flow.mean();
  record.rms_current_A = whole.rms_current_A();
  record.sd_current_A = whole.sd_current_A();
  record.sd_voltage_V = whole.sd_voltage_V();
  record.interpass_C = review.totals.interpass_C;
  record.min_current_A = whole.min_current_A;
  record.max_current_A = whole.max_current_A;
  record.min_voltage_V = whole.min_voltage_V;
  record.max_voltage_V = whole.max_voltage_V;
  const double used_mm = whole.wire_used_mm.value();
  if (used_mm > 0 && record.arc_time_s > 0)
    record.wire_counter_m_min = used_mm / record.arc_time_s * 60 / 1000;
  const PassTotals& totals = review.totals;
  if (totals.moved_arcs > 0) {
    record.start_stand_s = seconds(totals.start_stand_ns) / static_cast<double>(totals.moved_arcs);
    record.end_stand_s = seconds(totals.end_stand_ns) / static_cast<double>(totals.moved_arcs);
  }
  const SteadySums& steady = review.totals.steady;
  record.steady.time_s = seconds(steady.time_ns);
  record.steady.current_A = steady.current.mean();
  record.steady.voltage_V = steady.voltage.mean();
  record.steady.power_W = steady.power.mean();
  record.steady.wire_feed_speed_m_min = steady.wire_feed.mean();
  record.steady.travel_speed_mm_s = steady.travel_speed.mean();
  record.steady.gas_flow_l_min = steady.gas_flow.mean();
}

const char* power_method_of(const PassReview& review) {
  switch (review.entry.energy_source) {
    case EnergySource::power:
      return "logged power";
    case EnergySource::energy_counter:
      return "energy counter";
    case EnergySource::voltage_and_current:
      break;
  }
  return review.entry.signal == LogSignal::averaged ? "product of means" : "mean product";
}

void fill_energy(PassReview& review) {
  PassRecord& record = review.record;
  const bool power_logged = review.entry.energy_source == EnergySource::power;
  record.energy_method = review.entry.signal == LogSignal::averaged ? "A" : power_logged ? "C" : "B";
  record.power_method = power_method_of(review);
  if (record.mean_power_W) record.energy_J = review.totals.whole.energy_J();
  correct_for_leads(review);
  record.waveform_factor = factor_to_apply(review);
  if (!record.waveform_factor) return;
  if (record.mean_power_W) record.mean_power_W = *record.mean_power_W * *record.waveform_factor;
  if (record.energy_J) record.energy_J = *record.energy_J * *record.waveform_factor;
}

}  // namespace

void fill_figures(PassReview& review) {
  fill_identity(review);
  fill_times(review);
  fill_means(review);
  fill_energy(review);
}

}  // namespace seamtakt
