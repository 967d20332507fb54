#include "plan/fields/calendar_relations.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "plan/clock_time.hpp"

namespace seamtakt {

namespace {

constexpr int day_min = 24 * 60, week_min = 7 * day_min;
constexpr double first_start_s = 0, last_start_s = 7258118400;  ///< the years 1970 to 2199
constexpr std::array<std::string_view, 7> weekdays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};

/// One day's work of a shift, in minutes of the week. It may end in the next week.
struct WeekWork {
  int from = 0, to = 0;
  std::size_t shift = 0, day = 0;
};

void check_time_of_day(const std::string& text, FieldPath& place) {
  if (!minute_of_day(text)) place.refuse(quoted(text), "a time of day hh:mm from 00:00 to 23:59"_word);
}

void check_days(const Shift& shift, FieldPath& place) {
  FieldPath::Step key(place, "days");
  std::array<bool, 7> seen{};
  for (std::size_t i = 0; i < shift.days.size(); ++i) {
    FieldPath::Step element(place, i);
    const std::optional<int> day = weekday_of(shift.days[i]);
    if (!day)
      place.refuse(quoted(shift.days[i]),
                   with_nearest(Sentence("relation.calendar.days"_key), shift.days[i], weekdays));
    bool& there = seen[static_cast<std::size_t>(*day)];
    if (there)
      place.refuse(Sentence("relation.calendar.day-again"_key, {{"day", shift.days[i]}}),
                   "each day once in a shift"_word);
    there = true;
  }
}

void check_breaks(const Shift& shift, FieldPath& place) {
  FieldPath::Step key(place, "breaks");
  const ShiftMinutes whole = shift_minutes(shift);
  for (std::size_t i = 0; i < shift.breaks.size(); ++i) {
    FieldPath::Step element(place, i);
    for (std::size_t end = 0; end < 2; ++end) {
      FieldPath::Step one(place, end);
      check_time_of_day(shift.breaks[i][end], place);
    }
    const ShiftMinutes pause = break_minutes(shift, shift.breaks[i]);
    if (pause.to <= whole.to) continue;
    place.refuse(
        Sentence("relation.calendar.break"_key, {{"from", shift.breaks[i][0]}, {"to", shift.breaks[i][1]}}),
        Sentence("relation.calendar.break.inside"_key, {{"from", shift.from}, {"to", shift.to}}));
  }
}

void check_shift(const Shift& shift, FieldPath& place) {
  check_days(shift, place);
  {
    FieldPath::Step key(place, "from");
    check_time_of_day(shift.from, place);
  }
  {
    FieldPath::Step key(place, "to");
    check_time_of_day(shift.to, place);
  }
  check_breaks(shift, place);
}

std::vector<WeekWork> week_of(const std::vector<Shift>& shifts) {
  std::vector<WeekWork> week;
  for (std::size_t i = 0; i < shifts.size(); ++i) {
    const ShiftMinutes minutes = shift_minutes(shifts[i]);
    for (std::size_t d = 0; d < shifts[i].days.size(); ++d) {
      const int midnight = weekday_of(shifts[i].days[d]).value() * day_min;
      week.push_back({midnight + minutes.from, midnight + minutes.to, i, d});
    }
  }
  std::ranges::stable_sort(week, {}, &WeekWork::from);
  return week;
}

/// Named is the one that begins later, at its day.
[[noreturn]] void refuse_overlap(const std::vector<Shift>& shifts, const WeekWork& early,
                                 const WeekWork& late, FieldPath& place) {
  const Shift& first = shifts[early.shift];
  const Shift& second = shifts[late.shift];
  FieldPath::Step shift(place, late.shift);
  FieldPath::Step key(place, "days");
  FieldPath::Step element(place, late.day);
  place.refuse(Sentence("relation.calendar.overlap"_key, {{"day", second.days[late.day]},
                                                          {"from", second.from},
                                                          {"to", second.to},
                                                          {"other", first.days[early.day]},
                                                          {"begin", first.from},
                                                          {"end", first.to}}),
               "shifts that don't overlap"_word);
}

void check_overlap(const std::vector<Shift>& shifts, FieldPath& place) {
  const std::vector<WeekWork> week = week_of(shifts);
  for (std::size_t i = 1; i < week.size(); ++i)
    if (week[i].from < week[i - 1].to) refuse_overlap(shifts, week[i - 1], week[i], place);
  // The week's last night may reach into its first morning.
  if (week.size() > 1 && week.back().to - week_min > week.front().from)
    refuse_overlap(shifts, week.back(), week.front(), place);
}

/// Minutes of a shift without its breaks, which may overlap one another.
int worked_minutes(const Shift& shift) {
  const ShiftMinutes whole = shift_minutes(shift);
  std::vector<ShiftMinutes> breaks;
  for (const TextPair& one : shift.breaks) breaks.push_back(break_minutes(shift, one));
  std::ranges::sort(breaks, {}, &ShiftMinutes::from);
  int worked = whole.to - whole.from, counted_to = whole.from;
  for (const ShiftMinutes& pause : breaks) {
    worked -= std::max(0, pause.to - std::max(pause.from, counted_to));
    counted_to = std::max(counted_to, pause.to);
  }
  return worked;
}

void check_calendar(const Calendar& calendar, FieldPath& place) {
  FieldPath::Step key(place, "calendar");
  const std::optional<double> start_s = parse_clock_s(calendar.start);
  if (!start_s || *start_s < first_start_s || *start_s >= last_start_s) {
    FieldPath::Step start(place, "start");
    place.refuse(quoted(calendar.start), "a local time YYYY-MM-DDThh:mm of the years 1970 to 2199"_word);
  }
  FieldPath::Step shifts(place, "shifts");
  for (std::size_t i = 0; i < calendar.shifts.size(); ++i) {
    FieldPath::Step element(place, i);
    check_shift(calendar.shifts[i], place);
  }
  check_overlap(calendar.shifts, place);
  const auto works = [](const Shift& shift) { return !shift.days.empty() && worked_minutes(shift) > 0; };
  if (std::ranges::none_of(calendar.shifts, works))
    place.refuse("shifts without time to work"_word, "a shift that is longer than its breaks"_word);
}

void check_variation(const Stage& stage, FieldPath& place) {
  if (stage.time_range_s.empty()) return;
  FieldPath::Step key(place, "time_range_s");
  if (stage.cv)
    place.refuse("a time range beside cv"_word, "one of the two: each says how the time varies"_word);
  if (!std::ranges::is_sorted(stage.time_range_s))
    place.refuse("times that don't rise"_word, "the least, the usual and the most time, in this order"_word);
}

void check_operators(const Line& line, FieldPath& place) {
  std::map<std::string_view, std::string_view> group_of;
  FieldPath::Step key(place, "operators");
  for (std::size_t i = 0; i < line.operators.size(); ++i) {
    FieldPath::Step element(place, i);
    FieldPath::Step stages(place, "stages");
    for (std::size_t s = 0; s < line.operators[i].stages.size(); ++s) {
      FieldPath::Step stage(place, s);
      const std::string& id = line.operators[i].stages[s];
      const auto [before, fresh] = group_of.emplace(id, line.operators[i].id);
      if (!fresh)
        place.refuse(Sentence("relation.operators.again"_key,
                              {{"stage", printable(id)}, {"group", printable(std::string(before->second))}}),
                     "a stage in the list of one group, once"_word);
    }
  }
}

}  // namespace

void check_line_relations(const Line& line, FieldPath& place) {
  {
    FieldPath::Step key(place, "stages");
    for (std::size_t i = 0; i < line.stages.size(); ++i) {
      FieldPath::Step element(place, i);
      check_variation(line.stages[i], place);
    }
  }
  if (line.calendar) check_calendar(*line.calendar, place);
  if (line.pull == "takt" && !line.takt_s) {
    FieldPath::Step key(place, "pull");
    place.refuse("\"takt\" without takt_s"_word, "a line with takt_s, or \"free\""_word);
  }
  if (!line.operators.empty()) check_operators(line, place);
}

}  // namespace seamtakt
