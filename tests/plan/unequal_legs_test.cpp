// A torch off the bisector: said openly that unequal legs aren't judged.
#include <gtest/gtest.h>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

Findings said_of(double work_deg, const std::string& quality, double dihedral_deg = 90) {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  find_by_id(plan.schedules, "F")->torch_work_deg = work_deg;
  Seam& seam = plan.weldments[0].seams[0];
  seam.quality = quality;
  seam.dihedral_deg = dihedral_deg;
  Findings said;
  for (const Finding& finding : evaluate(plan).findings)
    if (finding.rule == "fillet.legs.not-judged") said.push_back(finding);
  return said;
}

TEST(UnequalLegs, AreNotJudgedWhereTheTorchIsOffTheBisector) {
  const Findings said = said_of(35, "C");
  ASSERT_EQ(said.size(), 1u);
  EXPECT_EQ(said[0].severity, Severity::note);
  EXPECT_EQ(said[0].where, "F");
  EXPECT_NE(said[0].text().find("of 1 fillet with"), std::string::npos) << said[0].text();
  // A torch at 45 deg is off the bisector of 70 deg, one at 35 deg is on it.
  EXPECT_EQ(said_of(45, "C", 70).size(), 1u);
  EXPECT_TRUE(said_of(35, "C", 70).empty());
}

TEST(UnequalLegs, AreNoMatterOnTheBisectorOnEitherSideOrWithoutAQualityLevel) {
  EXPECT_TRUE(said_of(45, "C").empty());
  EXPECT_TRUE(said_of(-45, "C").empty());
  EXPECT_TRUE(said_of(35, "").empty());
}

}  // namespace
}  // namespace seamtakt
