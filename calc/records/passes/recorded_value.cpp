#include "records/passes/recorded_value.hpp"

namespace seamtakt {

namespace {

struct RecordedValue {
  std::optional<Interval> ScheduleLimits::*limit;
  Word label;
  std::optional<double> (*of)(const PassRecord&);
};
constexpr RecordedValue recorded_values[] = {
    {&ScheduleLimits::current_A, "Mean current of the steady part"_word,
     [](const PassRecord& record) { return record.steady.current_A; }},
    {&ScheduleLimits::voltage_V, "Mean voltage of the steady part"_word,
     [](const PassRecord& record) { return record.steady.voltage_V; }},
    {&ScheduleLimits::wire_feed_speed_m_min, "Mean wire feed speed of the steady part"_word,
     [](const PassRecord& record) { return record.steady.wire_feed_speed_m_min; }},
    {&ScheduleLimits::travel_speed_mm_s, "Mean travel speed of the steady part"_word,
     [](const PassRecord& record) { return record.steady.travel_speed_mm_s; }},
    {&ScheduleLimits::gas_flow_l_min, "Mean gas flow of the steady part"_word,
     [](const PassRecord& record) { return record.steady.gas_flow_l_min; }},
    {&ScheduleLimits::heat_input_kJ_mm, "Heat input of the whole pass"_word,
     [](const PassRecord& record) { return record.heat_input_kJ_mm; }},
    {&ScheduleLimits::interpass_C, "Interpass temperature"_word,
     [](const PassRecord& record) { return record.interpass_C; }},
};

const RecordedValue* row_of(const LimitedQuantity& quantity) {
  for (const RecordedValue& each : recorded_values)
    if (each.limit == quantity.limit) return &each;
  return nullptr;
}

}  // namespace

std::optional<double> recorded_value(const PassRecord& record, const LimitedQuantity& quantity) {
  const RecordedValue* row = row_of(quantity);
  return row != nullptr ? row->of(record) : std::nullopt;
}

Word recorded_label(const LimitedQuantity& quantity) {
  const RecordedValue* row = row_of(quantity);
  return row != nullptr ? row->label : quantity.label;
}

}  // namespace seamtakt
