#include <array>
#include <cmath>

#include "base/error.hpp"
#include "base/units/units.hpp"
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
    if (carries(review, name)) continue;
    review.add(
        "record.required.missing", Severity::fail,
        "The plan requires " + printable(name, 60) + " of each pass, and the log has none for this one.",
        plan_limit);
  }
}

void check_revision(PassReview& review) {
  const Schedule* schedule = review.schedule();
  const std::string& logged = review.record.schedule_revision_logged;
  if (schedule == nullptr || logged.empty()) return;
  if (review.entry.revision_changed)
    review.undecide("record.schedule.revision", "The logged schedule revision changes within the pass.");
  else if (logged != std::to_string(schedule->revision))
    review.undecide("record.schedule.revision", "Welded to revision " + printable(logged, 40) +
                                                    " of schedule " + printable(schedule->id, 60) +
                                                    "; the plan holds revision " +
                                                    std::to_string(schedule->revision) + ".");
}

/// With which instruments, by the plan in force on the day of the weld, and whether they were in date.
void check_instruments(PassReview& review) {
  if (review.plan == nullptr) return;
  PassRecord& record = review.record;
  const std::string& robot = review.measured_robot();
  for (const char* quantity : {"current", "voltage", "travel_speed", "wire_feed_speed", "position"}) {
    const Instrument* instrument = instrument_for(review.plan->plan(), robot, quantity);
    const bool is_unused = std::string_view(quantity) == "position" && record.length_source != "positions";
    if (instrument == nullptr || is_unused) continue;
    record.instruments.push_back({instrument->id, quantity, instrument->certificate, instrument->due});
    if (record.date.empty() || instrument->due.empty() || record.date <= instrument->due.substr(0, 10))
      continue;
    const std::string certificate = instrument->certificate.empty()
                                        ? ""
                                        : ", certificate " + printable(instrument->certificate, 60) + ",";
    review.undecide("record.instrument.overdue",
                    "Instrument " + printable(instrument->id, 60) + " (" + quantity + ")" + certificate +
                        " was due for calibration on " + printable(instrument->due, 20) +
                        " and the pass was welded on " + record.date + ".",
                    "ISO 17662 (recalled)");
  }
}

/// Ratios of units that are often taken for one another.
constexpr std::array unit_ratios = {1000.0, 0.001,    60.0, 1 / 60.0, 6.0,         1 / 6.0,
                                    25.4,   1 / 25.4, 10.0, 0.1,      127 / 300.0, 300 / 127.0};

void suspect_unit(PassReview& review, const char* what, const char* unit, const std::optional<double>& value,
                  double planned) {
  if (!value || *value <= 0 || planned <= 0) return;
  const double ratio = *value / planned;
  for (const double factor : unit_ratios) {
    if (std::fabs(ratio / factor - 1) > 0.03) continue;
    auto& finding = review.add("record.unit.suspect", Severity::warn,
                               std::string(what) + " is " + rounded_text(*value, 4) + " " + unit +
                                   " where the schedule has " + rounded_text(planned, 4) +
                                   ": is the log in another unit?");
    finding.value = *value;
    finding.limit = planned;
    finding.unit = unit;
    return;
  }
}

void check_units(PassReview& review) {
  const Schedule* schedule = review.schedule();
  if (schedule == nullptr) return;
  suspect_unit(review, "The mean voltage", "V", review.record.mean_voltage_V, schedule->arc_voltage_V);
  suspect_unit(review, "The mean wire feed speed", "m/min", review.record.wire_feed_speed_m_min,
               schedule->wire_feed_speed_m_min);
  suspect_unit(review, "The mean travel speed", "mm/s", review.totals.whole.means.travel_speed.mean(),
               schedule->travel_speed_mm_s);
}

void check_known_to_plan(PassReview& review) {
  if (review.plan == nullptr || review.entry.planned) return;
  review.add("record.pass.unknown", Severity::fail,
             "The plan doesn't know this pass, so nothing says how it should be.", plan_limit);
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
