#include "records/passes/recorded_value.hpp"

#include <gtest/gtest.h>

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
  EXPECT_EQ(recorded_label(limited_quantity(&ScheduleLimits::voltage_V)), "Mean voltage of the steady part");
  EXPECT_EQ(recorded_label(limited_quantity(&ScheduleLimits::heat_input_kJ_mm)),
            "Heat input of the whole pass");
  EXPECT_EQ(recorded_label(limited_quantity(&ScheduleLimits::interpass_C)), "Interpass temperature");
}

}  // namespace seamtakt
