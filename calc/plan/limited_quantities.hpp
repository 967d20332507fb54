#pragma once

#include <algorithm>
#include <optional>
#include <string_view>

#include "base/sentences/sentence.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"
#include "plan/window/judged.hpp"

namespace seamtakt {

/// What the record of a welded pass has of a limited quantity.
enum class Recorded {
  nothing,      ///< of its own: values derived from the record have their own rules
  steady_mean,  ///< the mean of the steady part
  whole_pass,   ///< one value for the whole pass
  reading,      ///< one reading, taken before the pass
};

/// A quantity that a schedule may limit: all that plan, window, record, statistics, sheet and form need of
/// it. A new one is a member of ScheduleLimits and a row here.
struct LimitedQuantity {
  const char* key;  ///< member of the limits, and name in statistics: "voltage_V"
  std::optional<Interval> ScheduleLimits::*limit;
  const char* unit;
  const char* word;  ///< of a form, and within a sentence: "voltage"
  Word label;        ///< at the head of a row or a sentence: "Arc voltage"
  const char* help;

  // In the plan. A quantity with neither setting nor result is judged by a rule of its own.
  const char* pass_rule;
  double Schedule::*setting = nullptr;       ///< of the schedule, that the limit is judged on
  double PassEvaluation::*result = nullptr;  ///< else what follows from the schedule
  std::optional<double> PassEvaluation::*uncertainty = nullptr;  ///< expanded, of the result
  Word pass_label{};                 ///< of the value that the plan's rule judges, where it isn't `label`
  const char* result_key = nullptr;  ///< of what is judged, in results, where it isn't `key`

  // In a record.
  const char* record_rule;
  Recorded recorded = Recorded::nothing;
  const char* instrument = nullptr;  ///< quantity of the plan's instruments; nullptr: none measures it

  // Where else it appears.
  Judged in_window = Judged::always;  ///< what the window's bound judges; always: no bound of its own
  bool in_statistics = false;         ///< of the records; needs `recorded`
  int sheet_row = 0;                  ///< place among a schedule sheet's limits; 0: in no row of its own

