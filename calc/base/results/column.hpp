#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "base/json/json_writer.hpp"
#include "base/sentences/sentence.hpp"
#include "base/text/comma_list.hpp"

/// Results have tables as plans have: each member is described once, and JSON, CSV, workbooks, reports, the
/// command line's tables and the desk's follow. A room has the tables of its own results.
namespace seamtakt {

/// A value of a result as JSON and tables show it; monostate is null. Borrows the text or the sentence that
/// it names. JSON has the sentence in English.
using ColumnValue = std::variant<std::monostate, double, int, std::string_view, std::array<double, 2>, bool,
                                 std::uint64_t, const Sentence*>;

/// What a member is in JSON where it isn't null, for schemas and SQL. `open`: its table alone doesn't say.
enum class ColumnType { open, number, whole, text, truth, pair };

/// One member of a result.
template <class Row>
struct Column {
  const char* key;    ///< the contract's key, with its unit
  const char* label;  ///< table heading
  const char* unit;   ///< "" where dimensionless or text
  int digits;         ///< significant digits shown to people (a count has all of them); 0: text
  bool brief;         ///< is in the short table
  const char* help;   ///< meaning, for a tooltip
  ColumnValue (*value)(const Row&);
  /// Numbers up to this are shown to people as "none": e.g. a preheat that is no more than the shop's
  /// temperature.
  double none_up_to = -std::numeric_limits<double>::infinity();
  /// The heading of a table that has little room; nullptr: the label.
  const char* short_label = nullptr;
  /// Appends the value as JSON, of a member that isn't one value (a list, an object); nullptr: `value` is
  /// all.
  void (*write)(JsonWriter& json, const Row& row) = nullptr;
  /// Whether JSON has the key; nullptr: always, with null where there is no value.
  bool (*present)(const Row&) = nullptr;
  /// JSON has the text as a list of its words, which are apart by ", ".
  bool is_list = false;
  int group = 0;  ///< by which a room finds those of its columns that belong together
  ColumnType type = ColumnType::open;
  bool may_be_null = true;

