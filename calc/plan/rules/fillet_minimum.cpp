#include "formula/size/fillet_minimum.hpp"

#include <algorithm>

#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

/// Wire with hydrogen above this isn't low-hydrogen (D1.1's H2 ends at 10 ml/100 g, recalled).
constexpr double low_hydrogen_ml_100g = 10;

/// D1.1 counts gas-shielded, cored-wire and submerged-arc welding (ISO 4063: 13x, 114, 12x) as such whatever
/// the wire.
bool is_low_hydrogen_process(const std::string& process) {
  return process.starts_with("13") || process.starts_with("12") || process == "114";
}

bool is_low_hydrogen(const SeamFacts& facts) {
  for (const std::string& id : facts.seam.schedules) {
    if (is_low_hydrogen_process(facts.index.schedule(id)->process)) continue;
    const Wire* wire = facts.index.parts_of(*facts.index.schedule(id)).wire;
    if (wire->hydrogen_ml_100g && *wire->hydrogen_ml_100g > low_hydrogen_ml_100g) return false;
  }
  return true;
}

}  // namespace

void judge_fillet_minimum(const SeamFacts& facts, Findings& findings) {
  if (!facts.figures.leg_needed_mm) return;
  const FilletMinimumCase fillet{facts.seam.thickness_mm[0], facts.seam.thickness_mm[1],
                                 is_low_hydrogen(facts), false};
  const double leg = *facts.figures.leg_needed_mm, leg_min = fillet_leg_min_mm(fillet);
  const double throat = *facts.figures.throat_needed_mm;
  const auto by_d1_1 = severity_by_code(facts.plan, "AWS D1.1", Severity::warn),
             by_en = severity_by_code(facts.plan, "EN 1090-2", Severity::warn);
  if (by_d1_1 && leg < leg_min)
    findings.push_back({"fillet.leg.below-minimum", *by_d1_1, facts.place(), leg, leg_min, "mm",
                        Sentence("fillet.leg.below-minimum"_key,
                                 {{"leg", UnitValue{leg, "mm", 3}}, {"least", UnitValue{leg_min, "mm", 3}}}),
                        "AWS D1.1:2015, Table 5.7"});
  if (by_en && throat < fillet_throat_min_mm * (1 - 1e-9))
    findings.push_back(
        {"fillet.throat.below-minimum", *by_en, facts.place(), throat, fillet_throat_min_mm, "mm",
         Sentence("fillet.throat.below-minimum"_key, {{"throat", UnitValue{throat, "mm", 3}},
                                                      {"least", UnitValue{fillet_throat_min_mm, "mm", 3}}}),
         "EN 1993-1-8:2005, 4.5.2(2) (recalled)"});
}

}  // namespace seamtakt
