#include <algorithm>
#include <array>
#include <vector>

#include "base/error.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct PreheatRow {
  Restraint restraint;
  char group;
  std::optional<double> above_mm, from_mm, up_to_mm, below_mm;
  AwsPreheat preheat;

  bool covers(double thickness_mm) const {
    return !(above_mm && thickness_mm <= *above_mm) && !(from_mm && thickness_mm < *from_mm) &&
           !(up_to_mm && thickness_mm > *up_to_mm) && !(below_mm && thickness_mm >= *below_mm);
  }
};

char group_of(const ReferenceTable& table, std::size_t row) {
  const std::string& text = table.text(row, "group");
  if (text.size() != 1 || text[0] < 'A' || text[0] > 'G') table.refuse(row, "group", "a letter from A to G");
  return text[0];
}

bool yes_or_no(const ReferenceTable& table, std::size_t row, std::string_view column) {
  const std::string& text = table.text(row, column);
  if (text != "yes" && text != "no") table.refuse(row, column, "yes or no");
  return text == "yes";
}

/// The annex prints degrees Fahrenheit and inches; the table has both as exact decimals (0.75*25.4
/// isn't 19.05 to the last bit).
std::vector<PreheatRow> read_preheat_rows() {
  const ReferenceTable table("preheat_aws.csv");
  std::vector<PreheatRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const auto bound = [&](const char* column) { return table.number_or_empty(row, column); };
    const auto restraint = restraint_of(table.text(row, "restraint"));
    if (!restraint) table.refuse(row, "restraint", "low, medium or high");
    rows.push_back({*restraint, group_of(table, row), bound("thickness_above_mm"), bound("thickness_from_mm"),
                    bound("thickness_up_to_mm"), bound("thickness_below_mm"),
                    AwsPreheat{table.number_within(row, "preheat_C", -50, 500),
                               yes_or_no(table, row, "none_needed_above_it")}});
  }
  return rows;
}

}  // namespace

char susceptibility_group_of_index(double index) {
  constexpr std::array upper = {3.0, 3.5, 4.0, 4.5, 5.0, 5.5};
  // The annex gives one decimal: 3.04 is 3.0, group A.
  double printed = std::round(index * 10) / 10;
  auto group = std::find_if(upper.begin(), upper.end(), [&](double limit) { return printed <= limit; });
  return static_cast<char>('A' + (group - upper.begin()));
}

std::optional<char> susceptibility_group_of_table(double pcm_pct, HydrogenLevel level) {
  constexpr std::array below = {0.18, 0.23, 0.28, 0.33, 0.38};
  auto column = std::find_if(below.begin(), below.end(), [&](double limit) { return pcm_pct < limit; });
  if (column == below.end()) return std::nullopt;
  return static_cast<char>('A' + (column - below.begin()) + static_cast<int>(level));
}

std::optional<Restraint> restraint_of(std::string_view name) {
  if (name == "low") return Restraint::low;
  if (name == "medium") return Restraint::medium;
  if (name == "high") return Restraint::high;
  return std::nullopt;
}

AwsPreheat aws_preheat(Restraint restraint, char group, double thickness_mm) {
  static const std::vector<PreheatRow> rows = read_preheat_rows();
  for (const PreheatRow& row : rows)
    if (row.restraint == restraint && row.group == group && row.covers(thickness_mm)) return row.preheat;
  throw InputError("reference/preheat_aws.csv", "no row for group " + std::string(1, group),
                   "a row for each restraint, group and thickness");
}

}  // namespace seamtakt
