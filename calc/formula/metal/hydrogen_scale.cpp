#include <vector>

#include "base/error.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct Scale {
  std::string name;
  double above_ml_100g;
  std::optional<double> up_to_ml_100g;
};

std::vector<Scale> read_scales() {
  const ReferenceTable table("hydrogen_scales.csv");
  std::vector<Scale> scales;
  for (std::size_t row = 0; row < table.size(); ++row)
    scales.push_back({table.text(row, "scale"), table.number_within(row, "above_ml_100g", 0, 100),
                      table.number_or_empty(row, "up_to_ml_100g")});
  return scales;
}

}  // namespace

const std::string& hydrogen_scale(double hydrogen_ml_100g) {
  static const std::vector<Scale> scales = read_scales();
  for (const Scale& scale : scales) {
    // The lowest scale begins at no hydrogen.
    const bool above = hydrogen_ml_100g > scale.above_ml_100g || scale.above_ml_100g == 0;
    if (above && (!scale.up_to_ml_100g || hydrogen_ml_100g <= *scale.up_to_ml_100g)) return scale.name;
  }
  throw InputError("reference/hydrogen_scales.csv", "no row for this hydrogen content",
                   "rows for every content from 0");
}

}  // namespace seamtakt
