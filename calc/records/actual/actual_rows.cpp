#include "records/actual/actual_rows.hpp"

#include <cmath>

#include "base/sentences/place_sentence.hpp"
#include "cell/timeline/cycle_columns.hpp"

namespace seamtakt {

using namespace results;

namespace {

using UnitRow = ActualUnitRow;
using StepRow = ActualStepRow;

constexpr std::size_t told_in_a_line = 3;  // differences in one line

constexpr Column<UnitRow> actual_unit_table[] = {
    column<UnitRow, &UnitRow::unit_serial>("unit_serial", "Unit", "", 0, brief),
    column<UnitRow, &UnitRow::weldment>("weldment", "Weldment", "", 0, brief),
    column<UnitRow, &UnitRow::logged_s>("logged_s", "In the log", "s", 6, brief),
    column<UnitRow, &UnitRow::planned_cycle_s>("planned_cycle_s", "Planned cycle", "s", 6, brief),
    column<UnitRow, &UnitRow::time_s>("time_s", "First to last arc", "s", 6, brief),
    column<UnitRow, &UnitRow::planned_s>("planned_s", "As planned", "s", 6, brief),
    column<UnitRow, &UnitRow::difference_s>("difference_s", "Later by", "s", 5, brief),
    column<UnitRow, &UnitRow::unmatched>("unmatched", "Passes not as planned", "", 9, brief),
    column<UnitRow, &UnitRow::largest>("largest", "Largest differences", "", 0, brief),
    column<UnitRow, &UnitRow::notes>("notes", "Notes", "", 0, brief),
};

constexpr Column<StepRow> actual_step_table[] = {
    column<StepRow, &StepRow::unit_serial>("unit_serial", "Unit", "", 0, brief),
    column<StepRow, &StepRow::weldment>("weldment", "Weldment"),
    column<StepRow, &StepRow::robot>("robot", "Robot", "", 0, brief),
    column<StepRow, &StepRow::kind>("kind", "Step", "", 0, brief),
    column<StepRow, &StepRow::from>("from", "After", "", 0, brief),
    column<StepRow, &StepRow::to>("to", "Pass", "", 0, brief),
    column<StepRow, &StepRow::start_s>("start_s", "Start", "s", 6, brief),
    column<StepRow, &StepRow::planned_start_s>("planned_start_s", "Planned start", "s", 6),
    column<StepRow, &StepRow::time_s>("time_s", "Measured", "s", 5, brief),
    column<StepRow, &StepRow::rest_s>(
        "rest_s", "Torch at rest", "s", 3, full_only,
        "Arc on and the torch at rest, at a start and an end: part of the planned start and end"),
    column<StepRow, &StepRow::planned_s>("planned_s", "As planned", "s", 5, brief),
    column<StepRow, &StepRow::difference_s>("difference_s", "Longer by", "s", 4, brief),
    column<StepRow, &StepRow::parts>("parts", "Planned in it", "", 0, brief),
    column<StepRow, &StepRow::skipped>("skipped", "Skipped", "", 0, brief),
    column<StepRow, &StepRow::extra>("extra", "Not planned there", "", 0, brief),
};

Sentence names_of(const std::vector<ArcName>& names) {
  std::vector<std::string> places;
  for (const ArcName& name : names) places.push_back(name.text());
  return places.empty() ? Sentence() : place_list(places);
}

Sentence part_sentence(const PlannedPart& part) {
  const UnitValue time{part.time_s, "s", 3};
  if (part.cause == WaitCause::none)
    return Sentence("actual.part"_key, {{"kind", kind_sentence(part.kind)}, {"time", time}});
  return Sentence("actual.part.wait"_key, {{"cause", name_of(part.cause)}, {"time", time}});
}

Sentence parts_sentence(const std::vector<PlannedPart>& parts) {
  std::vector<Sentence> sentences;
  for (const PlannedPart& part : parts) sentences.push_back(part_sentence(part));
  return sentences.empty() ? Sentence() : Sentence("actual.parts"_key, {{"parts", std::move(sentences)}});
}

Sentence joined(const std::vector<Sentence>& sentences) {
  return sentences.empty() ? Sentence() : Sentence("actual.parts"_key, {{"parts", sentences}});
}

Sentence difference_sentence(const CycleStep& step) {
  std::vector<Argument> arguments{{"difference", signed_duration_text(*step.difference_s)},
                                  {"robot", step.robot},
                                  {"pass", place_sentence(step.to.text())}};
  if (step.kind == CycleStep::Kind::arc) return Sentence("actual.largest.arc"_key, std::move(arguments));
  return Sentence("actual.largest.gap"_key, std::move(arguments));
}

Sentence largest_sentence(const UnitActual& unit) {
  std::vector<Sentence> sentences;
  for (const CycleStep* step : unit.largest(told_in_a_line)) sentences.push_back(difference_sentence(*step));
  return joined(sentences);
}

std::size_t unmatched_count(const UnitActual& unit) {
  std::size_t count = 0;
  for (const RobotActual& robot : unit.robots) count += robot.skipped.size() + robot.extra.size();
  return count;
}

/// The unit's own, then each robot's with its name.
std::vector<Sentence> all_notes(const UnitActual& unit) {
  std::vector<Sentence> notes = unit.notes;
  for (const RobotActual& robot : unit.robots)
    for (const Sentence& note : robot.notes)
      notes.push_back(Sentence("actual.note.robot"_key, {{"robot", robot.robot}, {"note", note}}));
  return notes;
}

}  // namespace

std::vector<ActualUnitRow> actual_unit_rows(const CycleActual& actual) {
  std::vector<ActualUnitRow> rows;
  for (const UnitActual& unit : actual.units)
    rows.push_back({unit.unit_serial, unit.weldment, unit.logged_s, unit.planned_cycle_s, unit.time_s,
                    unit.planned_s, unit.difference_s, unmatched_count(unit), largest_sentence(unit),
                    joined(all_notes(unit))});
  return rows;
}

std::vector<ActualStepRow> actual_step_rows(const UnitActual& unit) {
  std::vector<ActualStepRow> rows;
  for (const RobotActual& robot : unit.robots)
    for (const CycleStep& step : robot.steps) {
      const bool is_arc = step.kind == CycleStep::Kind::arc;
      rows.push_back({unit.unit_serial, unit.weldment, robot.robot,
                      is_arc ? Sentence("actual.step.arc"_key) : Sentence("actual.step.gap"_key),
                      is_arc ? "" : step.from.text(), step.to.text(), step.start_s, step.planned_start_s,
                      step.time_s, step.rest_s, step.planned_s, step.difference_s,
                      is_arc ? Sentence(name_of(step.is)) : parts_sentence(step.parts),
                      names_of(step.skipped), names_of(step.extra)});
    }
  return rows;
}

std::vector<ActualStepRow> actual_step_rows(const CycleActual& actual) {
  std::vector<ActualStepRow> rows;
  for (const UnitActual& unit : actual.units)
    for (ActualStepRow& row : actual_step_rows(unit)) rows.push_back(std::move(row));
  return rows;
}

std::span<const Column<ActualUnitRow>> actual_unit_columns() {
  return actual_unit_table;
}
std::span<const Column<ActualStepRow>> actual_step_columns() {
  return actual_step_table;
}

std::string duration_text(double time_s) {
  const auto two = [](long long number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  const long long seconds = std::llround(std::fabs(time_s)), minutes = seconds / 60;
  const std::string sign = time_s < 0 && seconds > 0 ? "-" : "";
  if (minutes < 60) return sign + std::to_string(minutes) + ":" + two(seconds % 60);
  return sign + std::to_string(minutes / 60) + ":" + two(minutes % 60) + ":" + two(seconds % 60);
}

std::string signed_duration_text(double time_s) {
  const std::string text = duration_text(time_s);
  return text[0] == '-' ? text : "+" + text;
}

Sentence unit_actual_sentence(const UnitActual& unit) {
  const Argument serial{"unit", unit.unit_serial.empty() ? std::string("-") : unit.unit_serial};
  const Argument weldment{"weldment", unit.weldment.empty() ? std::string("-") : unit.weldment};
  if (!unit.logged_s || !unit.time_s || !unit.planned_s || !unit.difference_s || !unit.planned_cycle_s)
    return Sentence("actual.unit.none"_key, {serial, weldment, {"why", joined(all_notes(unit))}});
  std::vector<Argument> arguments{serial,
                                  weldment,
                                  {"logged", duration_text(*unit.logged_s)},
                                  {"time", duration_text(*unit.time_s)},
                                  {"planned", duration_text(*unit.planned_s)},
                                  {"difference", signed_duration_text(*unit.difference_s)},
                                  {"cycle", duration_text(*unit.planned_cycle_s)},
                                  {"unmatched", unmatched_count(unit)}};
  const Sentence largest = largest_sentence(unit);
  if (largest.is_empty()) return Sentence("actual.unit"_key, std::move(arguments));
  arguments.emplace_back("largest", largest);
  return Sentence("actual.unit.largest"_key, std::move(arguments));
}

}  // namespace seamtakt
