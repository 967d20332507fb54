#include "base/text/text_table.hpp"

#include <algorithm>
#include <utility>

#include "base/error.hpp"
#include "base/text/utf8.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t longest_text = 200;
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

TextTable& TextTable::cell(std::optional<double> number) {
  const int digits = columns_[cells_.size() % columns_.size()].digits;
  cells_.push_back(number ? Cell{rounded_text(*number, digits), true} : Cell{"-", false});
  return *this;
}

TextTable& TextTable::number_cell(std::string text) {
  cells_.push_back({std::move(text), true});
  return *this;
}

TextTable& TextTable::cell(std::string_view text) {
  cells_.push_back({printable(text, longest_text), false});
  return *this;
}

TextTable::Layout TextTable::layout_of(std::size_t column) const {
  Layout layout;
  std::size_t head = 0;
  layout.width = std::max(display_width(columns_[column].heading), display_width(columns_[column].unit));
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
  const auto heading_row = [&](auto part) {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (i > 0) out += gap;
      layouts[i].append(out, part(columns_[i]), columns_[i].is_text, 0);
    }
    end_line();
  };
  heading_row([](const Column& column) -> const std::string& { return column.heading; });
  const bool units =
      std::any_of(columns_.begin(), columns_.end(), [](const Column& c) { return !c.unit.empty(); });
  if (units) heading_row([](const Column& column) -> const std::string& { return column.unit; });
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
