#include "formula/strength/fillet_resistance.hpp"

#include "formula/reference_table.hpp"

namespace seamtakt {

std::optional<FilletSteel> fillet_steel(std::string_view grade, FilletEdition edition, TensileTable tensile) {
  static const ReferenceTable table("fillet_strength.csv");
  for (std::size_t row = 0; row < table.size(); ++row) {
    if (table.text(row, "grade") != grade) continue;
    return FilletSteel{
        table.number(row, tensile == TensileTable::design ? "tensile_design_MPa" : "tensile_product_MPa"),
        table.number(row, edition == FilletEdition::ed2005 ? "beta_w" : "beta_w_2024")};
  }
  return std::nullopt;
}

}  // namespace seamtakt
