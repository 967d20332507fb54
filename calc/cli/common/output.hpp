#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/finding_json.hpp"
#include "base/json/json_writer.hpp"
#include "base/results/column.hpp"
#include "base/text/text_table.hpp"
#include "exchange/report/provenance.hpp"

namespace seamtakt::cli {

void write_provenance(JsonWriter& json, const Provenance& provenance);

std::string rounded_pair(const std::array<double, 2>& pair, int digits);

/// A heading of a table for people.
template <class Row>
TextTable::Column table_heading(const Column<Row>& column) {
  return {column.heading(), column.unit, column.digits == 0, column.digits};
}

/// The next cell of such a table.
void add_cell(TextTable& table, const ColumnValue& value, int digits);

/// A table for people.
template <class Row>
std::string column_table(const std::vector<const Column<Row>*>& columns, const std::vector<Row>& rows) {
  std::vector<TextTable::Column> head;
  for (const auto* column : columns) head.push_back(table_heading(*column));
  TextTable table(head);
  for (const Row& row : rows)
    for (const auto* column : columns) add_cell(table, column->shown(row), column->digits);
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

}  // namespace seamtakt::cli
