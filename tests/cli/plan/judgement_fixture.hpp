#pragma once

#include <gtest/gtest.h>

#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/scratch_folder.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {

/// One tee of leg 6 on plates of 10 and 8 mm, welded at 0.931 kJ/mm; invented.
inline Plan tee() {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  plan.weldments.front().seams.resize(1);
  find_by_id(plan.schedules, "F")->preheat_C = 20;
  return plan;
}
inline Seam& seam_of(Plan& plan) {
  return plan.weldments.front().seams.front();
}
inline Schedule& schedule_of(Plan& plan) {
  return *find_by_id(plan.schedules, "F");
}
inline void set_metals(Plan& plan, const CompositionPct& composition) {
  for (BaseMetal& metal : plan.base_metals) metal.composition_pct = composition;
}

/// Whether a finding is a fail: then the command ends with 1, else with 0.
inline bool any_fail(const JsonNode& document) {
  for (const JsonNode& finding : document.find("findings")->elements)
    if (finding.find("severity")->string == "fail") return true;
  return false;
}

class Judgement : public testing::Test {
 protected:
  ScratchFolder folder;

  std::string saved(const Plan& plan) {
    const std::string path = folder / "plan.weldplan.json";
    std::ofstream(path) << write_plan(plan);
    return path;
  }
  JsonNode evaluated(const Plan& plan) {
    run = run_program({"evaluate", saved(plan), "--json"});
    JsonNode document = parse_json(run.output, "output");
    EXPECT_EQ(run.exit_code, any_fail(document)) << run.errors;
    return document;
  }
  ProgramRun run;
};

inline std::vector<JsonNode> found(const JsonNode& document, const std::string& rule) {
  std::vector<JsonNode> all;
  for (const JsonNode& finding : document.find("findings")->elements)
    if (finding.find("rule")->string == rule) all.push_back(finding);
  return all;
}

inline std::string severity_of(const JsonNode& document, const std::string& rule) {
  const std::vector<JsonNode> all = found(document, rule);
  return all.empty() ? "" : all.front().find("severity")->string;
}

}  // namespace seamtakt::test
