#include <array>
#include <cmath>

#include "base/error.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

/// Whether a record carries a column that the plan requires, be it a measured one or one kept word for word.
bool carries(const PassReview& review, const std::string& name) {
  const PassRecord& record = review.record;
  for (const auto& column : record.carried)
    if (column.name == name && !column.values.empty()) return true;
  const std::pair<const char*, bool> measured[] = {
      {"unit_serial", !record.unit_serial.empty()},
      {"weldment", !record.weldment.empty()},
      {"seam", !record.seam.empty()},
      {"pass", record.pass.has_value()},
      {"robot", !record.robot.empty()},
      {"schedule_revision", !record.schedule_revision_logged.empty()},
      {"timestamp", !record.started.empty()},
      {"interpass_C", record.interpass_C.has_value()},
  };
  for (const auto& [key, present] : measured)
    if (name == key && present) return true;
  return false;
}

void check_required(PassReview& review) {
  if (review.plan == nullptr) return;
  for (const auto& name : review.plan->plan().record_requires) {
    if (name == four_eyes_requirement || carries(review, name)) continue;
    review.add("record.required.missing", Severity::fail,
               Sentence("record.required.missing"_key, {{"name", printable(name, 60)}}), plan_limit);
  }
}

void check_revision(PassReview& review) {
  const Schedule* schedule = review.schedule();
  const std::string& logged = review.record.schedule_revision_logged;
  if (schedule == nullptr || logged.empty()) return;
  if (review.entry.revision_changed)
    review.undecide("record.schedule.revision", "The logged schedule revision changes within the pass."_word);
  else if (logged != std::to_string(schedule->revision))
    review.undecide("record.schedule.revision",
                    Sentence("record.schedule.revision"_key, {{"logged", printable(logged, 40)},
                                                              {"schedule", printable(schedule->id, 60)},
                                                              {"planned", schedule->revision}}));
}

/// Names of quantities in the plan's instruments.
constexpr Word measured_quantities[] = {"current"_word, "voltage"_word, "travel_speed"_word,
                                        "wire_feed_speed"_word, "position"_word};

Sentence overdue_sentence(const Instrument& instrument, Word quantity, const std::string& welded) {
  std::vector<Argument> arguments = {{"instrument", printable(instrument.id, 60)},
                                     {"quantity", quantity},
                                     {"due", printable(instrument.due, 20)},
                                     {"welded", welded}};
  if (instrument.certificate.empty()) return Sentence("record.instrument.overdue"_key, std::move(arguments));
  arguments.emplace_back("certificate", printable(instrument.certificate, 60));
  return Sentence("record.instrument.overdue.certificate"_key, std::move(arguments));
}

/// The instruments, by the plan in force on the day of the weld, and whether their calibration was valid.
void check_instruments(PassReview& review) {
  if (review.plan == nullptr) return;
  PassRecord& record = review.record;
  const std::string& robot = review.measured_robot();
  for (const Word word : measured_quantities) {
    const std::string_view quantity = word.english();
    const Instrument* instrument = instrument_for(review.plan->plan(), robot, quantity);
    const bool is_unused = quantity == "position" && record.length_source != "positions";
    if (instrument == nullptr || is_unused) continue;
    record.instruments.push_back(
        {instrument->id, std::string(quantity), instrument->certificate, instrument->due});
    if (record.date.empty() || instrument->due.empty() || record.date <= instrument->due.substr(0, 10))
      continue;
    review.undecide(instrument_overdue_rule, overdue_sentence(*instrument, word, record.date),
                    "ISO 17662 (recalled)");
  }
}

/// Ratios of units that are often confused.
constexpr std::array unit_ratios = {1000.0, 0.001,    60.0, 1 / 60.0, 6.0,         1 / 6.0,
                                    25.4,   1 / 25.4, 10.0, 0.1,      127 / 300.0, 300 / 127.0};

void suspect_unit(PassReview& review, Word what, const char* unit, const std::optional<double>& value,
                  double planned) {
  if (!value || *value <= 0 || planned <= 0) return;
  const double ratio = *value / planned;
  for (const double factor : unit_ratios) {
    if (std::fabs(ratio / factor - 1) > 0.03) continue;
    auto& finding = review.add("record.unit.suspect", Severity::warn,
                               Sentence("record.unit.suspect"_key, {{"what", what},
                                                                    {"logged", UnitValue{*value, unit}},
                                                                    {"planned", UnitValue{planned, unit}}}));
    finding.value = *value;
    finding.limit = planned;
    finding.unit = unit;
    return;
  }
}

void check_units(PassReview& review) {
  const Schedule* schedule = review.schedule();
  if (schedule == nullptr) return;
  suspect_unit(review, "The mean voltage"_word, "V", review.record.mean_voltage_V, schedule->arc_voltage_V);
  suspect_unit(review, "The mean wire feed speed"_word, "m/min", review.record.wire_feed_speed_m_min,
               schedule->wire_feed_speed_m_min);
  suspect_unit(review, "The mean travel speed"_word, "mm/s", review.totals.whole.means.travel_speed.mean(),
               schedule->travel_speed_mm_s);
}

void check_known_to_plan(PassReview& review) {
  if (review.plan == nullptr || review.entry.planned) return;
  review.add("record.pass.unknown", Severity::fail,
             "The plan doesn't know this pass, so nothing says how it should be."_word, plan_limit);
}

}  // namespace

void check_record(PassReview& review) {
  check_known_to_plan(review);
  check_required(review);
  check_revision(review);
  check_instruments(review);
  check_units(review);
}

}  // namespace seamtakt
