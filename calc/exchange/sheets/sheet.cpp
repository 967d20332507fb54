#include "exchange/sheets/sheet.hpp"

#include <algorithm>
#include <stdexcept>

#include "exchange/sheets/cell_text.hpp"

namespace seamtakt {

namespace {

bool is_number(const SheetCell& cell) {
  return std::holds_alternative<double>(cell) || std::holds_alternative<Figure>(cell) ||
         std::holds_alternative<Count>(cell) || std::holds_alternative<std::monostate>(cell);
}

/// A column without stated digits is numeric where each of its cells is.
bool is_numeric(const Sheet& sheet, std::size_t column) {
  if (const auto digits = sheet.columns[column].digits) return *digits > 0;
  return std::all_of(sheet.rows.begin(), sheet.rows.end(),
                     [&](const auto& row) { return is_number(row[column]); });
}

/// Told apart by shape, in black and white too: a ring, a triangle, a square with a cross.
const char* mark_of(Severity severity) {
  switch (severity) {
    case Severity::note:
      break;
    case Severity::warn:
      return "\u25b2";
    case Severity::fail:
      return "\u22a0";
  }
  return "\u25cb";
}

std::string shown_text(const Sheet::Column& column, const SheetCell& cell, const TextView& view) {
  if (const SeverityCell* severity = std::get_if<SeverityCell>(&cell))
    return std::string(mark_of(severity->severity)) + "\u00a0" + cell_text(cell, view);
  const double* number = std::get_if<double>(&cell);
  if (number && *number <= column.none_up_to) return view.word("none"_word);
  return cell_text(cell, view, {column.digits.value_or(usual_digits), column.heading.unit});
}

bool has_pair(const Sheet& sheet, std::size_t column) {
  return std::any_of(sheet.rows.begin(), sheet.rows.end(),
                     [&](const auto& row) { return std::holds_alternative<Pair>(row[column]); });
}

}  // namespace

std::string column_heading_text(const Sheet::Column& column, const TextView& view) {
  if (!column.group.english().empty())
    return cell_text(PatternCell{"{1}: {2}"_word, {column.group, column.heading}}, view);
  if (column.end == Sheet::End::none) return heading_text(column.heading, view);
  const Word pattern = column.end == Sheet::End::low ? "{1} (low)"_word : "{1} (high)"_word;
  return cell_text(PatternCell{pattern, {column.heading}}, view);
}

ShownTable shown_table(const Sheet& sheet, const TextView& view) {
  ShownTable table;
  std::vector<std::size_t> columns;
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    if (!sheet.columns[i].brief) continue;
    columns.push_back(i);
    table.head.push_back(column_heading_text(sheet.columns[i], view));
    table.numeric.push_back(is_numeric(sheet, i));
  }
  for (const auto& row : sheet.rows) {
    std::vector<std::string> cells;
    for (const std::size_t i : columns) cells.push_back(shown_text(sheet.columns[i], row[i], view));
    table.rows.push_back(std::move(cells));
  }
  return table;
}

bool stays_on_one_line(std::string_view text) {
  constexpr std::size_t longest = 26;
  return text.size() <= longest && text.find(' ') == std::string_view::npos;
}

Sheet with_pairs_apart(const Sheet& sheet) {
  Sheet apart{sheet.name, {}, std::vector<std::vector<SheetCell>>(sheet.rows.size())};
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    const bool is_pair = has_pair(sheet, i);
    for (const bool low : {true, false}) {
      if (!is_pair && !low) continue;
      Sheet::Column column = sheet.columns[i];
      if (is_pair) column.key += low ? "_lo" : "_hi";
      if (is_pair) column.end = low ? Sheet::End::low : Sheet::End::high;
      apart.columns.push_back(std::move(column));
      for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
        const SheetCell& cell = sheet.rows[row][i];
        const Pair* pair = std::get_if<Pair>(&cell);
        apart.rows[row].push_back(pair      ? SheetCell(low ? pair->low : pair->high)
                                  : is_pair ? SheetCell()
                                            : cell);
      }
    }
  }
  return apart;
}

SheetCell origin_label(const OriginItem& item) {
  return KeyCell{item.key, {item.label}};
}

const Sheet& sheet_named(const std::vector<Sheet>& sheets, std::string_view name) {
  for (const Sheet& sheet : sheets)
    if (sheet.name == name) return sheet;
  throw std::logic_error("no such table of a record");
}

}  // namespace seamtakt
