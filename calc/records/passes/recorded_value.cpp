#include "records/passes/recorded_value.hpp"

namespace seamtakt {

namespace {

struct RecordedValue {
  std::optional<Interval> ScheduleLimits::*limit;
  std::optional<double> (*of)(const PassRecord&);
};
constexpr RecordedValue recorded_values[] = {
    {&ScheduleLimits::current_A, [](const PassRecord& record) { return record.steady.current_A; }},
    {&ScheduleLimits::voltage_V, [](const PassRecord& record) { return record.steady.voltage_V; }},
    {&ScheduleLimits::wire_feed_speed_m_min,
     [](const PassRecord& record) { return record.steady.wire_feed_speed_m_min; }},
    {&ScheduleLimits::travel_speed_mm_s,
     [](const PassRecord& record) { return record.steady.travel_speed_mm_s; }},
    {&ScheduleLimits::gas_flow_l_min, [](const PassRecord& record) { return record.steady.gas_flow_l_min; }},
    {&ScheduleLimits::heat_input_kJ_mm, [](const PassRecord& record) { return record.heat_input_kJ_mm; }},
    {&ScheduleLimits::interpass_C, [](const PassRecord& record) { return record.interpass_C; }},
};

}  // namespace

std::optional<double> recorded_value(const PassRecord& record, const LimitedQuantity& quantity) {
  for (const RecordedValue& each : recorded_values)
    if (each.limit == quantity.limit) return each.of(record);
  return std::nullopt;
}

std::string recorded_label(const LimitedQuantity& quantity) {
  if (quantity.recorded == Recorded::steady_mean)
    return "Mean " + std::string(quantity.word) + " of the steady part";
  if (quantity.recorded == Recorded::whole_pass) return std::string(quantity.label) + " of the whole pass";
  return quantity.label;
}

}  // namespace seamtakt
