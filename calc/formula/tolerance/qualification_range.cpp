#include "formula/tolerance/qualification_range.hpp"

#include <algorithm>
#include <vector>

#include "base/error.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct RangeRow {
  std::string document, edition, quantity, joint, runs, test;
  std::optional<double> above_mm, from_mm, up_to_mm, below_mm;
  RangeRule rule;
};

std::vector<RangeRow> read_range_rows() {
  const ReferenceTable table("qualification_ranges.csv");
  std::vector<RangeRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const auto text = [&](const char* column) { return table.text(row, column); };
    const auto number = [&](const char* column) { return table.number_or_empty(row, column); };
    rows.push_back({text("basis_document"),
                    text("edition"),
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

const std::vector<RangeRow>& rows() {
  static const std::vector<RangeRow> all = read_range_rows();
  return all;
}

bool range_covers(const RangeRow& row, double thickness_mm) {
  return !(row.above_mm && thickness_mm <= *row.above_mm) && !(row.from_mm && thickness_mm < *row.from_mm) &&
         !(row.up_to_mm && thickness_mm > *row.up_to_mm) && !(row.below_mm && thickness_mm >= *row.below_mm);
}

bool matches(const std::string& cell, const std::string& wanted) {
  return cell.empty() || cell == wanted;
}

/// Calls visit(row) for the rows of one quantity that fit joint and runs of the test, until it returns true.
/// Every pass of a plan asks: the comparison that most rows fail comes first.
template <class Visit>
void each_row_for(const QualifiedTest& test, std::string_view quantity, const Visit& visit) {
  bool any = false;
  for (const RangeRow& row : rows()) {
    if (row.quantity != quantity || !matches(row.joint, test.joint) || !matches(row.runs, test.runs) ||
        row.document != test.basis || row.edition != test.edition)
      continue;
    any = true;
    if (visit(row)) return;
  }
  if (any) return;
  const auto same_document = [&](const RangeRow& row) {
    return row.document == test.basis && row.edition == test.edition;
  };
  if (std::none_of(rows().begin(), rows().end(), same_document))
    throw InputError("reference/qualification_ranges.csv",
                     Sentence("reference.no-rows-for"_key, {{"basis", printable(test.basis)}}),
                     "a basis that the table has"_word);
}

}  // namespace

std::optional<RangeRule> thickness_rule(const QualifiedTest& test, double tested_thickness_mm) {
  std::optional<RangeRule> rule;
  each_row_for(test, "thickness", [&](const RangeRow& row) {
    if (range_covers(row, tested_thickness_mm)) rule = row.rule;
    return rule.has_value();
  });
  return rule;
}

RangeRule throat_rule(const QualifiedTest& test) {
  RangeRule rule;
  each_row_for(test, "throat", [&](const RangeRow& row) {
    rule = row.rule;
    return true;
  });
  return rule;
}

RangeRule heat_input_rule(const QualifiedTest& test) {
  RangeRule rule;
  each_row_for(test, "heat-input", [&](const RangeRow& row) {
    if (row.test == "impact" && test.impact_tested) rule.high_factor = row.rule.high_factor;
    if (row.test == "hardness" && test.hardness_tested) rule.low_factor = row.rule.low_factor;
    return false;
  });
  return rule;
}

}  // namespace seamtakt
