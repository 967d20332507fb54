#include "base/text/text_table.hpp"

#include <algorithm>
#include <utility>

#include "base/error.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t longest_text = 200;
/// Other languages need more bytes for the same sentence.
constexpr std::size_t longest_translation = 400;
constexpr std::string_view gap = "  ";

/// Characters of a number from its decimal sign (or exponent) on.
std::size_t tail_width(std::string_view number) {
  const std::size_t sign = number.find_first_of(".e");
  return sign == std::string_view::npos ? 0 : number.size() - sign;
}

void append_blanks(std::string& out, std::size_t count) {
  out.append(count, ' ');
}

}  // namespace

/// Widths of one column.
struct TextTable::Layout {
  std::size_t tail = 0;   ///< widest part from the decimal sign on
  std::size_t width = 0;  ///< whole column

  void append(std::string& out, std::string_view text, bool to_left, std::size_t behind) const {
    const std::size_t used = display_width(text) + behind;
    const std::size_t rest = width > used ? width - used : 0;
    if (!to_left) append_blanks(out, rest);
    out += text;
    append_blanks(out, behind + (to_left ? rest : 0));
  }
};

std::string TextTable::Heading::shown(const TextView& view) const {
  if (const Word* word = std::get_if<Word>(&text_)) return view.word(*word);
  return std::get<std::string>(text_);
}

TextTable::TextTable(std::vector<Column> columns, const TextView& view)
    : columns_(std::move(columns)), view_(view) {
  for (const Column& column : columns_) {
    headings_.push_back(column.heading.shown(view_));
    units_.push_back(view_.unit(column.unit.c_str()));
  }
}

TextTable& TextTable::cell(std::optional<double> number) {
  const Column& column = next_column();
  cells_.push_back(number ? Cell{view_.number({*number, column.unit.c_str(), column.digits}), true}
                          : Cell{"-", false});
  return *this;
}

TextTable& TextTable::cell(const std::array<double, 2>& range) {
  const Column& column = next_column();
  const char* unit = column.unit.c_str();
  return cell(Sentence("table.range"_key, {{"from", UnitValue{range[0], unit, column.digits}},
                                           {"to", UnitValue{range[1], unit, column.digits}}}));
}

TextTable& TextTable::number_cell(std::string text) {
  cells_.push_back({std::move(text), true});
  return *this;
}

TextTable& TextTable::cell(std::string_view text) {
  cells_.push_back({printable(text, longest_text), false});
  return *this;
}

TextTable& TextTable::cell(const Sentence& sentence) {
  const std::size_t limit = &view_.language() == &english() ? longest_text : longest_translation;
  cells_.push_back({printable(sentence_text(sentence, view_), limit), false});
  return *this;
}

TextTable::Layout TextTable::layout_of(std::size_t column) const {
  Layout layout;
  std::size_t head = 0;
  layout.width = std::max(display_width(headings_[column]), display_width(units_[column]));
  for (std::size_t i = column; i < cells_.size(); i += columns_.size()) {
    const Cell& cell = cells_[i];
    const std::size_t tail = cell.is_number ? tail_width(cell.text) : 0;
    layout.tail = std::max(layout.tail, tail);
    if (cell.is_number) head = std::max(head, cell.text.size() - tail);
    layout.width = std::max(layout.width, display_width(cell.text));
  }
  layout.width = std::max(layout.width, head + layout.tail);
  return layout;
}

std::string TextTable::text() const {
  std::vector<Layout> layouts;
  for (std::size_t i = 0; i < columns_.size(); ++i) layouts.push_back(layout_of(i));
  std::string out;
  const auto end_line = [&out] {
    out.erase(out.find_last_not_of(' ') + 1);
    out += '\n';
  };
  const auto heading_row = [&](const std::vector<std::string>& texts) {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (i > 0) out += gap;
      layouts[i].append(out, texts[i], columns_[i].is_text, 0);
    }
    end_line();
  };
  heading_row(headings_);
  if (std::any_of(units_.begin(), units_.end(), [](const std::string& unit) { return !unit.empty(); }))
    heading_row(units_);
  for (std::size_t i = 0; i < cells_.size(); ++i) {
    const std::size_t column = i % columns_.size();
    const Cell& cell = cells_[i];
    if (column > 0) out += gap;
    const std::size_t behind = cell.is_number ? layouts[column].tail - tail_width(cell.text) : 0;
    layouts[column].append(out, cell.text, columns_[column].is_text, behind);
    if (column + 1 == columns_.size() || i + 1 == cells_.size()) end_line();
  }
  return out;
}

}  // namespace seamtakt