  /// As people see it; files and JSON have the number.
  ColumnValue shown(const Row& row) const {
    const ColumnValue as_it_is = value(row);
    const double* number = std::get_if<double>(&as_it_is);
    if (number && *number <= none_up_to) return std::string_view("none");
    return as_it_is;
  }
  const char* heading() const { return short_label ? short_label : label; }
};

inline ColumnValue column_value(double value) {
  return value;
}
inline ColumnValue column_value(int value) {
  return value;
}
inline ColumnValue column_value(bool value) {
  return value;
}
inline ColumnValue column_value(std::uint64_t value) {
  return value;
}
inline ColumnValue column_value(const std::array<double, 2>& value) {
  return value;
}
/// Empty text says nothing.
inline ColumnValue column_value(std::string_view value) {
  if (value.empty()) return {};
  return value;
}
ColumnValue column_value(const char*) = delete;  // it would be read as a truth value
inline ColumnValue column_value(const std::string& value) {
  return column_value(std::string_view(value));
}
inline ColumnValue column_value(const Sentence& value) {
  if (value.is_empty()) return {};
  return &value;
}
template <class T>
ColumnValue column_value(const std::optional<T>& value) {
  if (!value) return {};
  return column_value(*value);
}

/// The member at the end of the path `Members`, e.g. member_value<LineResult, &LineResult::figures,
/// &LineFigures::runs>.
template <class Row, auto... Members>
ColumnValue member_value(const Row& row) {
  return column_value((row.*....*Members));
}

/// The same of a text that is a value even where it is empty.
template <class Row, auto... Members>
ColumnValue text_value(const Row& row) {
  return std::string_view((row.*....*Members));
}

/// What a member of this type is.
template <class T>
struct ColumnTypeOf {
  static constexpr ColumnType type = std::is_same_v<T, double>                  ? ColumnType::number
                                     : std::is_same_v<T, bool>                  ? ColumnType::truth
                                     : std::is_integral_v<T>                    ? ColumnType::whole
                                     : std::is_same_v<T, std::array<double, 2>> ? ColumnType::pair
                                                                                : ColumnType::text;
  /// Text that is empty says nothing.
  static constexpr bool may_be_null = type == ColumnType::text;
};
template <class T>
struct ColumnTypeOf<std::optional<T>> {
  static constexpr ColumnType type = ColumnTypeOf<T>::type;
  static constexpr bool may_be_null = true;
};

template <class Row, auto... Members>
using MemberTypeOf = ColumnTypeOf<std::remove_cvref_t<decltype((std::declval<const Row&>().*....*Members))>>;

template <class Row>
ColumnValue no_value(const Row&) {
  return {};
}

/// What a table of columns is written with.
namespace results {

/// Whether a column is in short tables too.
constexpr bool brief = true, full_only = false;

/// A member that is one value.
template <class Row, auto... Members>
constexpr Column<Row> column(const char* key, const char* label, const char* unit = "", int digits = 0,
                             bool is_brief = full_only, const char* help = "",
                             const char* short_label = nullptr) {
  Column<Row> made{key, label, unit, digits, is_brief, help, &member_value<Row, Members...>};
  made.short_label = short_label;
  made.type = MemberTypeOf<Row, Members...>::type;
  made.may_be_null = MemberTypeOf<Row, Members...>::may_be_null;
  return made;
}

/// The same, of which JSON has the key only sometimes.
template <class Row, auto... Members>
constexpr Column<Row> column_where(bool (*present)(const Row&), const char* key, const char* label,
                                   const char* unit = "", int digits = 0) {
  Column<Row> made = column<Row, Members...>(key, label, unit, digits);
  made.present = present;
  return made;
}

/// A text that is a value even where it is empty.
template <class Row, auto... Members>
constexpr Column<Row> text_column(const char* key, const char* label, bool is_brief = full_only) {
  Column<Row> made{key, label, "", 0, is_brief, "", &text_value<Row, Members...>};
  made.type = ColumnType::text;
  made.may_be_null = false;
  return made;
}

/// A value that is no member.
template <class Row>
constexpr Column<Row> value_column(ColumnValue (*value)(const Row&), const char* key, const char* label,
                                   const char* unit = "", int digits = 0, bool is_brief = full_only,
                                   const char* help = "") {
  return {key, label, unit, digits, is_brief, help, value};
}

/// A member that JSON alone has: a list or an object.
template <class Row>
constexpr Column<Row> json_column(const char* key, void (*write)(JsonWriter&, const Row&)) {
  Column<Row> made{key, "", "", 0, full_only, "", no_value<Row>};
  made.write = write;
  return made;
}

}  // namespace results

/// The column with this key; nullptr where there is none.
template <class Row>
const Column<Row>* find_column(std::span<const Column<Row>> columns, std::string_view key) {
  for (const auto& column : columns)
    if (key == column.key) return &column;
  return nullptr;
}

/// Which columns a table has: those of short tables, or all that have a heading and that JSON always has.
enum class Shown { brief, all };

/// The columns with these keys, in this order, then the others. A table that needs another order than JSON's
/// names the columns that matter; members added to the results later follow.
template <class Row>
std::vector<const Column<Row>*> ordered_columns(std::span<const Column<Row>> columns,
                                                std::span<const std::string_view> first, Shown shown) {
  std::vector<const Column<Row>*> ordered;
  for (const std::string_view key : first)
    if (const auto* column = find_column(columns, key)) ordered.push_back(column);
  for (const auto& column : columns) {
    bool is_named = false;
    for (const std::string_view key : first) is_named = is_named || key == column.key;
    const bool is_shown = shown == Shown::brief ? column.brief : *column.label != '\0' && !column.present;
    if (is_shown && !is_named) ordered.push_back(&column);
  }
  return ordered;
}

/// The value as a number, where it is one.
std::optional<double> column_number(const ColumnValue& value);

void write_value(JsonWriter& json, const ColumnValue& value);

/// Calls visit(word) for each word of a list's text, in their order.
template <class Visit>
void each_list_word(const ColumnValue& value, const Visit& visit) {
  if (const auto* text = std::get_if<std::string_view>(&value)) each_of_comma_list(*text, visit);
}
void write_list(JsonWriter& json, const ColumnValue& value);

/// Writes the row's members into the open object.
template <class Row>
void write_members(JsonWriter& json, std::span<const Column<Row>> columns, const Row& row) {
  for (const auto& column : columns) {
    if (column.present && !column.present(row)) continue;
    json.key(column.key);
    if (column.write) {
      column.write(json, row);
    } else if (column.is_list) {
      write_list(json, column.value(row));
    } else {
      write_value(json, column.value(row));
    }
  }
}

/// A list of rows, an object each.
template <class Row>
void write_rows(JsonWriter& json, std::span<const Column<Row>> columns, const std::vector<Row>& rows,
                JsonWriter::Layout layout) {
  json.begin_array();
  for (const Row& row : rows) {
    json.begin_object(layout);
    write_members(json, columns, row);
    json.end_object();
  }
  json.end_array();
}

}  // namespace seamtakt