  constexpr Word label_in_plan() const { return pass_label == Word() ? label : pass_label; }
  const char* key_in_results() const { return result_key ? result_key : key; }
  bool has_plain_rule() const { return setting || result; }
  /// Needs a plain rule.
  double planned(const Schedule& schedule, const PassEvaluation& pass) const {
    return setting ? schedule.*setting : pass.*result;
  }
};

/// In the order of the file's limits.
inline constexpr LimitedQuantity limited_quantities[] = {
    {.key = "current_A",
     .limit = &ScheduleLimits::current_A,
     .unit = "A",
     .word = "current",
     .label = "Current"_word,
     .help = "Welding current, from and to.",
     .pass_rule = "limit.current",
     .result = &PassEvaluation::current_A,
     .uncertainty = &PassEvaluation::U_current_A,
     .record_rule = "record.current",
     .recorded = Recorded::steady_mean,
     .instrument = "current",
     .in_window = Judged::current,
     .in_statistics = true,
     .sheet_row = 2},
    {.key = "voltage_V",
     .limit = &ScheduleLimits::voltage_V,
     .unit = "V",
     .word = "voltage",
     .label = "Arc voltage"_word,
     .help = "Arc voltage, from and to.",
     .pass_rule = "limit.voltage",
     .setting = &Schedule::arc_voltage_V,
     .record_rule = "record.voltage",
     .recorded = Recorded::steady_mean,
     .instrument = "voltage",
     .in_window = Judged::voltage,
     .in_statistics = true,
     .sheet_row = 3},
    {.key = "wire_feed_speed_m_min",
     .limit = &ScheduleLimits::wire_feed_speed_m_min,
     .unit = "m/min",
     .word = "wire feed speed",
     .label = "Wire feed speed"_word,
     .help = "Wire feed speed, from and to.",
     .pass_rule = "limit.wire-feed-speed",
     .setting = &Schedule::wire_feed_speed_m_min,
     .record_rule = "record.wire-feed-speed",
     .recorded = Recorded::steady_mean,
     .instrument = "wire_feed_speed",
     .in_window = Judged::wire_feed,
     .in_statistics = true,
     .sheet_row = 1},
    {.key = "travel_speed_mm_s",
     .limit = &ScheduleLimits::travel_speed_mm_s,
     .unit = "mm/s",
     .word = "travel speed",
     .label = "Travel speed"_word,
     .help = "Travel speed, from and to.",
     .pass_rule = "limit.travel-speed",
     .setting = &Schedule::travel_speed_mm_s,
     .record_rule = "record.travel-speed",
     .recorded = Recorded::steady_mean,
     .instrument = "travel_speed",
     .in_window = Judged::travel_speed,
     .in_statistics = true,
     .sheet_row = 4},
    {.key = "gas_flow_l_min",
     .limit = &ScheduleLimits::gas_flow_l_min,
     .unit = "l/min",
     .word = "gas flow",
     .label = "Gas flow"_word,
     .help = "Gas flow, from and to.",
     .pass_rule = "limit.gas-flow",
     .setting = &Schedule::gas_flow_l_min,
     .record_rule = "record.gas-flow",
     .recorded = Recorded::steady_mean},
    {.key = "heat_input_kJ_mm",
     .limit = &ScheduleLimits::heat_input_kJ_mm,
     .unit = "kJ/mm",
     .word = "heat input",
     .label = "Heat input"_word,
     .help = "Heat input with the process's thermal efficiency, from and to.",
     .pass_rule = "limit.heat-input",
     .result = &PassEvaluation::heat_input_kJ_mm,
     .uncertainty = &PassEvaluation::U_heat_input_kJ_mm,
     .record_rule = "record.heat-input",
     .recorded = Recorded::whole_pass,
     .in_window = Judged::heat_input,
     .in_statistics = true,
     .sheet_row = 5},
    {.key = "cooling_time_s",
     .limit = &ScheduleLimits::cooling_time_s,
     .unit = "s",
     .word = "cooling time",
     .label = "Cooling time t8/5"_word,
     .help = "Cooling time t8/5, from and to.",
     .pass_rule = "limit.cooling-time",
     .record_rule = "record.cooling-time",
     .sheet_row = 6},
    {.key = "interpass_C",
     .limit = &ScheduleLimits::interpass_C,
     .unit = "C",
     .word = "interpass",
     .label = "Interpass temperature"_word,
     .help = "Interpass temperature, from and to.",
     .pass_rule = "limit.preheat",
     .setting = &Schedule::preheat_C,
     .pass_label = "Preheat"_word,
     .record_rule = "record.interpass",
     .recorded = Recorded::reading,
     .sheet_row = 7},
    {.key = "hardness_HV",
     .limit = &ScheduleLimits::hardness_HV,
     .unit = "HV",
     .word = "hardness",
     .label = "Estimated HAZ hardness"_word,
     .help = "Hardness of the heat-affected zone, from and to.",
     .pass_rule = "limit.hardness",
     .result_key = "haz_hardness_HV",
     .record_rule = "record.hardness"},
};

/// The row of a limit; each has one.
constexpr const LimitedQuantity& limited_quantity(std::optional<Interval> ScheduleLimits::*limit) {
  return *std::find_if(std::begin(limited_quantities), std::end(limited_quantities),
                       [&](const LimitedQuantity& each) { return each.limit == limit; });
}

/// nullptr where no limit has this key.
constexpr const LimitedQuantity* limited_quantity(std::string_view key) {
  const auto at = std::find_if(std::begin(limited_quantities), std::end(limited_quantities),
                               [&](const LimitedQuantity& each) { return each.key == key; });
  return at == std::end(limited_quantities) ? nullptr : at;
}

}  // namespace seamtakt
