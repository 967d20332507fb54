#include "exchange/lists/list_columns_file.hpp"

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/text/spelling_suggestion.hpp"
#include "exchange/lists/heading_reader.hpp"

namespace seamtakt {

namespace {

class FileReader {
 public:
  FileReader(const std::string& file, ListKind kind) : file_(file), kind_(kind) { columns_.file = file; }

  ListColumnsFile read(const JsonNode& root) {
    if (root.kind != JsonNode::Kind::object) refuse(root, "", "an object"_word);
    for (const auto& [key, value] : root.members) {
      const std::string pointer = "/" + key;
      if (key.starts_with("x_")) continue;
      if (key == "sheet") {
        columns_.sheet = text_of(value, pointer);
      } else if (key == "weldment") {
        columns_.weldment = text_of(value, pointer);
      } else if (key == "head_row") {
        columns_.head_row = count_of(value, pointer);
      } else if (key == "decimal") {
        read_decimal(value, pointer);
      } else if (key == "ignore") {
        read_ignored(value, pointer);
      } else {
        read_entry(key, value, pointer);
      }
    }
    return std::move(columns_);
  }

 private:
  [[noreturn]] void refuse(const JsonNode& node, const std::string& pointer, Phrase found,
                           Phrase expected) const {
    throw InputError(printable(file_) + ":" + std::to_string(node.line) + ":" + std::to_string(node.column),
                     std::move(found), std::move(expected), printable(pointer));
  }
  [[noreturn]] void refuse(const JsonNode& node, const std::string& pointer, Phrase expected) const {
    refuse(node, pointer, Word::of_table(node.kind_name()), std::move(expected));
  }

  std::string text_of(const JsonNode& node, const std::string& pointer) const {
    if (node.kind != JsonNode::Kind::string) refuse(node, pointer, "a text"_word);
    if (node.string.empty()) refuse(node, pointer, "an empty text"_word, "a text"_word);
    return node.string;
  }

  std::size_t count_of(const JsonNode& node, const std::string& pointer) const {
    if (node.kind != JsonNode::Kind::number || !node.is_integer || node.number < 1 || node.number > 1e7)
      refuse(node, pointer, "a whole number from 1"_word);
    return static_cast<std::size_t>(node.number);
  }

  void read_decimal(const JsonNode& node, const std::string& pointer) {
    const std::string word = text_of(node, pointer);
    if (word != "comma" && word != "point")
      refuse(node, pointer, '"' + printable(word) + '"',
             Sentence("columns.either"_key, {{"first", "comma"}, {"second", "point"}}));
    columns_.decimal = word == "comma" ? DecimalSign::comma : DecimalSign::point;
    columns_.states_decimal = true;
  }

  void read_ignored(const JsonNode& node, const std::string& pointer) {
    if (node.kind != JsonNode::Kind::array) refuse(node, pointer, "a list of headings"_word);
    for (std::size_t i = 0; i < node.elements.size(); ++i)
      columns_.ignored.push_back(text_of(node.elements[i], pointer + "/" + std::to_string(i)));
  }

  void take_column(const JsonNode& node, const std::string& pointer, ListColumnsFile::Entry& entry) const {
    if (node.kind == JsonNode::Kind::number)
      entry.number = count_of(node, pointer);
    else if (node.kind == JsonNode::Kind::string)
      entry.heading = text_of(node, pointer);
    else
      refuse(node, pointer, "a column's heading, or its number from 1"_word);
  }

  const Unit* unit_of(const JsonNode& node, const std::string& pointer, const ListColumn& column) const {
    const std::string name = text_of(node, pointer);
    const Unit* own = column.field && *column.field->unit != '\0' ? find_unit(column.field->unit) : nullptr;
    if (!own) refuse(node, pointer, "a unit"_word, "none: the column has no unit"_word);
    if (const Unit* unit = unit_as_written(name, own->dimension)) return unit;
    refuse(node, pointer, Sentence("columns.unit"_key, {{"unit", printable(name)}}),
           units_that_fit(own->dimension));
  }

  void read_entry(const std::string& key, const JsonNode& node, const std::string& pointer) {
    const auto column = list_column(kind_, key);
    if (!column) refuse_key(key, node, pointer);
    ListColumnsFile::Entry entry;
    entry.key = key;
    if (node.kind != JsonNode::Kind::object) {
      take_column(node, pointer, entry);
    } else {
      for (const auto& [name, value] : node.members) {
        const std::string at = pointer + "/" + name;
        if (name == "column")
          take_column(value, at, entry);
        else if (name == "unit")
          entry.unit = unit_of(value, at, *column);
        else if (name == "default")
          entry.standard = text_of(value, at);
        else if (!name.starts_with("x_"))
          refuse(value, at, Sentence("columns.key.unknown"_key, {{"key", printable(name)}}),
                 "column, unit or default"_word);
      }
    }
    columns_.entries.push_back(std::move(entry));
  }

  [[noreturn]] void refuse_key(const std::string& key, const JsonNode& node,
                               const std::string& pointer) const {
    std::vector<std::string_view> known{"sheet", "head_row", "decimal", "weldment", "ignore"};
    for (const ListColumn& column : list_columns(kind_)) known.push_back(column.key);
    const std::string_view nearest = spelling_suggestion(key, known);
    refuse(node, pointer, Sentence("columns.key.unknown"_key, {{"key", printable(key)}}),
           nearest.empty()
               ? Sentence("a column of the list, sheet, head_row, decimal, weldment or ignore"_word)
               : Sentence::verbatim(std::string(nearest)));
  }

  const std::string& file_;
  ListKind kind_;
  ListColumnsFile columns_;
};

}  // namespace

ListColumnsFile parse_list_columns(std::string_view json, const std::string& file, ListKind kind) {
  const JsonNode root = parse_json(json, file);
  return FileReader(file, kind).read(root);
}

ListColumnsFile load_list_columns(const std::string& path, ListKind kind) {
  return parse_list_columns(read_file(path, std::size_t{1} << 20), path, kind);
}

}  // namespace seamtakt
