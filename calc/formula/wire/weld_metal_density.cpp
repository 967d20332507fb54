#include "formula/wire/weld_metal_density.hpp"

#include <string>
#include <vector>

#include "base/error.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

constexpr std::string_view unknown_is_taken_for = "mild-steel";

struct DensityRow {
  std::string material;
  double density_g_cm3;
};

std::vector<DensityRow> read_density_rows() {
  const ReferenceTable table("weld_metal_density.csv");
  std::vector<DensityRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back({table.text(row, "material"), table.positive(row, "density_g_cm3")});
  return rows;
}

}  // namespace

double weld_metal_density_g_cm3(std::string_view wire_material) {
  static const std::vector<DensityRow> rows = read_density_rows();
  for (const std::string_view material : {wire_material, unknown_is_taken_for})
    for (const DensityRow& row : rows)
      if (row.material == material) return row.density_g_cm3;
  throw InputError("reference/weld_metal_density.csv", "no row for mild-steel", "a row for mild-steel");
}

}  // namespace seamtakt
