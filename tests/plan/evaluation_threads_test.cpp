#include <gtest/gtest.h>

#include <algorithm>

#include "base/error.hpp"
#include "base/finding_json.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/evaluate_pass.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/evaluate/evaluation_json.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/rules/rules.hpp"
#include "support/sanitized.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// The demo's weldments many times under other names, so that every thread has work.
Plan large_plan(std::size_t copies) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  plan.accepted.clear();
  const std::vector<Weldment> few = plan.weldments;
  plan.weldments.clear();
  for (std::size_t copy = 0; copy < copies; ++copy)
    for (const Weldment& weldment : few) {
      plan.weldments.push_back(weldment);
      plan.weldments.back().id += "-" + std::to_string(copy);
      // Lengths, plates and legs of their own, so that not all is remembered from the copy before.
      for (Seam& seam : plan.weldments.back().seams) {
        for (Point_mm& point : seam.path_mm) point[0] *= 1 + 0.01 * static_cast<double>(copy);
        seam.thickness_mm[copy % 2] += 0.5 * static_cast<double>(copy % 5);
        if (seam.leg_mm) *seam.leg_mm += 0.25 * static_cast<double>(copy % 7);
      }
    }
  return plan;
}

std::string whole_text(const Evaluation& evaluation, ThreadPool& pool) {
  JsonWriter json;
  json.begin_object();
  std::string text;
  write_evaluation(
      json, evaluation, [&](std::string_view part) { text += part; }, pool);
  write_findings(json, evaluation.findings);
  json.end_object();
  return text + json.take();
}

TEST(EvaluationThreads, AnyNumberGivesTheSameBytes) {
  const Plan plan = large_plan(9);
  ThreadPool one(1), two(2), five(5);
  const std::string wanted = whole_text(evaluate(plan, "2026-11-25", one), one);
  EXPECT_GT(wanted.size(), 1'000'000u);
  EXPECT_EQ(whole_text(evaluate(plan, "2026-11-25", two), two), wanted);
  EXPECT_EQ(whole_text(evaluate(plan, "2026-11-25", five), five), wanted);
}

template <class Row>
std::string text_of(std::span<const Column<Row>> columns, const Row& row) {
  std::string text;
  for (const auto& column : columns) {
    const ColumnValue value = column.value(row);
    if (const double* number = std::get_if<double>(&value)) append_json_value(text, *number);
    if (const int* number = std::get_if<int>(&value)) append_json_value(text, *number);
    if (const auto* word = std::get_if<std::string_view>(&value)) text += *word;
    if (const auto* pair = std::get_if<std::array<double, 2>>(&value)) {
      append_json_value(text, (*pair)[0]);
      append_json_value(text, (*pair)[1]);
    }
    text += ';';
  }
  return text;
}

/// With what judged it, which depends on the seam and isn't remembered.
PassEvaluation evaluated_alone(const PassFacts& facts) {
  PassEvaluation pass = evaluate_pass(facts);
  pass.judged = judged_by(facts, pass);
  return pass;
}

TEST(EvaluationThreads, ARememberedPassIsAPassEvaluatedByItself) {
  const Plan plan = large_plan(6);
  const PlanIndex index(plan);
  const Evaluation evaluation = evaluate(plan);
  std::size_t next = 0;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass) {
        const PassEvaluation alone = evaluated_alone(pass_facts(plan, index, weldment, seam, pass));
        const PassEvaluation& remembered = evaluation.passes.at(next++);
        ASSERT_EQ(text_of(pass_columns(), remembered), text_of(pass_columns(), alone));
        ASSERT_EQ(remembered.cooling_time_fastest_s, alone.cooling_time_fastest_s);
        ASSERT_EQ(remembered.cooling_time_slowest_s, alone.cooling_time_slowest_s);
      }
  EXPECT_EQ(next, evaluation.passes.size());
}

/// What a pass's settings are must hold all that its values depend on: one thing changed, and the value
/// moves.
TEST(EvaluationThreads, SeamsThatDifferInOneThingAreNotTakenForEachOther) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  plan.accepted.clear();
  Weldment& weldment = plan.weldments[0];
  const Seam base = weldment.seams[0];
  weldment.seams.clear();
  const auto add = [&](const auto& change) {
    weldment.seams.push_back(base);
    weldment.seams.back().id = "V" + std::to_string(weldment.seams.size());
    weldment.seams.back().after.clear();
    change(weldment.seams.back());
  };
  add([](Seam&) {});
  add([](Seam& seam) { seam.thickness_mm[0] += 1; });
  add([](Seam& seam) { seam.thickness_mm[1] += 1; });
  add([](Seam& seam) { seam.joint = "lap"; });
  add([&](Seam& seam) {
    seam.base_metals[0] = plan.base_metals[seam.base_metals[0] == plan.base_metals[1].id ? 0 : 1].id;
  });
  add([&](Seam& seam) {
    seam.base_metals[1] = plan.base_metals[seam.base_metals[1] == plan.base_metals[1].id ? 0 : 1].id;
  });
  add([&](Seam& seam) {
    seam.schedules[0] = plan.schedules[seam.schedules[0] == plan.schedules[0].id ? 1 : 0].id;
  });
  add([&](Seam& seam) { seam.robots = {plan.cell->robots.back().id}; });
  add([](Seam& seam) { seam.path_mm.back()[0] += 100; });
  const PlanIndex index(plan);
  ThreadPool one(1);
  const Evaluation evaluation = evaluate(plan, {}, one);
  std::size_t next = 0;
  for (const Seam& seam : weldment.seams)
    for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass)
      EXPECT_EQ(text_of(pass_columns(), evaluation.passes[next++]),
                text_of(pass_columns(), evaluated_alone(pass_facts(plan, index, weldment, seam, pass))))
          << seam.id;
}

TEST(EvaluationThreads, TheFirstBadPlaceIsReportedHoweverManyThreadsRead) {
  std::string text = write_plan(large_plan(30));
  // Two bad numbers, far apart: the first one is reported.
  const std::size_t first = text.find("\"gap_mm\": ", text.size() / 4), last = text.rfind("\"gap_mm\": ");
  ASSERT_LT(first, last);
  text.insert(last + 10, "-1");
  text.insert(first + 10, "-1");
  std::string told;
  for (int run = 0; run < test::rounds(20, 4); ++run) try {
      parse_plan(text, "p.json");
      ADD_FAILURE() << "accepted";
    } catch (const InputError& error) {
      if (run > 0) {
        EXPECT_EQ(told, error.what());
      }
      told = error.what();
    }
  const std::size_t line = 1 + static_cast<std::size_t>(std::count(
                                   text.begin(), text.begin() + static_cast<std::ptrdiff_t>(first), '\n'));
  EXPECT_NE(told.find("p.json:" + std::to_string(line) + ":"), std::string::npos) << told;
}

}  // namespace
}  // namespace seamtakt
