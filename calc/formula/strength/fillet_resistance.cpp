#include "formula/strength/fillet_resistance.hpp"

#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct StrengthRow {
  std::string grade;
  double tensile_design_MPa, tensile_product_MPa, beta_w, beta_w_2024;
};

std::vector<StrengthRow> read_strength_rows() {
  const ReferenceTable table("fillet_strength.csv");
  std::vector<StrengthRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back({table.text(row, "grade"), table.positive(row, "tensile_design_MPa"),
                    table.positive(row, "tensile_product_MPa"), table.positive(row, "beta_w"),
                    table.positive(row, "beta_w_2024")});
  return rows;
}

}  // namespace

std::optional<FilletSteel> fillet_steel(std::string_view grade, FilletEdition edition, TensileTable tensile) {
  static const std::vector<StrengthRow> rows = read_strength_rows();
  for (const StrengthRow& row : rows)
    if (row.grade == grade)
      return FilletSteel{tensile == TensileTable::design ? row.tensile_design_MPa : row.tensile_product_MPa,
                         edition == FilletEdition::ed2005 ? row.beta_w : row.beta_w_2024};
  return std::nullopt;
}

}  // namespace seamtakt
