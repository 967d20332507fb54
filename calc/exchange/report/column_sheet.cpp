#include "exchange/report/column_sheet.hpp"

#include <algorithm>
#include <iterator>

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
  SheetCell operator()(bool value) const { return value ? "yes"_word : "no"_word; }
  SheetCell operator()(std::string_view text) const { return std::string(text); }
  SheetCell operator()(const Sentence* sentence) const { return SentenceCell{*sentence}; }
  SheetCell operator()(const std::array<double, 2>& pair) const { return Pair{pair[0], pair[1]}; }
};

}  // namespace

SheetCell cell_of(const ColumnValue& value) {
  return std::visit(ToCell{}, value);
}

SheetCell word_or_text(std::string_view key, SheetCell cell) {
  constexpr std::string_view of_words[] = {"transfer_mode", "verdict",      "result",       "status",
                                           "quantity",      "power_method", "length_source"};
  auto* text = std::get_if<std::string>(&cell);
  if (!text || std::find(std::begin(of_words), std::end(of_words), key) == std::end(of_words)) return cell;
  return Choice{std::move(*text)};
}

Sheet with_all_columns(Sheet sheet) {
  for (Sheet::Column& column : sheet.columns) column.brief = true;
  return sheet;
}

}  // namespace seamtakt
