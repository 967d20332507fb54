#include "cli/plan/list_option.hpp"

#include "base/error.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/output_view.hpp"

namespace seamtakt::cli {

namespace {

using State = ImportedRow::State;

/// Rows of a table on a terminal; JSON has all.
constexpr std::size_t most_shown = 200;

ListImportOptions import_options(const ListOptions& options, const ListColumnsFile& columns) {
  ListImportOptions result;
  result.kind = options.kind();
  result.weldment = options.weldment.empty() ? columns.weldment : options.weldment;
  result.skip_refused = options.skip_refused;
  for (const auto& entry : columns.entries)
    if (!entry.standard.empty()) result.standards.emplace_back(entry.key, entry.standard);
  if (!options.metals.empty()) {
    if (options.metals.size() > 2 || options.schedules)
      throw InputError("--metal",
                       options.schedules ? "a list of schedules"_word : "more than two metals"_word,
                       "the metal of both plates of a seam, or one for each"_word);
    result.standards.emplace_back("base_metals", joined_items(options.metals));
  }
  for (const std::string& standard : options.standards) {
    const std::size_t equals = standard.find('=');
    if (equals == std::string::npos || !list_column(options.kind(), standard.substr(0, equals)))
      throw InputError("--default", '"' + printable(standard) + '"', "KEY=VALUE, such as position=PB"_word);
    result.standards.emplace_back(standard.substr(0, equals), standard.substr(equals + 1));
  }
  return result;
}

Word state_word(State state) {
  switch (state) {
    case State::added:
      return "new"_word;
    case State::changed:
      return "changed"_word;
    case State::unchanged:
      return "unchanged"_word;
    case State::refused:
      return "refused"_word;
  }
  return {};
}

const char* state_key(State state) {
  constexpr const char* keys[] = {"new", "changed", "unchanged", "refused"};
  return keys[static_cast<std::size_t>(state)];
}

Sentence summary_of(const ListImport& import) {
  return Sentence("list.summary"_key, {{"added", import.count(State::added)},
                                       {"changed", import.count(State::changed)},
                                       {"unchanged", import.count(State::unchanged)},
                                       {"refused", import.count(State::refused)}});
}

std::string unit_text(const MappedColumn& mapped, ListKind kind) {
  const auto column = mapped.key.empty() ? std::nullopt : list_column(kind, mapped.key);
  if (!column || !column->field) return {};
  return mapped.unit ? mapped.unit->name : column->field->unit;
}

std::string mapping_table(const PreviewedList& list, ListKind kind) {
  TextTable table({{"Column"_word, "", true, 0},
                   {"Heading"_word, "", true, 0},
                   {"Read as"_word, "", true, 0},
                   {"Unit"_word, "", true, 0}},
                  output_view());
  for (const MappedColumn& column : list.mapping.columns)
    table.cell(column_letters(column.column))
        .cell(column.heading)
        .cell(column.key.empty() ? std::string("-") : column.key)
        .cell(unit_text(column, kind));
  return table.text();
}

/// "BD/S01" of a seam, "F6" of a schedule.
std::string name_of(const ImportedRow& row) {
  return row.weldment.empty() ? row.id : row.weldment + "/" + row.id;
}

std::string changes_table(const ListImport& import) {
  TextTable table({{"Row"_word, "", false, 0},
                   {"Name"_word, "", true, 0},
                   {"State"_word, "", true, 0},
                   {"Key"_word, "", true, 0},
                   {"Before"_word, "", true, 0},
                   {"After"_word, "", true, 0}},
                  output_view());
  for (const ImportedRow& row : import.rows) {
    if (table.rows() >= most_shown) break;
    if (row.state == State::added) {
      table.cell(row.row).cell(name_of(row)).cell(state_word(row.state)).cell("").cell("").cell("");
      continue;
    }
    if (row.state != State::changed) continue;
    for (const ChangedValue& change : row.changes)
      table.cell(row.row)
          .cell(name_of(row))
          .cell(state_word(row.state))
          .cell(change.key)
          .cell(change.before)
          .cell(change.after);
  }
  return table.rows() ? "\n" + table.text() : "";
}

std::string refused_table(const ListImport& import) {
  TextTable table({{"Sheet"_word, "", true, 0},
                   {"Row"_word, "", false, 0},
                   {"Heading"_word, "", true, 0},
                   {"Found"_word, "", true, 0},
                   {"Expected"_word, "", true, 0}},
                  output_view());
  for (const RefusedCell& cell : import.refused())
    table.cell(cell.sheet).cell(cell.row).cell(cell.heading).cell(cell.found).cell(cell.expected);
  return table.rows() ? "\n" + table.text() : "";
}

void write_rows(JsonWriter& json, const ListImport& import) {
  json.key("rows").begin_array();
  for (const ImportedRow& row : import.rows) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("row", row.row);
    if (!row.weldment.empty()) json.member("weldment", row.weldment);
    json.member("id", row.id).member("state", state_key(row.state)).key("changes").begin_array();
    for (const ChangedValue& change : row.changes)
      json.begin_object()
          .member("key", change.key)
          .member("before", change.before)
          .member("after", change.after)
          .end_object();
    json.end_array().end_object();
  }
  json.end_array();
}

void write_refused(JsonWriter& json, const ListImport& import) {
  json.key("refused").begin_array();
  for (const RefusedCell& cell : import.refused()) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("sheet", cell.sheet).member("row", cell.row).member("heading", cell.heading);
    json.member("place", cell.place).member("found", cell.found.english());
    json.member("expected", cell.expected.english()).end_object();
  }
  json.end_array();
}

}  // namespace

