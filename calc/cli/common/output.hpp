#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/finding_json.hpp"
#include "base/json/json_writer.hpp"
#include "base/results/column.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/output_view.hpp"
#include "exchange/report/provenance.hpp"

namespace seamtakt::cli {

void write_provenance(JsonWriter& json, const Provenance& provenance);

/// A heading of a table for people.
template <class Row>
TextTable::Column table_heading(const Column<Row>& column) {
  return {Word::of_table(column.heading()), column.unit, column.digits == 0, column.digits};
}

/// The next cell of such a table.
void add_cell(TextTable& table, const ColumnValue& value, int digits);

/// The same of a column; a word shown instead of a number ("none") is shown in the reader's language.
template <class Row>
void add_cell(TextTable& table, const Column<Row>& column, const Row& row) {
  const ColumnValue shown = column.shown(row);
  const auto* word = std::get_if<std::string_view>(&shown);
  if (word && std::holds_alternative<double>(column.value(row)))
    table.cell(output_view().word(*word));
  else
    add_cell(table, shown, column.digits);
}

/// A table for people.
template <class Row>
std::string column_table(const std::vector<const Column<Row>*>& columns, const std::vector<Row>& rows) {
  std::vector<TextTable::Column> head;
  for (const auto* column : columns) head.push_back(table_heading(*column));
  TextTable table(std::move(head), output_view());
  for (const Row& row : rows)
    for (const auto* column : columns) add_cell(table, *column, row);
  return table.text();
}

/// The same in the order of JSON.
template <class Row>
std::string column_table(std::span<const Column<Row>> columns, const std::vector<Row>& rows, bool all) {
  return column_table(ordered_columns(columns, {}, all ? Shown::all : Shown::brief), rows);
}

/// Findings for people, the worst first; "No findings." where there are none.
std::string findings_text(const Findings& findings);

/// "3 fail, 1 warn, 12 note".
std::string findings_count(const Findings& findings);

/// The end of a summary: a line "Findings: 3 fail, 1 warn, 12 note" and the findings.
std::string findings_section(const Findings& findings);

}  // namespace seamtakt::cli
