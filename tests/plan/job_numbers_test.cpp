#include <gtest/gtest.h>

#include "plan/rules/rules.hpp"

namespace seamtakt {
namespace {

Plan with_jobs(std::vector<std::string> first, std::vector<std::string> second) {
  Plan plan;
  Weldment weldment;
  weldment.id = "W";
  weldment.seams.resize(2);
  weldment.seams[0].id = "S1";
  weldment.seams[0].schedules = {"F"};
  weldment.seams[0].jobs = std::move(first);
  weldment.seams[1].id = "S2";
  weldment.seams[1].schedules = {"F", "G"};
  weldment.seams[1].jobs = std::move(second);
  plan.weldments = {weldment};
  return plan;
}

Findings judged(const Plan& plan) {
  Findings findings;
  judge_job_numbers(plan, findings);
  return findings;
}

TEST(JobNumbers, one_for_each_pass_or_none_at_all_is_no_finding) {
  EXPECT_TRUE(judged(with_jobs({"17"}, {"18", "19"})).empty());
  EXPECT_TRUE(judged(with_jobs({}, {})).empty());
}

TEST(JobNumbers, another_count_than_that_of_the_passes_is_a_warning) {
  const Findings findings = judged(with_jobs({"17"}, {"18"}));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].rule, "seam.jobs.count");
  EXPECT_EQ(findings[0].severity, Severity::warn);
  EXPECT_EQ(findings[0].where, "W/S2");
  EXPECT_EQ(findings[0].value, 1);
  EXPECT_EQ(findings[0].limit, 2);
}

TEST(JobNumbers, the_same_number_twice_in_a_weldment_is_a_warning_at_the_second) {
  const Findings findings = judged(with_jobs({"17"}, {"18", "17"}));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].rule, "seam.jobs.repeated");
  EXPECT_EQ(findings[0].where, "W/S2/pass 2");
  EXPECT_NE(findings[0].text().find("W/S1/pass 1"), std::string::npos) << findings[0].text();
}

TEST(JobNumbers, two_weldments_may_have_the_same) {
  Plan plan = with_jobs({"17"}, {"18", "19"});
  plan.weldments.push_back(plan.weldments[0]);
  plan.weldments[1].id = "V";
  EXPECT_TRUE(judged(plan).empty());
}

}  // namespace
}  // namespace seamtakt
