#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace seamtakt {

/// Measured quantities that a log may carry, one a column.
enum class LogQuantity : std::uint8_t {
  current_A,
  voltage_V,
  power_W,
  energy_J,
  wire_feed_speed_m_min,
  travel_speed_mm_s,
  gas_flow_l_min,
  x_mm,
  y_mm,
  z_mm,
  interpass_C,
  wire_used_mm
};
inline constexpr std::size_t log_quantity_count = 12;

/// Name of a quantity's column, and the span outside which a value can't be one of an arc: such a row is
/// rejected, since it is a wrong unit or a broken sensor (common practice, no source).
struct LogQuantitySpec {
  const char* key;
  double lowest, highest;
};
inline constexpr std::array<LogQuantitySpec, log_quantity_count> log_quantity_specs = {{
    {"current_A", -5000, 5000},
    {"voltage_V", -500, 500},
    {"power_W", -2.5e6, 2.5e6},
    {"energy_J", -1e15, 1e15},
    {"wire_feed_speed_m_min", -100, 100},
    {"travel_speed_mm_s", -5000, 5000},
    {"gas_flow_l_min", -200, 200},
    {"x_mm", -1e6, 1e6},
    {"y_mm", -1e6, 1e6},
    {"z_mm", -1e6, 1e6},
    {"interpass_C", -100, 1500},
    {"wire_used_mm", -1e12, 1e12},
}};

/// What a log says in words: who and what a sample belongs to.
enum class LogText : std::uint8_t {
  unit_serial,
  weldment,
  seam,
  pass,
  robot,
  schedule_revision,
  arc_on,
  job
};
inline constexpr std::size_t log_text_count = 8;
inline constexpr std::array<const char*, log_text_count> log_text_keys = {
    "unit_serial", "weldment", "seam", "pass", "robot", "schedule_revision", "arc_on", "job"};

constexpr std::size_t index_of(LogQuantity quantity) {
  return static_cast<std::size_t>(quantity);
}
constexpr std::size_t index_of(LogText text) {
  return static_cast<std::size_t>(text);
}
constexpr std::uint32_t bit_of(LogQuantity quantity) {
  return 1u << index_of(quantity);
}

}  // namespace seamtakt
