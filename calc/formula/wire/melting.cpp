#include "formula/wire/melting.hpp"

#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct WireRow {
  std::string material;
  MeltingCoefficients coefficients;
};

std::vector<WireRow> read_wire_rows() {
  const ReferenceTable table("wires.csv");
  std::vector<WireRow> rows;
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
  static const std::vector<WireRow> rows = read_wire_rows();
  for (const WireRow& row : rows)
    if (row.material == material) return row.coefficients;
  return std::nullopt;
}

}  // namespace seamtakt
