#pragma once

#include <array>
#include <optional>

#include "formula/metal/composition.hpp"
#include "formula/metal/ferritic.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/metal/preheat.hpp"
#include "plan/evaluate/pass_facts.hpp"
#include "plan/steel_of_metal.hpp"

namespace seamtakt {

/// The two metals of a joint and the weld metal, with the formulas that hold for them.
struct JointMetals {
  std::array<Composition<double>, 2> steels;  ///< as computed with (steel_of)
  std::array<SteelOfMetal, 2> of_metals;      ///< how they were got
  bool is_ferritic = true;                    ///< both, so that t8/5 and penetration hold
  /// CET of the joined metal with the higher one; empty where one of them is above CET's range.
  std::optional<double> cet_pct;
  std::size_t higher_cet = 0;  ///< which of the two
  /// CET of the wire's weld metal; empty where the plan doesn't state the composition.
  std::optional<double> weld_metal_cet_pct;
  /// CET for preheat: the joined metal's or, where higher, the weld metal's + 0.03 (design_cet_pct); empty
  /// where CET doesn't hold for one of the three metals.
  std::optional<double> design_cet_pct;
  bool has_hardness = false;  ///< both compositions are inside the domain of the hardness formula
};
JointMetals joint_metals(const PassFacts& facts);

/// Inputs of method B for a pass of the joint; empty where CET doesn't hold or the wire states no
/// hydrogen.
std::optional<PreheatCase> preheat_case_of(const PassFacts& facts, const JointMetals& metals,
                                           double heat_input_kJ_mm);

/// How much more preheat than it has a pass may need without a warning: method B isn't sharper (common
/// practice, no source).
inline constexpr double preheat_tolerance_K = 5;

}  // namespace seamtakt
