#include "formula/heat/shape_factors.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

double factor(const ReferenceTable& table, std::size_t row, std::string_view column) {
  const double value = table.positive(row, column);
  if (value > 1) table.refuse(row, column, "a number above 0, at most 1");
  return value;
}

/// Plans and `calc` name these joints.
void check_joints(const ReferenceTable& table, const std::vector<ShapeFactors>& list) {
  for (const std::string_view joint : {"plate", "butt", "corner", "tee", "lap"})
    if (std::none_of(list.begin(), list.end(), [&](const auto& known) { return known.joint == joint; }))
      throw InputError(printable(table.path()), "no row for joint \"" + std::string(joint) + "\"",
                       "rows for plate, butt, corner, tee and lap");
}

/// The rows' names are those of `table`, which outlives them.
std::vector<ShapeFactors> read_factors(const ReferenceTable& table) {
  std::vector<ShapeFactors> list;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const ShapeFactors joint{table.text(row, "joint"), factor(table, row, "f2"), factor(table, row, "f2_low"),
                             factor(table, row, "f2_high"), factor(table, row, "f3")};
    if (joint.f2_low > joint.f2_high) table.refuse(row, "f2_low", "a number that f2_high isn't below");
    list.push_back(joint);
  }
  check_joints(table, list);
  return list;
}

}  // namespace

std::optional<ShapeFactors> shape_factors_of(std::string_view joint) {
  static const ReferenceTable table("shape_factors.csv");
  static const std::vector<ShapeFactors> list = read_factors(table);
  for (const ShapeFactors& known : list)
    if (known.joint == joint) return known;
  return std::nullopt;
}

}  // namespace seamtakt
