#include "formula/wire/melting.hpp"

#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct Row {
  std::string material;
  MeltingCoefficients coefficients;
};

std::vector<Row> read_rows() {
  const ReferenceTable table("wires.csv");
  std::vector<Row> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    if (table.text(row, "form") == "solid" && !table.text(row, "alpha_mm_s_A").empty() &&
        table.positive(row, "diameter_mm") == melting_reference_diameter_mm)
      rows.push_back(
          {table.text(row, "material"),
           {table.positive(row, "alpha_mm_s_A"), table.number_within(row, "beta_per_s_A2", 0, 1)}});
  return rows;
}

}  // namespace

std::optional<MeltingCoefficients> reference_melting_coefficients(std::string_view material) {
  static const std::vector<Row> rows = read_rows();
  for (const Row& row : rows)
    if (row.material == material) return row.coefficients;
  return std::nullopt;
}

}  // namespace seamtakt