PreviewedList preview_list(const Plan& plan, const ListOptions& options) {
  ListColumnsFile columns;
  if (!options.columns.empty()) columns = load_list_columns(options.columns, options.kind());
  const ListImportOptions import = import_options(options, columns);
  PreviewedList list;
  list.book = read_book(options.file);
  list.mapping = find_list(list.book, options.kind(), columns);
  list.import = import_list(plan, list.book, list.mapping, import);
  return list;
}

std::string preview_text(const PreviewedList& list, ListKind kind) {
  std::string text = shown_text(summary_of(list.import)) + "\n\n" + mapping_table(list, kind);
  text += changes_table(list.import) + refused_table(list.import);
  std::string notes;
  for (const Sentence& note : mapping_notes(list.book, kind, list.mapping)) notes += shown_text(note) + "\n";
  return notes.empty() ? text : text + "\n" + notes;
}

void write_preview(JsonWriter& json, const PreviewedList& list, ListKind kind) {
  json.member("file", list.book.file).member("list", kind == ListKind::seams ? "seams" : "schedules");
  json.member("sheet", list.book.sheets[list.mapping.sheet].name).member("head_row", list.mapping.head_row);
  json.key("columns").begin_array();
  for (const MappedColumn& column : list.mapping.columns) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("column", column_letters(column.column)).member("heading", column.heading);
    if (column.key.empty())
      json.null_member("key");
    else
      json.member("key", column.key);
    json.member("unit", unit_text(column, kind)).end_object();
  }
  json.end_array().key("counts").begin_object(JsonWriter::Layout::compact);
  for (const State state : {State::added, State::changed, State::unchanged, State::refused})
    json.member(state_key(state), list.import.count(state));
  json.end_object().key("new_weldments").begin_array(JsonWriter::Layout::compact);
  for (const std::string& weldment : list.import.new_weldments) json.value(weldment);
  json.end_array();
  write_rows(json, list.import);
  write_refused(json, list.import);
  json.key("notes").begin_array();
  for (const Sentence& note : mapping_notes(list.book, kind, list.mapping)) json.value(note.english());
  json.end_array();
}

}  // namespace seamtakt::cli
