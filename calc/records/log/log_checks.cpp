#include <cmath>
#include <optional>

#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

/// A sentence with how often it is so, and the line on which it is first.
Sentence counted(SentenceKey key, const Irregularity& what) {
  const Sentence times =
      what.count == 1 ? Sentence("once"_word) : Sentence("record.times"_key, {{"count", what.count}});
  return Sentence(key, {{"times", times}, {"line", what.first_line}});
}
UnitValue in_seconds(double s) {
  return {s, "s"};
}

void check_order(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (totals.backwards.count > 0)
    review.add("record.time.backwards", Severity::fail,
               counted("record.time.backwards"_key, totals.backwards));
  if (totals.equal_times.count > 0)
    review.add("record.time.equal", Severity::note, counted("record.time.equal"_key, totals.equal_times));
  if (totals.holes.count > 0)
    review.add("record.samples.hole", Severity::warn, counted("record.samples.hole"_key, totals.holes));
}

void check_border(PassReview& review) {
  if (review.entry.is_cut)
    review.undecide(unit_border_rule,
                    "The arc was on where the time of a unit ended: this pass was cut there, and which unit "
                    "it was welded on can't be told."_word);
}

void check_frozen(PassReview& review) {
  const Irregularity& frozen = review.totals.frozen;
  if (frozen.count == 0) return;
  auto& finding =
      review.undecide("record.logger.frozen",
                      Sentence("record.logger.frozen"_key,
                               {{"time", in_seconds(review.record.frozen_s)}, {"line", frozen.first_line}}));
  finding.value = review.record.frozen_s;
  finding.limit = review.options.frozen_s;
  finding.unit = "s";
}

void check_values(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (totals.whole.no_power_ns > 0)
    review.undecide(
        "record.power.missing",
        Sentence("record.power.missing"_key, {{"time", in_seconds(seconds(totals.whole.no_power_ns))}}));
  if (totals.counter_resets.count > 0)
    review.add("record.counter.reset", Severity::warn,
               counted("record.counter.reset"_key, totals.counter_resets));
  if (totals.arc_on_disagrees.count > 0)
    review.add("record.arc-on.disagrees", Severity::note,
               counted("record.arc-on.disagrees"_key, totals.arc_on_disagrees));
}

/// The longest step (s) between samples that follow a schedule's waveform; empty where its arc is steady. A
/// pulse takes 20 samples a period, one whose frequency isn't stated those of 300 Hz, which few exceed; a
/// waveform-controlled arc else 1 ms (common practice, no source).
std::optional<double> longest_step_s(const Schedule& schedule) {
  constexpr double samples_a_period = 20, fast_pulse_Hz = 300;
  if (schedule.pulse || schedule.transfer == "pulsed")
    return 1 / (samples_a_period * (schedule.pulse ? schedule.pulse->frequency_Hz : fast_pulse_Hz));
  return schedule.waveform == "waveform-controlled" ? std::optional<double>(0.001) : std::nullopt;
}

void check_sampling(PassReview& review) {
  const Schedule* schedule = review.schedule();
  const auto longest_s = schedule != nullptr ? longest_step_s(*schedule) : std::nullopt;
  const bool is_sampled =
      review.record.energy_method == "B" && review.entry.energy_source == EnergySource::voltage_and_current;
  if (!longest_s || !is_sampled || review.totals.steps == 0) return;
  const double step_s = seconds(review.totals.steps_ns) / static_cast<double>(review.totals.steps);
  // The steps are rounded to whole nanoseconds.
  if (step_s <= *longest_s * (1 + 1e-6)) return;
  review.add("record.sampling.coarse", Severity::note,
             Sentence("record.sampling.coarse"_key, {{"step", UnitValue{step_s * 1000, "ms", 3}},
                                                     {"longest", UnitValue{*longest_s * 1000, "ms", 2}}}));
}

void check_energy_method(PassReview& review) {
  const Schedule* schedule = review.schedule();
  const PassRecord& record = review.record;
  if (schedule == nullptr || schedule->waveform != "waveform-controlled") return;
  if (record.waveform_factor) {
    auto& finding = review.add(
        "record.energy.method-a", Severity::warn,
        Sentence("record.energy.method-a.factor"_key, {{"factor", UnitValue{*record.waveform_factor}}}),
        "ISO/TR 18491:2015, method A");
    finding.value = *record.waveform_factor;
    return;
  }
  if (record.energy_method == "A")
    review.add("record.energy.method-a", Severity::warn,
               "Averaged signals (method A) on a waveform-controlled schedule; power or energy is logged, so "
               "no waveform factor is applied."_word,
               "ISO/TR 18491:2015, method A");
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
                             Sentence(record.wire_feed_speed_m_min ? "record.wire.counter.logged"_key
                                                                   : "record.wire.counter.planned"_key,
                                      {{"counter", UnitValue{*record.wire_counter_m_min, "m/min"}},
                                       {"feed", UnitValue{*reference, "m/min"}}}));
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
  check_sampling(review);
  compare_wire_counter(review);
}

}  // namespace seamtakt
