#include "cell/timeline/cycle_columns.hpp"

#include <algorithm>
#include <array>
#include <functional>

namespace seamtakt {

using namespace results;

namespace {

using C = CycleResult;
using M = Move;

/// Robot-seconds of one part of the cycle.
template <auto Member>
constexpr Column<C> part(CyclePart which, const char* key, const char* label, int digits, bool is_brief,
                         const char* short_label = nullptr) {
  Column<C> made = column<C, Member>(key, label, "s", digits, is_brief, "Sum over all robots", short_label);
  made.group = static_cast<int>(which);
  return made;
}

ColumnValue unwelded_count(const C& cycle) {
  return column_value(std::uint64_t{cycle.unwelded.size()});
}

void write_unwelded(JsonWriter& json, const C& cycle) {
  json.begin_array(JsonWriter::Layout::compact);
  for (const std::string& seam : cycle.unwelded) json.value(seam);
  json.end_array();
}

constexpr Column<C> unwelded_column() {
  Column<C> made = value_column<C>(unwelded_count, "unwelded_seams", "Unwelded of them", "", 9);
  made.write = write_unwelded;
  return made;
}

bool has_tip_changes(const C& cycle) {
  return cycle.tip_change_s > 0;
}
bool has_spool_changes(const C& cycle) {
  return cycle.spool_change_s > 0;
}

/// Only of cycles that have it.
template <auto Member>
constexpr Column<C> rare_part(bool (*present)(const C&), const char* key, const char* label) {
  Column<C> made = part<Member>(CyclePart::loss, key, label, 4, full_only);
  made.present = present;
  return made;
}

bool was_searched(const C& cycle) {
  return cycle.orders_tried > 0;
}

void write_moves(JsonWriter& json, const C& cycle) {
  write_rows(json, move_columns(), cycle.moves, JsonWriter::Layout::compact);
}

struct CauseText {
  const char* contract;
  Word name;
};

/// In the order of WaitCause.
constexpr CauseText cause_texts[] = {{"none", "none"_word},
                                     {"cooling", "cooling between passes"_word},
                                     {"zone", "zones held by other robots"_word},
                                     {"after", "seams that come before"_word},
                                     {"positioner", "the positioner"_word},
                                     {"others", "other robots at work before a turn"_word},
                                     {"balance", "balance groups"_word},
                                     {"together", "seams begun together"_word},
                                     {"apart", "torches that would be too near"_word}};
static_assert(std::size(cause_texts) == static_cast<std::size_t>(WaitCause::apart) + 1);

void write_wait_sums(JsonWriter& json, const C& cycle) {
  json.begin_array(JsonWriter::Layout::compact);
  for (const WaitSum& sum : wait_sums(cycle)) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("cause", to_string(sum.cause)).member("time_s", sum.time_s);
    json.end_object();
  }
  json.end_array();
}

constexpr Column<C> cycle_table[] = {
    text_column<C, &C::weldment>("weldment", "Weldment", brief),
    column<C, &C::cycle_time_s>("cycle_time_s", "Cycle time", "s", 5, brief, "", "Cycle"),
    column<C, &C::weld_s>("weld_s", "Robots at work", "s", 5, brief, "", "Weld"),
    part<&C::arc_on_s>(CyclePart::arc, "arc_on_s", "Arc on", 5, brief),
    part<&C::air_s>(CyclePart::loss, "air_s", "Air moves", 4, brief, "Air"),
    part<&C::sense_s>(CyclePart::loss, "sense_s", "Sensing", 4, brief, "Sense"),
    part<&C::start_end_s>(CyclePart::loss, "start_end_s", "Arc starts and ends", 4, brief, "Start+end"),
    part<&C::wait_s>(CyclePart::loss, "wait_s", "Waiting", 4, brief, "Wait"),
    part<&C::orientation_s>(CyclePart::loss, "orientation_s", "Positioner", 4, brief),
    part<&C::service_s>(CyclePart::loss, "service_s", "Torch service", 4, brief, "Service"),
    part<&C::wire_change_s>(CyclePart::loss, "wire_change_s", "Wire changes", 4, brief, "Wire change"),
    rare_part<&C::tip_change_s>(has_tip_changes, "tip_change_s", "Tip changes"),
    rare_part<&C::spool_change_s>(has_spool_changes, "spool_change_s", "Spool changes"),
    part<&C::load_unload_s>(CyclePart::handling, "load_unload_s", "Load and unload", 4, full_only),
    column<C, &C::arc_on_ratio>("arc_on_ratio", "Arc-on ratio", "", 3, brief),
    column<C, &C::takt_s>("takt_s", "Takt to plan to", "s", 5, brief, "", "Takt"),
    column<C, &C::takt_margin_s>("takt_margin_s", "Margin", "s", 5, brief),
    column<C, &C::lower_bound_s>("lower_bound_s", "Proven lower bound", "s", 5, brief, "", "Bound"),
    column<C, &C::gap_pct>("gap_pct", "Gap to bound", "%", 3),
    column<C, &C::robot_seams>("robot_seams", "Robot seams", "", 9),
    unwelded_column(),
    column_where<C, &C::orders_tried>(was_searched, "steps", "Orders tried", "", 12),
    json_column<C>("waits", write_wait_sums),
    json_column<C>("moves", write_moves),
};

bool has_start_temperature(const Move& move) {
  return move.start_temperature_C.has_value();
}
bool has_why(const Move& move) {
  return move.kind == MoveKind::wait;
}
bool has_pass(const Move& move) {
  return move.pass > 0;
}
ColumnValue kind_of(const Move& move) {
  return column_value(std::string_view(to_string(move.kind)));
}

constexpr Column<M> move_table[] = {
    text_column<M, &M::robot>("robot", "Robot", brief),  // moves of the cell have none
    column<M, &M::seam>("seam", "Seam", "", 0, brief),
    column_where<M, &M::pass>(has_pass, "pass", "Pass"),
    column<M, &M::reversed>("reversed", "Reversed"),
    column<M, &M::start_s>("start_s", "Start", "s", 6, brief),
    column<M, &M::end_s>("end_s", "End", "s", 6, brief),
    value_column<M>(kind_of, "kind", "Kind", "", 0, brief),
    column_where<M, &M::why>(has_why, "why", "Why"),
    column_where<M, &M::start_temperature_C>(has_start_temperature, "start_temperature_C",
                                             "Temperature at start", "C", 3),
};

}  // namespace

