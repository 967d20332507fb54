#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/text/ascii.hpp"
#include "plan/fields/field.hpp"

/// How a value of each type that a plan's structs have is read, checked, written and typed. Each type has the
/// same functions, found by overloading:
///   read_value    takes it from JSON; checks form, range and choices
///   check_value   the same rules for a value in memory; does not look at references
///   is_written    whether saving writes it; `standard` is what an absent key has
///   write_value   appends it as JSON
///   value_text    as a person types it; empty where absent
///   parse_value   the inverse, for text that isn't empty
/// All that refuse do so at `place`.
namespace seamtakt {

void read_value(std::string& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(const std::string& value, const FieldInfo& field, FieldPath& place);
bool is_written(const std::string& value, const std::string& standard, const FieldInfo& field,
                bool was_in_file);
void write_value(const std::string& value, std::string& json);
std::string value_text(const std::string& value);
void parse_value(std::string& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(double& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(double value, const FieldInfo& field, FieldPath& place);
bool is_written(double value, double standard, const FieldInfo& field, bool was_in_file);
void write_value(double value, std::string& json);
std::string value_text(double value);
void parse_value(double& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(int& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(int value, const FieldInfo& field, FieldPath& place);
bool is_written(int value, int standard, const FieldInfo& field, bool was_in_file);
void write_value(int value, std::string& json);
std::string value_text(int value);
void parse_value(int& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(bool& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(bool value, const FieldInfo& field, FieldPath& place);
void write_value(bool value, std::string& json);
std::string value_text(bool value);
void parse_value(bool& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(Interval& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(const Interval& value, const FieldInfo& field, FieldPath& place);
void write_value(const Interval& value, std::string& json);
std::string value_text(const Interval& value);
void parse_value(Interval& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(std::vector<std::string>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place);
void check_value(const std::vector<std::string>& value, const FieldInfo& field, FieldPath& place);
void write_value(const std::vector<std::string>& value, std::string& json);
std::string value_text(const std::vector<std::string>& value);
void parse_value(std::vector<std::string>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place);

void read_value(std::vector<double>& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(const std::vector<double>& value, const FieldInfo& field, FieldPath& place);
void write_value(const std::vector<double>& value, std::string& json);
std::string value_text(const std::vector<double>& value);
void parse_value(std::vector<double>& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(Point_mm& value, const JsonValue& node, const FieldInfo& field, FieldPath& place);
void check_value(const Point_mm& value, const FieldInfo& field, FieldPath& place);
bool is_written(const Point_mm& value, const Point_mm& standard, const FieldInfo& field, bool was_in_file);
void write_value(const Point_mm& value, std::string& json);
std::string value_text(const Point_mm& value);
void parse_value(Point_mm& value, std::string_view text, const FieldInfo& field, FieldPath& place);

void read_value(std::vector<Point_mm>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place);
void check_value(const std::vector<Point_mm>& value, const FieldInfo& field, FieldPath& place);
void write_value(const std::vector<Point_mm>& value, std::string& json);
std::string value_text(const std::vector<Point_mm>& value);
void parse_value(std::vector<Point_mm>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place);

void read_value(std::vector<NumberPair>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place);
void check_value(const std::vector<NumberPair>& value, const FieldInfo& field, FieldPath& place);
void write_value(const std::vector<NumberPair>& value, std::string& json);
std::string value_text(const std::vector<NumberPair>& value);
void parse_value(std::vector<NumberPair>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place);

void read_value(std::vector<TextPair>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place);
void check_value(const std::vector<TextPair>& value, const FieldInfo& field, FieldPath& place);
void write_value(const std::vector<TextPair>& value, std::string& json);
std::string value_text(const std::vector<TextPair>& value);
void parse_value(std::vector<TextPair>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place);

template <class M>
bool is_written(const std::vector<M>& value, const std::vector<M>&, const FieldInfo& field,
                bool was_in_file) {
  return field.required || !value.empty() || (was_in_file && field.least == 0);
}

/// Refuses a node that isn't of the kind that the field requires.
void require_kind(const JsonValue& node, bool is_right, const FieldInfo& field, const FieldPath& place);

/// Refuses text that a file can't carry: NUL, bytes that aren't UTF-8, more than the reader's limit.
void check_text(std::string_view text, const FieldPath& place);

/// Refuses a list in memory with fewer or more elements than the field takes. One that isn't required and is
/// empty counts as absent.
void check_count(std::size_t count, const FieldInfo& field, const FieldPath& place);

/// "a list of 3", "an empty list".
Sentence count_text(std::size_t count);

/// Appends an item to a list that a person reads, after a separator where it isn't the first one.
void append_item(std::string& text, std::string_view item, std::string_view separator = ", ");

/// The parts of `text` between separators, each trimmed.
std::vector<std::string_view> split_text(std::string_view text, char separator);

/// The number that `text` is; refuses where it isn't one.
double parsed_number(std::string_view text, const FieldInfo& field, FieldPath& place);

}  // namespace seamtakt
