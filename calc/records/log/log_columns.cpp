#include "records/log/log_columns.hpp"

#include <cmath>
#include <functional>

#include "base/error.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

/// A value of the file with its place, for messages.
struct Place {
  const std::string& file;
  std::string pointer;

  Place at(std::string_view key) const { return {file, pointer + "/" + std::string(key)}; }

  [[noreturn]] void refuse(const JsonNode& node, Phrase found, Phrase expected) const {
    throw InputError(printable(file) + ":" + std::to_string(node.line) + ":" + std::to_string(node.column),
                     std::move(found), std::move(expected), pointer);
  }
  /// Because it is of another kind.
  [[noreturn]] void refuse(const JsonNode& node, Phrase expected) const {
    refuse(node, Word::of_table(node.kind_name()), std::move(expected));
  }
};

bool is_free_key(std::string_view key) {
  return key.substr(0, 2) == "x_";
}

using MemberReader = std::function<bool(const std::string& key, const JsonNode& value, const Place& place)>;

/// UserActions each member to `read`; one that it doesn't know is refused.
void read_members(const JsonNode& node, const Place& place, Phrase known, const MemberReader& read) {
  if (node.kind != JsonNode::Kind::object) place.refuse(node, "an object"_word);
  for (const auto& [key, value] : node.members) {
    if (is_free_key(key) || read(key, value, place.at(key))) continue;
    place.at(printable(key))
        .refuse(value, Sentence("columns.key.unknown"_key, {{"key", printable(key)}}), known);
  }
}

std::string text_of(const JsonNode& node, const Place& place) {
  if (node.kind != JsonNode::Kind::string) place.refuse(node, "a text"_word);
  if (node.string.empty()) place.refuse(node, "an empty text"_word, "a text"_word);
  return node.string;
}

ColumnRef column_of(const JsonNode& node, const Place& place) {
  if (node.kind == JsonNode::Kind::string) return {text_of(node, place), 0};
  const bool number = node.kind == JsonNode::Kind::number && node.is_integer;
  if (!number || node.number < 1 || node.number > 256)
    place.refuse(node, "a column's name, or its number from 1 to 256"_word);
  return {"", static_cast<int>(node.number)};
}

double factor_of(const JsonNode& node, const Place& place) {
  if (node.kind != JsonNode::Kind::number) place.refuse(node, "a number that isn't 0"_word);
  if (node.number == 0) place.refuse(node, "0", "a number that isn't 0"_word);
  return node.number;
}

const Unit& unit_of(const JsonNode& node, const Place& place, Dimension dimension) {
  const std::string name = text_of(node, place);
  // By dimension, since "K" is a temperature and a difference of two.
  for (const Unit& unit : known_units())
    if (unit.dimension == dimension && name == unit.name) return unit;
  place.refuse(node, Sentence("columns.unit"_key, {{"unit", printable(name)}}), units_that_fit(dimension));
}

/// A name or number alone, or {"column", "unit", "scale"}.
NumberColumn number_column(const JsonNode& node, const Place& place, const char* key) {
  NumberColumn result;
  if (node.kind != JsonNode::Kind::object) {
    result.column = column_of(node, place);
    return result;
  }
  const Unit* own = unit_of_key(key);
  bool named = false;
  read_members(node, place, "column, unit or scale"_word,
               [&](const auto& name, const auto& value, const Place& at) {
                 if (name == "column") {
                   result.column = column_of(value, at);
                   named = true;
                 } else if (name == "scale") {
                   result.scale = factor_of(value, at);
                 } else if (name == "unit" && own != nullptr) {
                   result.unit = &unit_of(value, at, own->dimension);
                 } else {
                   return false;
                 }
                 return true;
               });
  if (!named) place.refuse(node, "no column"_word, "the key \"column\""_word);
  return result;
}

ColumnRef text_column(const JsonNode& node, const Place& place) {
  if (node.kind != JsonNode::Kind::object) return column_of(node, place);
  ColumnRef result;
  bool named = false;
  read_members(node, place, "column", [&](const auto& name, const auto& value, const Place& at) {
    if (name != "column") return false;
    result = column_of(value, at);
    return named = true;
  });
  if (!named) place.refuse(node, "no column"_word, "the key \"column\""_word);
  return result;
}

void read_time_columns(const JsonNode& value, const Place& place, LogColumns& columns) {
  if (value.kind != JsonNode::Kind::array || value.elements.empty())
    place.refuse(value, "a list of columns"_word);
  for (std::size_t i = 0; i < value.elements.size(); ++i)
    columns.time.push_back(column_of(value.elements[i], place.at(std::to_string(i))));
}

void read_formats(const JsonNode& value, const Place& place, LogColumns& columns) {
  const auto add = [&](const JsonNode& node, const Place& at) {
    columns.time_formats.emplace_back(
        text_of(node, at),
        printable(at.file) + ":" + std::to_string(node.line) + ":" + std::to_string(node.column));
  };
  if (value.kind != JsonNode::Kind::array) return add(value, place);
  for (std::size_t i = 0; i < value.elements.size(); ++i) add(value.elements[i], place.at(std::to_string(i)));
}

