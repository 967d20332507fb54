#include "formula/size/largest_single_pass.hpp"

#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct LargestPassRow {
  std::string position;
  double leg_mm;
};

std::vector<LargestPassRow> read_largest_pass_rows() {
  const ReferenceTable table("largest_single_pass.csv");
  std::vector<LargestPassRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back({table.text(row, "position"), table.positive(row, "leg_max_mm")});
  return rows;
}

}  // namespace

std::optional<double> largest_single_pass_leg_mm(std::string_view position) {
  static const std::vector<LargestPassRow> rows = read_largest_pass_rows();
  for (const LargestPassRow& row : rows)
    if (row.position == position) return row.leg_mm;
  return std::nullopt;
}

}  // namespace seamtakt
