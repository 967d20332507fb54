#include "formula/qualification_range.hpp"

#include <algorithm>
#include <vector>

#include "base/error.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct Row {
  std::string document, quantity, joint, runs, test;
  std::optional<double> above_mm, from_mm, up_to_mm, below_mm;
  RangeRule rule;
};

std::vector<Row> read_rows() {
  const ReferenceTable table("qualification_ranges.csv");
  std::vector<Row> rows;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const auto text = [&](const char* column) { return table.text(row, column); };
    const auto number = [&](const char* column) { return table.number_or_empty(row, column); };
    rows.push_back({text("basis_document"),
                    text("quantity"),
                    text("joint"),
                    text("runs"),
                    text("test"),
                    number("above_mm"),
                    number("from_mm"),
                    number("up_to_mm"),
                    number("below_mm"),
                    {number("low_factor"), number("low_at_least_mm"), number("high_factor")}});
  }
  return rows;
}

const std::vector<Row>& rows() {
  static const std::vector<Row> all = read_rows();
  return all;
}

bool covers(const Row& row, double thickness_mm) {
  return !(row.above_mm && thickness_mm <= *row.above_mm) && !(row.from_mm && thickness_mm < *row.from_mm) &&
         !(row.up_to_mm && thickness_mm > *row.up_to_mm) && !(row.below_mm && thickness_mm >= *row.below_mm);
}

bool matches(const std::string& cell, const std::string& wanted) {
  return cell.empty() || cell == wanted;
}

/// Rows of one quantity that fit joint and runs of the test.
std::vector<const Row*> rows_for(const QualifiedTest& test, std::string_view quantity) {
  const auto same_document = [&](const Row& row) { return row.document == test.basis; };
  if (std::none_of(rows().begin(), rows().end(), same_document))
    throw InputError("reference/qualification_ranges.csv", "no rows for " + printable(test.basis),
                     "a basis that the table has");
  std::vector<const Row*> fitting;
  for (const Row& row : rows())
    if (same_document(row) && row.quantity == quantity && matches(row.joint, test.joint) &&
        matches(row.runs, test.runs))
      fitting.push_back(&row);
  return fitting;
}

}  // namespace

std::optional<RangeRule> thickness_rule(const QualifiedTest& test, double tested_thickness_mm) {
  for (const Row* row : rows_for(test, "thickness"))
    if (covers(*row, tested_thickness_mm)) return row->rule;
  return std::nullopt;
}

RangeRule throat_rule(const QualifiedTest& test) {
  const auto fitting = rows_for(test, "throat");
  return fitting.empty() ? RangeRule{} : fitting.front()->rule;
}

RangeRule heat_input_rule(const QualifiedTest& test) {
  RangeRule rule;
  for (const Row* row : rows_for(test, "heat-input")) {
    if (row->test == "impact" && test.impact_tested) rule.high_factor = row->rule.high_factor;
    if (row->test == "hardness" && test.hardness_tested) rule.low_factor = row->rule.low_factor;
  }
  return rule;
}

}  // namespace seamtakt
