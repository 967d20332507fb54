#include "formula/size/fillet_minimum.hpp"

#include <limits>
#include <vector>

#include "base/error.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct LegRow {
  double above_mm, up_to_mm, leg_mm;
};

std::vector<LegRow> read_least_leg_rows() {
  const ReferenceTable table("fillet_minimum.csv");
  std::vector<LegRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back(
        {table.number(row, "thickness_above_mm"),
         table.number_or_empty(row, "thickness_up_to_mm").value_or(std::numeric_limits<double>::infinity()),
         table.number(row, "leg_min_mm")});
  return rows;
}

double leg_of_table_mm(double thickness_mm) {
  static const std::vector<LegRow> rows = read_least_leg_rows();
  for (const LegRow& row : rows)
    if (thickness_mm > row.above_mm && thickness_mm <= row.up_to_mm) return row.leg_mm;
  throw InputError("reference/fillet_minimum.csv", "no row for this thickness"_word,
                   "rows for every thickness above 0"_word);
}

}  // namespace

double fillet_leg_min_mm(const FilletMinimumCase& fillet) {
  const double thinner = std::min(fillet.thickness_mm, fillet.other_thickness_mm);
  const double leg = std::min(leg_of_table_mm(governing_thickness_mm(fillet)), thinner);
  return fillet.cyclic ? std::max(leg, cyclic_leg_min_mm) : leg;
}

}  // namespace seamtakt