void read_time(const JsonNode& node, const Place& place, LogColumns& columns) {
  if (node.kind != JsonNode::Kind::object) {
    columns.time = {column_of(node, place)};
    return;
  }
  double scale = 1;
  bool counts = false;
  read_members(node, place, "column, columns, format, unit or scale"_word,
               [&](const auto& key, const auto& value, const Place& at) {
                 if (key == "column") {
                   columns.time = {column_of(value, at)};
                 } else if (key == "columns") {
                   read_time_columns(value, at, columns);
                 } else if (key == "format") {
                   read_formats(value, at, columns);
                 } else if (key == "unit") {
                   const Unit& unit = unit_of(value, at, Dimension::time);
                   scale *= unit.multiply / unit.divide;
                   counts = true;
                 } else if (key == "scale") {
                   scale *= factor_of(value, at);
                   counts = true;
                 } else {
                   return false;
                 }
                 return true;
               });
  if (columns.time.empty()) place.refuse(node, "no column"_word, "the key \"column\" or \"columns\""_word);
  if (counts && !columns.time_formats.empty())
    place.refuse(node, "both a format and a unit or scale"_word, "one of them"_word);
  if (counts) columns.time_scale_s = scale;
  if (columns.time_scale_s && columns.time.size() > 1)
    place.refuse(node, "several columns with a unit or scale"_word, "one column, or a format"_word);
}

JobIdentity job_identity(const JsonNode& node, const Place& place) {
  JobIdentity job;
  read_members(node, place, "weldment, seam or pass"_word,
               [&](const auto& key, const auto& value, const Place& at) {
                 if (key == "weldment") {
                   job.weldment = text_of(value, at);
                 } else if (key == "seam") {
                   job.seam = text_of(value, at);
                 } else if (key == "pass") {
                   if (value.kind != JsonNode::Kind::number || !value.is_integer || value.number < 1 ||
                       value.number > 1e6)
                     at.refuse(value, "a whole number from 1"_word);
                   job.pass = static_cast<int>(value.number);
                 } else {
                   return false;
                 }
                 return true;
               });
  return job;
}

void read_job(const JsonNode& node, const Place& place, LogColumns& columns) {
  bool named = false;
  read_members(node, place, "column or values"_word,
               [&](const auto& key, const auto& value, const Place& at) {
                 if (key == "column") {
                   columns.texts[index_of(LogText::job)] = column_of(value, at);
                   named = true;
                 } else if (key == "values") {
                   read_members(value, at, "", [&](const auto& job, const auto& identity, const Place& here) {
                     columns.jobs[job] = job_identity(identity, here);
                     return true;
                   });
                 } else {
                   return false;
                 }
                 return true;
               });
  if (!named) place.refuse(node, "no column"_word, "the key \"column\""_word);
}

/// One of two words; true for the first.
bool either(const JsonNode& node, const Place& place, const char* first, const char* second) {
  const bool text = node.kind == JsonNode::Kind::string;
  if (text && node.string == first) return true;
  if (text && node.string == second) return false;
  Sentence expected("columns.either"_key, {{"first", first}, {"second", second}});
  if (!text) place.refuse(node, std::move(expected));
  place.refuse(node, '"' + printable(node.string) + '"', std::move(expected));
}

bool read_named_column(const std::string& key, const JsonNode& value, const Place& place,
                       LogColumns& columns) {
  for (std::size_t i = 0; i < log_quantity_count; ++i) {
    if (key != log_quantity_specs[i].key) continue;
    columns.numbers[i] = number_column(value, place, log_quantity_specs[i].key);
    return true;
  }
  for (std::size_t i = 0; i < log_text_count; ++i) {
    if (key != log_text_keys[i]) continue;
    columns.texts[i] = text_column(value, place);
    return true;
  }
  return false;
}

constexpr Word known_keys =
    "time, a quantity such as current_A, unit_serial, weldment, seam, pass, robot, schedule_revision, "
    "arc_on, job, signal, short_rows or header"_word;

}  // namespace

LogColumns parse_log_columns(std::string_view json, const std::string& file) {
  const JsonNode root = parse_json(json, file);
  LogColumns columns;
  const Place top{file, ""};
  read_members(root, top, known_keys, [&](const auto& key, const auto& value, const Place& place) {
    if (key == "time") {
      read_time(value, place, columns);
    } else if (key == "job") {
      read_job(value, place, columns);
    } else if (key == "signal") {
      columns.signal =
          either(value, place, "instantaneous", "averaged") ? LogSignal::instantaneous : LogSignal::averaged;
    } else if (key == "short_rows") {
      columns.accept_short_rows = either(value, place, "accept", "reject");
    } else if (key == "header") {
      columns.header_present = either(value, place, "present", "absent");
    } else {
      return read_named_column(key, value, place, columns);
    }
    return true;
  });
  return columns;
}

LogColumns load_log_columns(const std::string& path) {
  return parse_log_columns(read_file(path, JsonLimits{}.bytes), path);
}

}  // namespace seamtakt
