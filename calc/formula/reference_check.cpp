#include "formula/reference_check.hpp"

#include "formula/heat/process_efficiency.hpp"
#include "formula/heat/shape_factors.hpp"
#include "formula/metal/cev_limit.hpp"
#include "formula/metal/material_group.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/size/fillet_minimum.hpp"
#include "formula/size/largest_single_pass.hpp"
#include "formula/strength/fillet_resistance.hpp"
#include "formula/tolerance/essential_variable.hpp"
#include "formula/tolerance/general_tolerance.hpp"
#include "formula/tolerance/imperfection.hpp"
#include "formula/tolerance/qualification_range.hpp"
#include "formula/validation.hpp"
#include "formula/wire/melting.hpp"
#include "formula/wire/shielding_gas.hpp"
#include "formula/wire/transfer.hpp"
#include "formula/wire/weld_metal_density.hpp"

namespace seamtakt {

void check_reference_tables() {
  // Each table is read at its first use.
  process_efficiencies();
  shape_factors_of("plate");
  transition_currents();
  aws_preheat(Restraint::low, 'A', 10);
  hydrogen_scale(5);
  shielding_gas_of("M21");
  reference_melting_coefficients("mild-steel");
  weld_metal_density_g_cm3("mild-steel");
  fillet_leg_min_mm({10, 10});
  largest_single_pass_leg_mm("PA");
  fillet_steel("S355", FilletEdition::ed2005, TensileTable::design);
  general_tolerance(ToleranceKind::linear, "B", 100);
  judge_imperfection("undercut", {});
  throat_rule({});
  material_group_of("S355J2");
  cev_limit_pct("S355J2", 10);
  group_cover("1.2", "1.1");
  allowed_change("aws-d1-1", "current_A");
  validation_of("melting.current");
}

}  // namespace seamtakt
