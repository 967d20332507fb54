#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <bit>
#include <set>

#include "base/json/json_node.hpp"
#include "plan/fields/field.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan_edit.hpp"
#include "random_plan.hpp"
#include "support/sanitized.hpp"

using namespace seamtakt;
using plan_edit::test_data;

namespace {

/// Where two JSON values differ; empty where they are the same, numbers to the last bit, keys in order.
std::string difference(const JsonNode& a, const JsonNode& b, const std::string& at = "") {
  if (a.kind != b.kind) return at + ": kind";
  if (a.boolean != b.boolean || a.string != b.string) return at + ": value";
  if (std::bit_cast<std::uint64_t>(a.number) != std::bit_cast<std::uint64_t>(b.number))
    return at + ": number";
  if (a.elements.size() != b.elements.size() || a.members.size() != b.members.size()) return at + ": size";
  for (std::size_t i = 0; i < a.elements.size(); ++i)
    if (auto text = difference(a.elements[i], b.elements[i], at + "/" + std::to_string(i)); !text.empty())
      return text;
  for (std::size_t i = 0; i < a.members.size(); ++i) {
    if (a.members[i].key != b.members[i].key) return at + ": key " + a.members[i].key;
    if (auto text = difference(a.members[i].value, b.members[i].value, at + "/" + a.members[i].key);
        !text.empty())
      return text;
  }
  return "";
}

void see_keys(const JsonNode& node, const FieldTable& table, std::set<std::string>& seen) {
  for (const auto& [key, value] : node.members) {
    const std::size_t at = table.find(key);
    if (at == FieldTable::npos) continue;
    seen.insert(std::string(table.name) + "." + key);
    if (table.fields[at].kind == FieldKind::object) see_keys(value, table.fields[at].nested(), seen);
    if (table.fields[at].kind == FieldKind::object_list)
      for (const JsonNode& element : value.elements) see_keys(element, table.fields[at].nested(), seen);
  }
}

void all_keys(const FieldTable& table, std::set<std::string>& keys) {
  for (const FieldInfo& field : table.fields) {
    keys.insert(std::string(table.name) + "." + std::string(field.key));
    if (field.nested) all_keys(field.nested(), keys);
  }
}

}  // namespace

TEST(PlanSamples, OneSampleHasEveryKeyOfTheFieldTables) {
  std::set<std::string> seen, keys;
  see_keys(parse_json(test_data("plan-v1-every-key.weldplan.json"), "sample"), fields_of<Plan>(), seen);
  all_keys(fields_of<Plan>(), keys);
  for (const auto& key : keys) EXPECT_TRUE(seen.contains(key)) << key;
}

TEST(PlanSamples, FilesThatTheProgramWroteComeBackByteForByte) {
  for (const char* name :
       {"plan-v1-every-key.weldplan.json", "plan-v1-smallest.weldplan.json", "plan-v1-free-keys.saved.json"})
    EXPECT_EQ(write_plan(parse_plan(test_data(name), name)), test_data(name)) << name;
}

TEST(PlanSamples, AFileWrittenByHandKeepsItsKeysTheirOrderAndItsFreeValuesAsTyped) {
  EXPECT_EQ(write_plan(parse_plan(test_data("plan-v1-free-keys.weldplan.json"), "by hand")),
            test_data("plan-v1-free-keys.saved.json"));
}

TEST(PlanSamples, DefaultsAreThoseOfTheContract) {
  const Plan plan = parse_plan(test_data("plan-v1-smallest.weldplan.json"), "smallest");
  const Schedule& schedule = plan.schedules.at(0);
  EXPECT_EQ(schedule.arc_length_mm, 0);
  EXPECT_EQ(schedule.waveform_factor, 1);
  EXPECT_EQ(schedule.preheat_C, 20);
  const Seam& seam = plan.weldments.at(0).seams.at(0);
  EXPECT_EQ(seam.dihedral_deg, 90);
  EXPECT_EQ(seam.gap_mm, 0);
  EXPECT_EQ(seam.area_allowance, 1);
  EXPECT_EQ(seam.sense_points, 0);
  EXPECT_EQ(seam.by, "robot");
  EXPECT_TRUE(seam.robots.empty());
  EXPECT_EQ(Stage().availability, 1);
  EXPECT_EQ(Cell().stations, 1);
}

RC_GTEST_PROP(RandomPlans, ComeBackToTheLastBitInTheirOwnOrder, ()) {
  constexpr std::uint64_t plans = test::rounds<std::uint64_t>(100, 3);  // a case: 10,000 in all
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  for (std::uint64_t i = 0; i < plans; ++i) {
    const std::string typed = random_plan(seed + i);
    const std::string saved = write_plan(parse_plan(typed, "typed"));
    RC_ASSERT(difference(parse_json(typed, "typed"), parse_json(saved, "saved")) == "");
    RC_ASSERT(write_plan(parse_plan(saved, "saved")) == saved);
  }
}

TEST(WritePlan, KeysThatTheFileHadNotStandAfterTheirNeighbourInTheTable) {
  Plan plan = parse_plan(test_data("plan-v1-smallest.weldplan.json"), "smallest");
  plan.schedules[0].gas_flow_l_min = 12;
  plan.schedules[0].revision = 2;
  plan.title = "new";
  const std::string saved = write_plan(plan);
  EXPECT_LT(saved.find("\"id\": \"P\""), saved.find("\"revision\": 2"));
  EXPECT_LT(saved.find("\"revision\": 2"), saved.find("\"process\""));
  EXPECT_LT(saved.find("\"contact_tip_distance_mm\""), saved.find("\"gas_flow_l_min\": 12"));
  EXPECT_LT(saved.find("\"version\""), saved.find("\"title\""));
  EXPECT_EQ(write_plan(parse_plan(saved, "saved")), saved);
}

TEST(WritePlan, AValueThatWasTakenAwayIsNotWritten) {
  Plan plan = parse_plan(test_data("plan-v1-every-key.weldplan.json"), "every key");
  plan.schedules[0].weave.reset();
  plan.schedules[0].status.clear();
  plan.weldments[0].seams[0].gap_max_mm.reset();
  const Plan again = parse_plan(write_plan(plan), "again");
  EXPECT_FALSE(again.schedules[0].weave);
  EXPECT_EQ(again.schedules[0].status, "");
  EXPECT_FALSE(again.weldments[0].seams[0].gap_max_mm);
}

TEST(WritePlan, ANumberThatIsNotFiniteIsRefused) {
  Plan plan = parse_plan(test_data("plan-v1-smallest.weldplan.json"), "smallest");
  plan.schedules[0].arc_voltage_V = std::nan("");
  EXPECT_ANY_THROW(write_plan(plan));
}
