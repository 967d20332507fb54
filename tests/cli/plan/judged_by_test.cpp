// "No finding" must not mean "nothing was judged": what judged a pass, and by which code, is said.
#include <gtest/gtest.h>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class JudgedByTest : public Judgement {
 protected:
  std::vector<std::string> judged(const Plan& plan) {
    std::vector<std::string> words;
    const JsonNode document = evaluated(plan);
    for (const JsonNode& word : first_pass(document).find("judged")->elements) words.push_back(word.string);
    return words;
  }
  /// A tee that nothing but its drawn leg judges.
  static Plan bare() {
    Plan plan = tee();
    schedule_of(plan).limits.reset();
    schedule_of(plan).use.reset();
    schedule_of(plan).qualification.clear();
    return plan;
  }
};

using Judged = std::vector<std::string>;

TEST_F(JudgedByTest, APassNamesWhatJudgedIt) {
  Plan plan = bare();
  EXPECT_EQ(judged(plan), Judged{"size"});
  schedule_of(plan).limits = ScheduleLimits{};
  schedule_of(plan).limits->current_A = Interval{100, 400};
  EXPECT_EQ(judged(plan), Judged{"size"}) << "a current says nothing of the heat";
  schedule_of(plan).limits->heat_input_kJ_mm = Interval{{}, 5};
  EXPECT_EQ(judged(plan), (Judged{"size", "heat"}));
  schedule_of(plan).use = ScheduleUse{};
  schedule_of(plan).use->positions = {"PA", "PB"};
  seam_of(plan).position = "PB";
  EXPECT_EQ(judged(plan), (Judged{"size", "heat", "position"}));
  Qualification qualification;
  qualification.id = "Q";
  qualification.basis = "ISO 15614-1";
  qualification.tested = TestedWeld{};
  plan.qualifications = {qualification};
  schedule_of(plan).qualification = "Q";
  EXPECT_EQ(judged(plan), (Judged{"size", "heat", "position", "qualification"}));
  plan.qualifications.front().basis = "ISO 15612";
  EXPECT_EQ(judged(plan), (Judged{"size", "heat", "position"})) << "its ranges aren't judged";
}

TEST_F(JudgedByTest, ACoolingLimitJudgesFerriticSteelsAlone) {
  Plan plan = bare();
  schedule_of(plan).limits = ScheduleLimits{};
  schedule_of(plan).limits->cooling_time_s = Interval{1, 100};
  EXPECT_EQ(judged(plan), (Judged{"size", "heat"}));
  set_metals(plan, {{"C", 0.04}, {"Cr", 18.1}, {"Ni", 8.1}});
  EXPECT_EQ(judged(plan), Judged{"size"});
}

TEST_F(JudgedByTest, APlanChoosesTheSeverityOfRulesThatRecommendAlone) {
  const auto said = [&](const char* chosen) {
    Plan plan = bare();
    seam_of(plan).tacks = Tacks{};
    seam_of(plan).tacks->count = 2;
    seam_of(plan).tacks->length_mm = 5;
    plan.severity = RuleSeverities{};
    plan.severity->tack_length = chosen;
    return severity_of(evaluated(plan), "tack.length.short");
  };
  EXPECT_EQ(said(""), "warn");
  EXPECT_EQ(said("note"), "note");
  EXPECT_EQ(said("fail"), "fail");
  // What is demanded has no key.
  Plan plan = bare();
  std::string text = write_plan(plan);
  text.insert(text.find("{") + 1, "\"severity\": {\"fillet.leg.undersize\": \"note\"},");
  const std::string path = folder / "demand.weldplan.json";
  std::ofstream(path) << text;
  const ProgramRun refused = run_program({"evaluate", path});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_NE(refused.errors.find("fillet.leg.undersize"), std::string::npos) << refused.errors;
}

TEST_F(JudgedByTest, EachCodesRulesJudgeThePlansOfThatCode) {
  const auto said = [&](const char* code, const char* rule) {
    Plan plan = bare();
    plan.code = code;
    seam_of(plan).leg_mm = 3;  // throat 2.12
    return severity_of(evaluated(plan), rule);
  };
  for (const char* rule : {"fillet.leg.below-minimum", "fillet.throat.below-minimum"})
    EXPECT_EQ(said("", rule), "note") << rule;
  EXPECT_EQ(said("EN 1090-2", "fillet.leg.below-minimum"), "");
  EXPECT_EQ(said("EN 1090-2", "fillet.throat.below-minimum"), "warn");
  EXPECT_EQ(said("AWS D1.1", "fillet.leg.below-minimum"), "warn");
  EXPECT_EQ(said("AWS D1.1", "fillet.throat.below-minimum"), "");
  Plan plan = bare();
  plan.code = "our own code";
  const ProgramRun refused = run_program({"evaluate", saved(plan), "--json"});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_NE(refused.errors.find("EN 1090-2"), std::string::npos) << refused.errors;
}

TEST_F(JudgedByTest, ARatingBelongsToItsDutyAndThePlatesHighestCurrentToNone) {
  Plan plan = bare();
  plan.power_sources.front().rated_current_A = 290;
  plan.power_sources.front().rated_duty_pct = 100;
  schedule_of(plan).current_A = 301;
  const auto of_source = [&] {
    std::vector<std::string> rules;
    const JsonNode document = evaluated(plan);
    for (const JsonNode& finding : document.find("findings")->elements)
      if (const std::string& rule = finding.find("rule")->string; rule.starts_with("power-source."))
        rules.push_back(rule);
    return rules;
  };
  EXPECT_EQ(of_source(), Judged{}) << "301 A may burn 93 % of the time";
  plan.power_sources.front().max_current_A = 300;
  EXPECT_EQ(of_source(), Judged{"power-source.current.above-maximum"});
  plan.power_sources.front().max_current_A = 301;
  EXPECT_EQ(of_source(), Judged{});
}

}  // namespace
