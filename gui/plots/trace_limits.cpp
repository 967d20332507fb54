#include "plots/trace_limits.hpp"

#include <algorithm>

namespace seamtakt::desk {

namespace {

std::vector<TraceMark> marks_of(const PassRecord& record) {
  constexpr std::pair<std::string_view, Trace::Channel> channels[] = {
      {"current_A", Trace::current},
      {"voltage_V", Trace::voltage},
      {"wire_feed_speed_m_min", Trace::wire_feed_speed},
      {"travel_speed_mm_s", Trace::travel_speed}};
  std::vector<TraceMark> marks;
  for (const Excursion& each : record.excursions)
    for (const auto& [quantity, channel] : channels)
      if (each.quantity == quantity)
        marks.push_back({channel, each.start_s, each.end_s, each.value, each.length_mm});
  return marks;
}

}  // namespace

TraceLimits trace_limits(const Plan& plan, const PassRecord& record) {
  TraceLimits limits;
  const Schedule* schedule = find_by_id(plan.schedules, record.schedule);
  if (schedule && schedule->limits) {
    limits.band[Trace::current] = schedule->limits->current_A;
    limits.band[Trace::voltage] = schedule->limits->voltage_V;
    limits.band[Trace::wire_feed_speed] = schedule->limits->wire_feed_speed_m_min;
    limits.band[Trace::travel_speed] = schedule->limits->travel_speed_mm_s;
  }
  limits.marks = marks_of(record);
  return limits;
}

std::optional<std::pair<double, double>> failed_stretch(const PassRecord& record) {
  if (!record.verdict || *record.verdict == Verdict::pass) return std::nullopt;
  const auto longest = std::max_element(
      record.excursions.begin(), record.excursions.end(),
      [](const Excursion& a, const Excursion& b) { return a.end_s - a.start_s < b.end_s - b.start_s; });
  if (longest != record.excursions.end()) return std::pair(longest->start_s, longest->end_s);
  const auto gap = std::max_element(
      record.interruptions.begin(), record.interruptions.end(),
      [](const Interruption& a, const Interruption& b) { return a.duration_s < b.duration_s; });
  if (gap != record.interruptions.end()) return std::pair(gap->start_s, gap->start_s + gap->duration_s);
  return std::nullopt;
}

}  // namespace seamtakt::desk
