#include <cmath>

#include "base/units/units.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

std::string times(std::uint64_t count) {
  return count == 1 ? "once" : std::to_string(count) + " times";
}
std::string first_at(const Irregularity& what) {
  return "first at line " + std::to_string(what.first_line);
}
std::string in_seconds(double s) {
  return rounded_text(s, 4) + " s";
}

void check_order(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (totals.backwards.count > 0)
    review.add("record.time.backwards", Severity::fail,
               "Time goes backwards " + times(totals.backwards.count) + " within the pass, " +
                   first_at(totals.backwards) +
                   ": the record can't be trusted (small disorder can be put right with --sort-window).");
  if (totals.equal_times.count > 0)
    review.add("record.time.equal", Severity::note,
               "Samples have the same time as the one before " + times(totals.equal_times.count) + ", " +
                   first_at(totals.equal_times) + ".");
  if (totals.holes.count > 0)
    review.add("record.samples.hole", Severity::warn,
               "Samples are missing " + times(totals.holes.count) + " with the arc on before, " +
                   first_at(totals.holes) + ": that time counts as arc-off.");
}

void check_border(PassReview& review) {
  if (review.entry.is_cut)
    review.undecide(
        unit_border_rule,
        "The arc was on where the time of a unit ended: this pass was cut there, and which unit it "
        "was welded on can't be told.");
}

void check_frozen(PassReview& review) {
  const Irregularity& frozen = review.totals.frozen;
  if (frozen.count == 0) return;
  auto& finding = review.undecide("record.logger.frozen",
                                  "Current and voltage repeat to the last digit for " +
                                      in_seconds(review.record.frozen_s) + ", " + first_at(frozen) +
                                      ": a frozen logger, left out of the arc time.");
  finding.value = review.record.frozen_s;
  finding.limit = review.options.frozen_s;
  finding.unit = "s";
}

void check_values(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (totals.whole.no_power_ns > 0)
    review.undecide("record.power.missing", "Voltage, power or energy is missing for " +
                                                in_seconds(seconds(totals.whole.no_power_ns)) +
                                                " of the arc time: the energy is too low by that.");
  if (totals.counter_resets.count > 0)
    review.add("record.counter.reset", Severity::warn,
               "A counter goes back " + times(totals.counter_resets.count) + ", " +
                   first_at(totals.counter_resets) + ": that step isn't counted.");
  if (totals.arc_on_disagrees.count > 0)
    review.add("record.arc-on.disagrees", Severity::note,
               "The logged arc_on disagrees with the current " + times(totals.arc_on_disagrees.count) + ", " +
                   first_at(totals.arc_on_disagrees) + "; the current decides.");
}

void check_energy_method(PassReview& review) {
  const Schedule* schedule = review.schedule();
  const PassRecord& record = review.record;
  if (schedule == nullptr || schedule->waveform != "waveform-controlled") return;
  if (record.waveform_factor) {
    auto& finding = review.add(
        "record.energy.method-a", Severity::warn,
        "Averaged signals (method A) on a waveform-controlled schedule: power and energy are the product of "
        "means times the schedule's waveform factor " +
            rounded_text(*record.waveform_factor, 4) + ".",
        "ISO/TR 18491:2015, method A");
    finding.value = *record.waveform_factor;
    return;
  }
  if (record.energy_method == "A")
    review.add("record.energy.method-a", Severity::warn,
               "Averaged signals (method A) on a waveform-controlled schedule; power or energy is logged, so "
               "no waveform factor is applied.",
               "ISO/TR 18491:2015, method A");
  const double step_s = review.totals.steps > 0
                            ? seconds(review.totals.steps_ns) / static_cast<double>(review.totals.steps)
                            : 0;
  const bool sampled =
      record.energy_method == "B" && review.entry.energy_source == EnergySource::voltage_and_current;
  if (sampled && step_s > 0.001)
    review.add("record.sampling.coarse", Severity::note,
               "Samples every " + rounded_text(step_s * 1000, 3) +
                   " ms don't follow the waveform: the mean of their products holds only as a sample of it.");
}

/// A wire counter is compared and never decides anything.
void compare_wire_counter(PassReview& review) {
  const PassRecord& record = review.record;
  if (!record.wire_counter_m_min) return;
  const auto reference = record.wire_feed_speed_m_min ? record.wire_feed_speed_m_min
                         : review.schedule() != nullptr
                             ? std::optional<double>(review.schedule()->wire_feed_speed_m_min)
                             : std::nullopt;
  if (!reference || *reference <= 0) return;
  const double ratio = *record.wire_counter_m_min / *reference;
  if (std::fabs(ratio - 1) <= 0.1) return;
  auto& finding = review.add("record.wire.counter", Severity::note,
                             "The wire counter gives " + rounded_text(*record.wire_counter_m_min, 4) +
                                 " m/min, the " + (record.wire_feed_speed_m_min ? "logged" : "planned") +
                                 " wire feed is " + rounded_text(*reference, 4) + " m/min.");
  finding.value = *record.wire_counter_m_min;
  finding.limit = *reference;
  finding.unit = "m/min";
}

}  // namespace

void check_log(PassReview& review) {
  check_order(review);
  check_border(review);
  check_frozen(review);
  check_values(review);
  check_energy_method(review);
  compare_wire_counter(review);
}

}  // namespace seamtakt