std::span<const Column<CycleResult>> cycle_columns() {
  return cycle_table;
}
std::span<const Column<Move>> move_columns() {
  return move_table;
}

std::vector<const Column<CycleResult>*> cycle_parts(std::optional<CyclePart> part) {
  std::vector<const Column<CycleResult>*> parts;
  for (const auto& column : cycle_columns())
    if (part ? column.group == static_cast<int>(*part) : column.group != 0) parts.push_back(&column);
  return parts;
}

const char* to_string(WaitCause cause) {
  return cause_texts[static_cast<std::size_t>(cause)].contract;
}

Word name_of(WaitCause cause) {
  return cause_texts[static_cast<std::size_t>(cause)].name;
}

std::vector<WaitSum> wait_sums(const CycleResult& cycle) {
  std::array<double, std::size(cause_texts)> time_s{};
  for (const Move& move : cycle.moves)
    if (move.kind == MoveKind::wait)
      time_s[static_cast<std::size_t>(move.cause)] += move.end_s - move.start_s;
  std::vector<WaitSum> sums;
  for (std::size_t i = 0; i < time_s.size(); ++i)
    if (time_s[i] > 0) sums.push_back({static_cast<WaitCause>(i), time_s[i]});
  std::ranges::stable_sort(sums, std::greater<>(), &WaitSum::time_s);
  return sums;
}

std::vector<CycleLoss> cycle_losses(const CycleResult& cycle) {
  std::vector<CycleLoss> losses;
  for (const auto* part : cycle_parts(CyclePart::loss))
    losses.push_back({part, column_number(part->value(cycle)).value_or(0)});
  std::erase_if(losses, [](const CycleLoss& loss) { return loss.time_s <= 0; });
  std::ranges::stable_sort(losses, std::greater<>(), &CycleLoss::time_s);
  return losses;
}

}  // namespace seamtakt
