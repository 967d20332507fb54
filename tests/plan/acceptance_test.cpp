#include <gtest/gtest.h>

#include "plan/rules/acceptance.hpp"

using namespace seamtakt;

namespace {

Plan accepting(const char* rule, const char* where) {
  Plan plan;
  plan.accepted.push_back({rule, where, "Inspector", "2026-03-02", "shown by macro section", {}});
  return plan;
}

Finding failing(const char* rule, const char* where) {
  return {rule, Severity::fail, where, 1.0, 2.0, "mm", Sentence::verbatim("Too small."), "plan limit"};
}

}  // namespace

TEST(Acceptance, TurnsItsFindingIntoANoteThatNamesWhoAndWhy) {
  Findings findings = {failing("fillet.leg.undersize", "W/S1"), failing("fillet.leg.undersize", "W/S2")};
  apply_acceptances(accepting("fillet.leg.undersize", "W/S1"), AcceptanceScope::evaluation(), findings);
  ASSERT_EQ(findings.size(), 2u);
  EXPECT_EQ(findings[0].severity, Severity::note);
  EXPECT_NE(findings[0].text().find("Accepted by Inspector on 2026-03-02: shown by macro section"),
            std::string::npos);
  EXPECT_EQ(findings[1].severity, Severity::fail);
}

TEST(Acceptance, WithoutItsFindingIsANote) {
  Findings findings;
  apply_acceptances(accepting("fillet.leg.undersize", "W/S1"), AcceptanceScope::evaluation(), findings);
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].rule, "acceptance.without-finding");
}

TEST(Acceptance, OfACycleIsNotTheEvaluationsToMiss) {
  Findings findings;
  apply_acceptances(accepting("cycle.takt.missed", "W"), AcceptanceScope::evaluation(), findings);
  EXPECT_TRUE(findings.empty());
}

TEST(Acceptance, OfACycleIsMissedByItsOwnWeldmentAlone) {
  Findings own, other;
  const Plan plan = accepting("cycle.duty.exceeded", "W/R1/P");
  apply_acceptances(plan, AcceptanceScope::cycle_of("W"), own);
  apply_acceptances(plan, AcceptanceScope::cycle_of("W2"), other);
  EXPECT_EQ(own.size(), 1u);
  EXPECT_TRUE(other.empty());
}
