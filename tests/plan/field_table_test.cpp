#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan_edit.hpp"

using namespace seamtakt;
using plan_edit::test_data;

namespace {

void for_each_table(const FieldTable& table, std::set<const FieldTable*>& seen) {
  if (!seen.insert(&table).second) return;
  for (const FieldInfo& field : table.fields)
    if (field.nested) for_each_table(field.nested(), seen);
}

template <class T>
void expect_text_comes_back(const T& object) {
  for (const auto& field : fields_of<T>().fields) {
    if (field.nested) continue;
    T copy{};
    field.set_text(copy, field.text(object));
    EXPECT_EQ(field.text(copy), field.text(object)) << field.key;
    EXPECT_EQ(field.number(copy), field.number(object)) << field.key;
  }
}

}  // namespace

TEST(FieldTables, EachFieldHasALabelASentenceAndTheUnitThatItsKeyNames) {
  std::set<const FieldTable*> tables;
  for_each_table(fields_of<Plan>(), tables);
  EXPECT_EQ(tables.size(), 49u);
  for (const FieldTable* table : tables) {
    EXPECT_LE(table->fields.size(), 64u);
    for (const FieldInfo& field : table->fields) {
      const std::string name = std::string(table->name) + "." + std::string(field.key);
      EXPECT_NE(std::string(field.label), "") << name;
      EXPECT_TRUE(std::string_view(field.help).ends_with('.')) << name;
      const Unit* unit = unit_of_key(field.key);
      EXPECT_TRUE(unit == nullptr || field.unit == std::string_view(unit->name)) << name;
      EXPECT_EQ(&table->fields[table->find(field.key, 7)], &field) << name;
    }
  }
}

TEST(FieldTables, TextOfEveryFieldCanBeTypedBack) {
  const Plan plan = parse_plan(test_data("plan-v1-every-key.weldplan.json"), "every key");
  expect_text_comes_back(plan.base_metals[0]);
  expect_text_comes_back(plan.wires[0]);
  expect_text_comes_back(plan.power_sources[0]);
  expect_text_comes_back(plan.schedules[0]);
  expect_text_comes_back(*plan.schedules[0].use);
  expect_text_comes_back(*plan.schedules[0].limits);
  expect_text_comes_back(*plan.qualifications[0].tested);
  for (const Seam& seam : plan.weldments[0].seams) expect_text_comes_back(seam);
  expect_text_comes_back(plan.cell->robots[0]);
  expect_text_comes_back(plan.cell->robots[1]);
  for (const Stage& stage : plan.line->stages) expect_text_comes_back(stage);
}

TEST(FieldTables, TypingWhatCannotBeLeavesTheValueAsItWas) {
  Schedule schedule;
  schedule.travel_speed_mm_s = 7;
  const auto& speed = *field_named<Schedule>("travel_speed_mm_s");
  for (const char* typed : {"0", "-1", "fast", "7,5", "1e400", "nan", ""}) {
    EXPECT_THROW(speed.set_text(schedule, typed), InputError) << typed;
    EXPECT_EQ(schedule.travel_speed_mm_s, 7);
  }
  speed.set_text(schedule, " 8.25 ");
  EXPECT_EQ(schedule.travel_speed_mm_s, 8.25);
  EXPECT_THROW(speed.set_number(schedule, 0), InputError);
  speed.set_number(schedule, 0.1);
  EXPECT_EQ(speed.number(schedule), 0.1);
}

TEST(FieldTables, AFieldRefusesAnObjectOfAnotherStruct) {
  const FieldInfo& speed = *field_named<Schedule>("travel_speed_mm_s");
  Seam seam;
  EXPECT_THROW(speed.text(seam), std::logic_error);
  EXPECT_THROW(speed.set_number(seam, 7), std::logic_error);
}

TEST(FieldTables, ANumberThatIsNoneOrOutsideIsRefusedAsItsTextIs) {
  Schedule schedule;
  schedule.current_A = 200;
  for (const char* key : {"current_A", "travel_speed_mm_s", "revision"}) {
    const FieldInfo& field = *field_named<Schedule>(key);
    for (const double number : {-1.0, 1e300, std::nan(""), HUGE_VAL}) {
      const auto refusal = [&](const auto& set) -> std::string {
        try {
          set();
        } catch (const InputError& error) {
          return error.what();
        }
        return "accepted";
      };
      const std::string of_number = refusal([&] { field.set_number(schedule, number); });
      EXPECT_EQ(of_number, refusal([&] { field.set_text(schedule, number_text(number)); })) << key;
      EXPECT_NE(of_number, "accepted") << key << ' ' << number;
    }
  }
  EXPECT_EQ(schedule.current_A, 200);
}

TEST(FieldTables, EmptyTextMakesAFieldAbsentOrItsDefault) {
  Schedule schedule;
  schedule.current_A = 200;
  schedule.preheat_C = 80;
  field_named<Schedule>("current_A")->set_text(schedule, "");
  field_named<Schedule>("preheat_C")->set_text(schedule, "");
  EXPECT_FALSE(schedule.current_A);
  EXPECT_EQ(schedule.preheat_C, 20);
}

TEST(FieldTables, ListsOfIdsKeepCommasQuotesAndBlanks) {
  Seam seam;
  const auto& after = *field_named<Seam>("after");
  seam.after = {"S1", "a, b", "say \"so\"", " blank "};
  const std::string text = after.text(seam);
  const auto before = seam.after;
  seam.after.clear();
  after.set_text(seam, text);
  EXPECT_EQ(seam.after, before) << text;
  EXPECT_THROW(after.set_text(seam, "\"open"), InputError);
  EXPECT_EQ(seam.after, before);
}

TEST(FieldTables, AStageTakesAWordOrSeconds) {
  Stage stage;
  const auto& time = *field_named<Stage>("time");
  time.set_text(stage, "tack");
  EXPECT_EQ(stage.time_of, "tack");
  time.set_text(stage, "12.5");
  EXPECT_EQ(stage.time_of, "");
  EXPECT_EQ(time.number(stage), 12.5);
  EXPECT_THROW(time.set_text(stage, "tak"), InputError);
  EXPECT_THROW(time.set_text(stage, "-1"), InputError);
}
