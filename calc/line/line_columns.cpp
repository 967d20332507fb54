#include "line/line_columns.hpp"

#include <array>

namespace seamtakt {

using namespace results;

namespace {

using L = LineResult;
using F = LineFigures;
using I = Improvement;
using S = StageResult;
using U = UnitResult;
using W = WaitingUnit;
using G = MissGroup;
constexpr auto compact = JsonWriter::Layout::compact;

constexpr Column<F> figures_with_takt[] = {
    column<F, &F::runs>("runs", "Runs", "", 9),
    column<F, &F::throughput_per_h>("throughput_per_h", "Throughput", "1/h", 4, brief),
    column<F, &F::throughput_p10_per_h>("throughput_p10_per_h", "Throughput, one run of ten below", "1/h", 4),
    column<F, &F::throughput_p90_per_h>("throughput_p90_per_h", "Throughput, one run of ten above", "1/h", 4),
    column<F, &F::throughput_se_per_h>("throughput_se_per_h", "Throughput, standard error", "1/h", 2),
    column<F, &F::makespan_s>("makespan_s", "Makespan", "s", 5, brief),
    column<F, &F::takt_misses>("takt_misses", "Takt misses", "", 3, brief),
    column<F, &F::takt_misses_se>("takt_misses_se", "Takt misses, standard error", "", 2),
    column<F, &F::takt_lost_s>("takt_lost_s", "Lost to takt", "s", 4, brief),
};
/// Of the above; what has to do with takt is last.
constexpr std::size_t figures_without_takt = std::size(figures_with_takt) - 3;

constexpr Column<I> improvement_with_takt[] = {
    text_column<I, &I::stage>("stage", "Stage", brief),
    column<I, &I::change>("change", "What would cure it", "", 0, brief),
    column<I, &I::figures, &F::throughput_per_h>("throughput_per_h", "Throughput", "1/h", 4, brief),
    column<I, &I::throughput_change_per_h>("throughput_change_per_h", "Change of throughput", "1/h", 3,
                                           brief),
    column<I, &I::throughput_change_se_per_h>("throughput_change_se_per_h", "Its standard error", "1/h", 2,
                                              brief),
    column<I, &I::figures, &F::takt_misses>("takt_misses", "Takt misses", "", 3, brief),
    column<I, &I::takt_misses_change>("takt_misses_change", "Change of misses", "", 3, brief),
    column<I, &I::figures, &F::makespan_s>("makespan_s", "Makespan", "s", 5),
};
constexpr Column<I> improvement_without_takt[] = {improvement_with_takt[0], improvement_with_takt[1],
                                                  improvement_with_takt[2], improvement_with_takt[3],
                                                  improvement_with_takt[4], improvement_with_takt[7]};

bool needs_people(const S& stage) {
  return stage.no_person_pct.has_value();
}

constexpr Column<S> stage_table[] = {
    text_column<S, &S::stage>("stage", "Stage", brief),
    column<S, &S::servers>("servers", "Servers", "", 9, brief),
    column<S, &S::busy_pct>("busy_pct", "Busy", "%", 3, brief),
    column<S, &S::blocked_pct>("blocked_pct", "Blocked", "%", 3, brief),
    column<S, &S::starved_pct>("starved_pct", "Starved", "%", 3, brief),
    column<S, &S::stopped_pct>("stopped_pct", "Stopped", "%", 3, brief),
    column_where<S, &S::no_person_pct>(needs_people, "no_person_pct", "Without a person", "%", 3),
};

bool has_due(const U& unit) {
  return !unit.due.empty();
}
bool was_reworked(const U& unit) {
  return unit.reworks > 0;
}
bool was_scrapped(const U& unit) {
  return unit.scrapped;
}
bool missed_takt(const U& unit) {
  return unit.wanted_s.has_value();
}

bool has_clock(const U& unit) {
  return !unit.end_clock.empty();
}
bool is_unit_late(const U& unit) {
  return unit.late_s.has_value();
}
bool is_judged(const U& unit) {
  return unit.late_pct.has_value();
}

constexpr Column<U> missed_by_column() {
  Column<U> made = column<U, &U::cause>("cause", "Missed by");
  made.present = missed_takt;
  return made;
}

constexpr Column<U> unit_table[] = {
    text_column<U, &U::serial>("serial", "Unit", brief),
    text_column<U, &U::weldment>("weldment", "Weldment", brief),
    column_where<U, &U::due>(has_due, "due", "Due"),
    column<U, &U::start_s>("start_s", "Start", "s", 5, brief),
    column<U, &U::end_s>("end_s", "End", "s", 5, brief),
    column_where<U, &U::start_clock>(has_clock, "start_clock", "Start, clock"),
    column_where<U, &U::end_clock>(has_clock, "end_clock", "End, clock"),
    column_where<U, &U::late_s>(is_unit_late, "late_s", "Late", "s", 5),
    column_where<U, &U::late_pct>(is_judged, "late_pct", "Runs in which it is late", "%", 3),
    column_where<U, &U::reworks>(was_reworked, "reworks", "Reworks", "", 9),
    column_where<U, &U::scrapped>(was_scrapped, "scrapped", "Scrapped"),
    column_where<U, &U::wanted_s>(missed_takt, "wanted_s", "Wanted", "s", 5),
    missed_by_column(),
};

bool has_unwelded(const W& unit) {
  return unit.unwelded_seams > 0;
}

constexpr Column<W> waiting_table[] = {
    text_column<W, &W::order, &Order::serial>("serial", "Unit", brief),
    text_column<W, &W::order, &Order::weldment>("weldment", "Weldment", brief),
    column<W, &W::sentence>("for", "For", "", 0, brief),
    column_where<W, &W::unwelded_seams>(has_unwelded, "unwelded_seams", "Unwelded seams", "", 9),
    column<W, &W::released_instead>("released_instead", "Released next", "", 0, brief),
};

ColumnValue cause_of(const G& group) {
  return column_value(word_of(group.cause).english());
}

constexpr Column<G> miss_table[] = {
    text_column<G, &G::stage>("stage", "Stage", brief),
    value_column<G>(cause_of, "cause", "Takt missed by", "", 0, brief),
    column<G, &G::misses>("misses", "Misses", "", 9, brief),
    column<G, &G::lost_s>("lost_s", "Lost", "s", 4, brief),
};

constexpr Column<WorstWindow> window_table[] = {
    column<WorstWindow, &WorstWindow::units>("units", "Units", "", 9),
    column<WorstWindow, &WorstWindow::start_s>("start_s", "From", "s", 5),
    column<WorstWindow, &WorstWindow::end_s>("end_s", "To", "s", 5),
    column<WorstWindow, &WorstWindow::throughput_per_h>("throughput_per_h", "Throughput", "1/h", 3),
};

/// The one draw that all further figures, units and stages are of.
constexpr Column<L> draw_table[] = {
    column<L, &L::draw_seed>("seed", "Seed", "", 12),
    column<L, &L::makespan_s>("makespan_s", "Makespan", "s", 5),
    column<L, &L::throughput_per_h>("throughput_per_h", "Throughput", "1/h", 4),
    column<L, &L::throughput_overall_per_h>("throughput_overall_per_h", "Throughput over all", "1/h", 4),
    column<L, &L::takt_misses>("takt_misses", "Takt misses", "", 9),
    column<L, &L::takt_lost_s>("takt_lost_s", "Lost to takt", "s", 4),
};

bool has_takt(const L& line) {
  return line.takt_limit_s.has_value();
}

template <class Row>
void write_object(JsonWriter& json, std::span<const Column<Row>> columns, const Row& row) {
  json.begin_object(compact);
  write_members(json, columns, row);
  json.end_object();
}

ColumnValue unit_count(const L& line) {
  return column_value(std::uint64_t{line.units.size()});
}
ColumnValue units_not_run(const L& line) {
  return column_value(std::uint64_t{line.not_run});
}
ColumnValue left_to_chance(const L& line) {
  return column_value(!line.certain);
}
/// A figure of the runs that says nothing without a takt.
template <auto Figure>
ColumnValue with_takt(const L& line) {
  return has_takt(line) ? column_value(line.figures.*Figure) : ColumnValue();
}

void write_draw(JsonWriter& json, const L& line) {
  write_object<L>(json, draw_table, line);
}
void write_stages(JsonWriter& json, const L& line) {
  write_rows(json, stage_columns(), line.stages, compact);
}
void write_units(JsonWriter& json, const L& line) {
  write_rows(json, unit_columns(), line.units, compact);
}
void write_misses(JsonWriter& json, const L& line) {
  write_rows<G>(json, miss_table, line.misses_by_cause, compact);
}
void write_worst_window(JsonWriter& json, const L& line) {
  if (line.worst_window) {
    write_object<WorstWindow>(json, window_table, *line.worst_window);
  } else {
    json.null();
  }
}
void write_mean(JsonWriter& json, const L& line) {
  write_object(json, figures_columns(has_takt(line)), line.figures);
}
void write_cures(JsonWriter& json, const L& line) {
  write_rows(json, improvement_columns(has_takt(line)), line.cures, compact);
}
void write_waiting(JsonWriter& json, const L& line) {
  write_rows(json, waiting_columns(), line.waiting, compact);
}

bool had_carts(const L& line) {
  return line.with_all_carts.has_value();
}
void write_with_all_carts(JsonWriter& json, const L& line) {
  write_object(json, figures_columns(has_takt(line)), *line.with_all_carts);
}

bool has_calendar(const L& line) {
  return !line.calendar_start.empty();
}
bool has_due_orders(const L& line) {
  return has_calendar(line) && line.has_dues;
}
void write_unfinished(JsonWriter& json, const L& line) {
  json.begin_array(compact);
  for (const std::string& serial : line.unfinished) json.value(serial);
  json.end_array();
}

bool was_levelled(const L& line) {
  return line.levelled.has_value();
}
void write_levelling(JsonWriter& json, const L& line) {
  const auto figures = figures_columns(has_takt(line));
  json.begin_object().key("before");
  write_object(json, figures, line.levelled->before);
  json.key("after");
  write_object(json, figures, line.levelled->after);
  json.key("order_before").begin_array(compact);
  for (const std::string& serial : line.order_before) json.value(serial);
  json.end_array().end_object();
}

constexpr Column<L> json_where(bool (*present)(const L&), const char* key,
                               void (*write)(JsonWriter&, const L&)) {
  Column<L> made = json_column<L>(key, write);
  made.present = present;
  return made;
}

/// The headline is of all runs; what follows the draw is of that one.
constexpr Column<L> line_table[] = {
    value_column<L>(unit_count, "unit_count", "Units", "", 9),
    value_column<L>(units_not_run, "units_not_run", "Units not run", "", 9),
    column<L, &L::figures, &F::runs>("runs", "Runs", "", 9),
    column<L, &L::seed>("seed", "Seed", "", 12),
    value_column<L>(left_to_chance, "left_to_chance", "Left to chance"),
    column<L, &L::figures, &F::makespan_s>("makespan_s", "Makespan", "s", 5),
    column<L, &L::figures, &F::throughput_per_h>("throughput_per_h", "Throughput", "1/h", 4),
    column<L, &L::figures, &F::throughput_p10_per_h>("throughput_p10_per_h",
                                                     "Throughput, one run of ten below", "1/h", 4),
    column<L, &L::figures, &F::throughput_p90_per_h>("throughput_p90_per_h",
                                                     "Throughput, one run of ten above", "1/h", 4),
    column<L, &L::figures, &F::throughput_overall_per_h>("throughput_overall_per_h", "Throughput over all",
                                                         "1/h", 4),
    column<L, &L::takt_s>("takt_s", "Takt", "s", 5),
    column<L, &L::takt_limit_s>("takt_limit_s", "Takt to plan to", "s", 5),
    value_column<L>(with_takt<&F::takt_misses>, "takt_misses", "Takt misses", "", 3),
    value_column<L>(with_takt<&F::takt_lost_s>, "takt_lost_s", "Lost to takt", "s", 4),
    json_column<L>("draw", write_draw),
    column<L, &L::intervals_over_takt>("intervals_over_takt", "Intervals over takt", "", 9),
    column<L, &L::bottleneck>("bottleneck", "Bottleneck"),
    column<L, &L::units_in_line>("units_in_line", "Units in the line, mean", "", 3),
    column<L, &L::flow_time_mean_s>("flow_time_mean_s", "Flow time, mean", "s", 4),
    column<L, &L::scrapped>("scrapped", "Scrap", "", 9),
    column<L, &L::reworks>("reworks", "Reworks", "", 9),
    column_where<L, &L::calendar_start>(has_calendar, "calendar_start", "Start, clock"),
    column_where<L, &L::finished_clock>(has_calendar, "finished_clock", "Finished, clock"),
    column_where<L, &L::figures, &F::working_s>(has_calendar, "working_s", "Working time", "s", 5),
    column_where<L, &L::first_day>(has_calendar, "first_day", "First day"),
    column_where<L, &L::first_day_clock>(has_calendar, "first_day_clock", "End of the first day, clock"),
    column_where<L, &L::figures, &F::finished_first_day>(has_calendar, "finished_first_day",
                                                         "Finished on the first day", "", 3),
    json_where(has_calendar, "unfinished_first_day", write_unfinished),
    column_where<L, &L::figures, &F::late_orders>(has_due_orders, "late_orders", "Late orders", "", 3),
    json_column<L>("stages", write_stages),
    json_column<L>("units", write_units),
    json_column<L>("takt_misses_by_cause", write_misses),
    json_column<L>("worst_window", write_worst_window),
    json_column<L>("mean_of_runs", write_mean),
    json_column<L>("cures", write_cures),
    json_column<L>("waiting", write_waiting),
    json_where(had_carts, "with_all_carts", write_with_all_carts),
    json_where(was_levelled, "levelling", write_levelling),
};

}  // namespace

std::span<const Column<LineResult>> line_columns() {
  return line_table;
}
std::span<const Column<StageResult>> stage_columns() {
  return stage_table;
}
std::span<const Column<UnitResult>> unit_columns() {
  return unit_table;
}
std::span<const Column<WaitingUnit>> waiting_columns() {
  return waiting_table;
}
std::span<const Column<LineFigures>> figures_columns(bool has_takt) {
  const std::span<const Column<F>> all = figures_with_takt;
  return has_takt ? all : all.first(figures_without_takt);
}
std::span<const Column<Improvement>> improvement_columns(bool has_takt) {
  if (has_takt) return improvement_with_takt;
  return improvement_without_takt;
}

}  // namespace seamtakt
