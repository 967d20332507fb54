#include "rules/reference_catalogue.hpp"

#include "base/csv/csv.hpp"
#include "rules/source_tree.hpp"

namespace seamtakt::rules {

const std::vector<TableShape>& table_shapes() {
  static const std::vector<TableShape> shapes = {
      {"sources.csv", {"key", "citation", "basis", "note"}, {"key"}},
      {"processes.csv",
       {"number", "name", "name_source", "thermal_efficiency", "source", "basis"},
       {"number"}},
      {"wires.csv",
       {"id", "form", "material", "classification", "diameter_mm", "density_low_g_cm3", "density_g_cm3",
        "density_high_g_cm3", "alpha_mm_s_A", "beta_per_s_A2", "melting_scatter_pct", "source", "basis",
        "note"},
       {"id"}},
      {"wire_designations.csv",
       {"standard", "part", "symbol", "meaning", "yield_min_MPa", "tensile_min_MPa", "tensile_max_MPa",
        "source", "basis"},
       {"standard", "part", "symbol"}},
      {"deposition_efficiency.csv",
       {"form", "process", "gas", "deposition_efficiency", "source", "basis"},
       {"form", "process", "gas"}},
      {"weld_metal_density.csv", {"material", "density_g_cm3", "source", "basis"}, {"material"}},
      {"gases.csv",
       {"id", "kind", "balance", "co2_above_pct", "co2_up_to_pct", "o2_above_pct", "o2_up_to_pct",
        "he_above_pct", "he_up_to_pct", "h2_above_pct", "h2_up_to_pct", "n2_above_pct", "n2_up_to_pct",
        "source", "basis"},
       {"id"}},
      {"steels.csv",
       {"id",         "number",     "standard",   "group",      "yield_min_MPa", "tensile_min_MPa",
        "C_max_pct",  "Si_max_pct", "Mn_max_pct", "P_max_pct",  "S_max_pct",     "N_max_pct",
        "Cu_max_pct", "Cr_max_pct", "Ni_max_pct", "Mo_max_pct", "V_max_pct",     "Nb_max_pct",
        "Ti_max_pct", "B_max_pct",  "Mg_max_pct", "Zn_max_pct", "Fe_max_pct",    "CEV_max_pct",
        "CEV_to_mm",  "source",     "basis",      "note"},
       {"id"}},
      {"material_groups.csv", {"group", "meaning", "source", "basis"}, {"group"}},
      {"qualified_groups.csv",
       {"tested_group", "used_group", "yield_limited", "source", "basis"},
       {"tested_group", "used_group"}},
      {"essential_variables.csv",
       {"basis_document", "quantity", "decrease_pct", "increase_pct", "source", "basis", "note"},
       {"basis_document", "quantity"}},
      {"welding_positions.csv", {"position", "meaning", "source", "basis"}, {"position"}},
      {"validation.csv",
       {"formula", "values", "bias_pct", "scatter_pct", "within_pct", "coverage_pct", "source", "basis",
        "unknown"},
       {"formula"}},
      {"shape_factors.csv", {"joint", "f2", "f2_low", "f2_high", "f3", "source", "basis", "note"}, {"joint"}},
      {"transition_current.csv",
       {"material", "gas", "diameter_mm", "transition_current_A", "source", "basis"},
       {"material", "gas", "diameter_mm"}},
      {"preheat_aws.csv",
       {"restraint", "thickness_above_mm", "thickness_from_mm", "thickness_up_to_mm", "thickness_below_mm",
        "group", "preheat_C", "none_needed_above_it", "source", "basis", "note"},
       {"restraint", "thickness_above_mm", "thickness_from_mm", "group"}},
      {"iso13920.csv",
       {"kind", "class", "above_mm", "up_to_mm", "tolerance_mm", "tolerance_deg", "tolerance_mm_per_m",
        "source", "basis"},
       {"kind", "class", "above_mm"}},
      {"iso5817.csv",
       {"imperfection", "number", "level", "constant_mm", "factor", "factor_of", "cap_mm", "short_only",
        "thickness_above_mm", "thickness_up_to_mm", "source", "basis"},
       {"imperfection", "level", "short_only", "thickness_above_mm"}},
      {"fillet_minimum.csv",
       {"thickness_above_mm", "thickness_up_to_mm", "leg_min_mm", "source", "basis"},
       {"thickness_above_mm"}},
      {"largest_single_pass.csv", {"position", "leg_max_mm", "source", "basis", "note"}, {"position"}},
      {"hydrogen_scales.csv", {"scale", "above_ml_100g", "up_to_ml_100g", "source", "basis"}, {"scale"}},
      {"fillet_strength.csv",
       {"grade", "tensile_design_MPa", "tensile_product_MPa", "beta_w", "beta_w_2024", "source", "basis",
        "note"},
       {"grade"}},
      {"qualification_ranges.csv",
       {"basis_document", "edition", "quantity", "joint", "runs", "test", "above_mm", "from_mm", "up_to_mm",
        "below_mm", "low_factor", "low_at_least_mm", "high_factor", "source", "basis", "note"},
       {"basis_document", "edition", "quantity", "joint", "runs", "test", "above_mm", "from_mm"}},
  };
  return shapes;
}

const std::vector<ColumnRange>& column_ranges() {
  static const std::vector<ColumnRange> ranges = {
      {"thermal_efficiency", 0.5, 1},
      {"deposition_efficiency", 0.5, 1},
      {"diameter_mm", 0.6, 4},
      {"_g_cm3", 2.5, 8.2},
      {"alpha_mm_s_A", 0.1, 2},
      {"beta_per_s_A2", 0, 1e-3},
      {"_scatter_pct", 5, 50},
      {"yield_min_MPa", 100, 1000},
      {"_MPa", 200, 1000},
      {"CEV_max_pct", 0.3, 0.8},
      {"_A", 50, 500},
      {"f2", 0.4, 1},
      {"f2_low", 0.4, 1},
      {"f2_high", 0.4, 1},
      {"f3", 0.6, 1},
      {"preheat_C", 15, 165},
      {"tolerance_mm", 0.4, 45},
      {"tolerance_deg", 0.1, 2},
      {"tolerance_mm_per_m", 1, 30},
      {"leg_min_mm", 3, 8},
      {"leg_max_mm", 8, 12},
      {"beta_w", 0.7, 1},
      {"beta_w_2024", 0.7, 1.1},
      {"constant_mm", 0, 3},
      {"factor", 0, 0.5},
      {"cap_mm", 0.3, 6},
      {"low_factor", 0.4, 1},
      {"yield_limited", 0, 1},
      {"high_factor", 1, 3},
      {"_ml_100g", 0, 20},
      {"bias_pct", -100, 100},
      {"_pct", 0, 100},
      {"_mm", 0, 20000},
  };
  return ranges;
}

std::set<std::string> known_sources() {
  const CsvTable sources = read_csv((root / "reference/sources.csv").string());
  std::set<std::string> keys;
  for (const CsvRow& row : sources.rows) keys.insert(row.fields[sources.require("key")]);
  return keys;
}

}  // namespace seamtakt::rules
