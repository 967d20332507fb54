#include <cmath>

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
  const double step_s = review.totals.steps > 0
                            ? seconds(review.totals.steps_ns) / static_cast<double>(review.totals.steps)
                            : 0;
  const bool sampled =
      record.energy_method == "B" && review.entry.energy_source == EnergySource::voltage_and_current;
  if (sampled && step_s > 0.001)
    review.add("record.sampling.coarse", Severity::note,
               Sentence("record.sampling.coarse"_key, {{"step", UnitValue{step_s * 1000, "ms", 3}}}));
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
  compare_wire_counter(review);
}

}  // namespace seamtakt
