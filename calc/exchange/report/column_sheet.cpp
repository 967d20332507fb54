#include "exchange/report/column_sheet.hpp"

namespace seamtakt {

namespace {

struct ToCell {
  SheetCell operator()(std::monostate) const { return {}; }
  SheetCell operator()(double value) const { return value; }
  SheetCell operator()(int value) const {
    return value < 0 ? SheetCell(static_cast<double>(value))
                     : SheetCell(Count{static_cast<std::uint64_t>(value)});
  }
  SheetCell operator()(std::uint64_t value) const { return Count{value}; }
  SheetCell operator()(bool value) const { return Words{value ? "yes" : "no"}; }
  SheetCell operator()(std::string_view text) const { return std::string(text); }
  SheetCell operator()(const std::array<double, 2>& pair) const { return Pair{pair[0], pair[1]}; }
};

}  // namespace

SheetCell cell_of(const ColumnValue& value) {
  return std::visit(ToCell{}, value);
}

Sheet with_all_columns(Sheet sheet) {
  for (Sheet::Column& column : sheet.columns) column.brief = true;
  return sheet;
}

}  // namespace seamtakt
