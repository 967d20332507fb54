#include "records/passes/recorded_value.hpp"

#include <gtest/gtest.h>

#include "base/sentences/language.hpp"

namespace seamtakt {

TEST(RecordedValue, every_quantity_that_records_have_is_found_in_a_record) {
  PassRecord record;
  record.steady = {.time_s = 1,
                   .current_A = 1,
                   .voltage_V = 2,
                   .power_W = 3,
                   .wire_feed_speed_m_min = 4,
                   .travel_speed_mm_s = 5,
                   .gas_flow_l_min = 6};
  record.heat_input_kJ_mm = 7;
  record.interpass_C = 8;
  for (const LimitedQuantity& each : limited_quantities) {
    EXPECT_EQ(recorded_value(record, each).has_value(), each.recorded != Recorded::nothing) << each.key;
    EXPECT_FALSE(recorded_value({}, each)) << each.key;
  }
  EXPECT_EQ(recorded_value(record, limited_quantity(&ScheduleLimits::travel_speed_mm_s)), 5);
  EXPECT_EQ(recorded_value(record, limited_quantity(&ScheduleLimits::interpass_C)), 8);
}

TEST(RecordedValue, labels_say_what_of_the_pass_it_is) {
  const auto label = [](std::optional<Interval> ScheduleLimits::*limit) {
    return recorded_label(limited_quantity(limit)).english();
  };
  EXPECT_EQ(label(&ScheduleLimits::voltage_V), "Mean voltage of the steady part");
  EXPECT_EQ(label(&ScheduleLimits::heat_input_kJ_mm), "Heat input of the whole pass");
  EXPECT_EQ(label(&ScheduleLimits::interpass_C), "Interpass temperature");
  for (const LimitedQuantity& each : limited_quantities) {
    const std::string english(recorded_label(each).english());
    EXPECT_EQ(english.starts_with("Mean "), each.recorded == Recorded::steady_mean) << each.key;
    EXPECT_EQ(english.ends_with(" of the whole pass"), each.recorded == Recorded::whole_pass) << each.key;
  }
}

// Sentences name quantities by their rule and by their key.
TEST(RecordedValue, names_in_sentences_have_their_german) {
  const Language& german = *find_language("de");
  for (const LimitedQuantity& each : limited_quantities) {
    const std::string_view rule = each.record_rule;
    ASSERT_TRUE(rule.starts_with("record.")) << rule;
    if (each.recorded == Recorded::steady_mean || each.recorded == Recorded::reading) {
      EXPECT_TRUE(german.known_word(rule.substr(7))) << rule;
    }
    if (each.in_statistics) {
      EXPECT_TRUE(german.known_word(each.key)) << each.key;
    }
    EXPECT_TRUE(german.known_word(recorded_label(each).english())) << each.key;
  }
}

}  // namespace seamtakt
