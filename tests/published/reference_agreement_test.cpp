// Small tables stand twice: as rows that people read in reference/, and in the formulas that need them
// without a file. Both must say the same.
#include <gtest/gtest.h>

#include <cmath>

#include "base/csv/csv.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"
#include "formula/wire/shielding_gas.hpp"
#include "formula/wire/transfer.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

class Table {
 public:
  explicit Table(const std::string& name) : table_(read_csv(source_path("/reference/") + name)) {}

  std::size_t size() const { return table_.rows.size(); }
  const std::string& text(std::size_t row, const char* column) const {
    return table_.rows[row].fields[table_.require(column)];
  }
  double number(std::size_t row, const char* column, double where_empty = NAN) const {
    double value = where_empty;
    if (text(row, column).empty()) return value;
    EXPECT_TRUE(parse_number(text(row, column), value)) << text(row, column);
    return value;
  }

 private:
  CsvTable table_;
};

TEST(ReferenceTables, HaveTheEfficiencyThatHeatInputUses) {
  Table processes("processes.csv");
  std::size_t found = 0;
  for (std::size_t row = 0; row < processes.size(); ++row) {
    auto known = thermal_efficiency_of(processes.text(row, "number"));
    double listed = processes.number(row, "thermal_efficiency");
    ASSERT_TRUE(known || std::isnan(listed)) << processes.text(row, "number");
    if (!known) continue;
    EXPECT_EQ(*known, listed) << processes.text(row, "number");
    ++found;
  }
  EXPECT_EQ(found, process_efficiencies.size());
}

TEST(ReferenceTables, HaveTheShapeFactorsThatCoolingTimeUses) {
  Table factors("shape_factors.csv");
  ASSERT_EQ(factors.size(), shape_factor_table.size());
  for (std::size_t row = 0; row < factors.size(); ++row) {
    auto known = shape_factors_of(factors.text(row, "joint"));
    ASSERT_TRUE(known) << factors.text(row, "joint");
    EXPECT_EQ(known->f2, factors.number(row, "f2"));
    EXPECT_EQ(known->f2_low, factors.number(row, "f2_low"));
    EXPECT_EQ(known->f2_high, factors.number(row, "f2_high"));
    EXPECT_EQ(known->f3, factors.number(row, "f3"));
  }
}

TEST(ReferenceTables, HaveTheTransitionCurrentsThatTransferUses) {
  Table rows("transition_current.csv");
  std::size_t found = 0;
  for (std::size_t row = 0; row < rows.size(); ++row)
    for (const auto& known : transition_currents)
      if (known.material == rows.text(row, "material") && known.gas == rows.text(row, "gas") &&
          known.diameter_mm == rows.number(row, "diameter_mm")) {
        EXPECT_EQ(known.current_A, rows.number(row, "transition_current_A"));
        ++found;
      }
  EXPECT_EQ(found, rows.size());
}

TEST(ReferenceTables, HaveThePreheatOfAwsHydrogenControl) {
  Table rows("preheat_aws.csv");
  EXPECT_EQ(rows.size(), 105u);
  for (std::size_t row = 0; row < rows.size(); ++row) {
    double above = rows.number(row, "thickness_above_mm"),
           up_to = rows.number(row, "thickness_up_to_mm", above + 50);
    AwsPreheat known = aws_preheat(*restraint_of(rows.text(row, "restraint")), rows.text(row, "group")[0],
                                   (above + up_to) / 2);
    EXPECT_NEAR(known.preheat_C, rows.number(row, "preheat_C"), 0.051) << "row " << row + 2;
    EXPECT_EQ(known.none_needed_above, rows.text(row, "none_needed_above_it") == "yes") << "row " << row + 2;
  }
}

TEST(ReferenceTables, HaveTheHydrogenScale) {
  Table scales("hydrogen_scales.csv");
  for (std::size_t row = 0; row < scales.size(); ++row) {
    double above = scales.number(row, "above_ml_100g"),
           up_to = scales.number(row, "up_to_ml_100g", above + 10);
    EXPECT_EQ(hydrogen_scale((above + up_to) / 2), scales.text(row, "scale"));
    EXPECT_EQ(hydrogen_scale(up_to), scales.text(row, "scale"));
  }
}

TEST(ReferenceTables, HaveTheBoundsOfTheShieldingGases) {
  Table gases("gases.csv");
  for (std::size_t row = 0; row < gases.size(); ++row) {
    SCOPED_TRACE(gases.text(row, "id"));
    auto known = shielding_gas_of(gases.text(row, "id"));
    ASSERT_TRUE(known);
    struct {
      GasComponent component;
      const char *name, *above, *up_to;
    } components[] = {{GasComponent::carbon_dioxide, "carbon dioxide", "co2_above_pct", "co2_up_to_pct"},
                      {GasComponent::oxygen, "oxygen", "o2_above_pct", "o2_up_to_pct"},
                      {GasComponent::helium, "helium", "he_above_pct", "he_up_to_pct"},
                      {GasComponent::hydrogen, "hydrogen", "h2_above_pct", "h2_up_to_pct"},
                      {GasComponent::nitrogen, "nitrogen", "n2_above_pct", "n2_up_to_pct"}};
    for (const auto& each : components) {
      if (gases.text(row, "balance") == each.name) continue;
      EXPECT_EQ(known->share(each.component).above, gases.number(row, each.above, 0)) << each.name;
      EXPECT_EQ(known->share(each.component).up_to, gases.number(row, each.up_to, 0)) << each.name;
    }
  }
}

TEST(ReferenceTables, HaveTheMeltingCoefficientsOfSolidWires) {
  Table wires("wires.csv");
  std::size_t compared = 0;
  for (std::size_t row = 0; row < wires.size(); ++row) {
    auto reference = reference_melting_coefficients(wires.text(row, "material"));
    double alpha = wires.number(row, "alpha_mm_s_A"), diameter = wires.number(row, "diameter_mm");
    if (wires.text(row, "form") != "solid" || !reference || std::isnan(alpha)) continue;
    // The table prints three digits.
    EXPECT_NEAR(scaled_alpha_mm_s_A(reference->alpha_mm_s_A, diameter), alpha, 0.005 * alpha)
        << wires.text(row, "id");
    double beta = wires.number(row, "beta_per_s_A2");
    EXPECT_NEAR(scaled_beta_per_s_A2(reference->beta_per_s_A2, diameter), beta, 0.005 * beta)
        << wires.text(row, "id");
    ++compared;
  }
  EXPECT_GE(compared, 6u);
}

TEST(ReferenceTables, HaveTheDensityOfSteelWeldMetal) {
  Table densities("weld_metal_density.csv");
  for (std::size_t row = 0; row < densities.size(); ++row)
    if (densities.text(row, "material") == "mild-steel") {
      EXPECT_EQ(densities.number(row, "density_g_cm3"), steel_weld_metal_density_g_cm3);
    }
}

}  // namespace
}  // namespace seamtakt
