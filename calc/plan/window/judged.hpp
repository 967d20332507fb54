#pragma once

namespace seamtakt {

/// What a bound of the window judges.
enum class Judged {
  always,  ///< broken whatever the settings
  wire_feed,
  travel_speed,
  current,
  voltage,
  heat_input,
  preheat,           ///< needed by method B
  cooling_fastest,   ///< cold, thicker plate, low end of the span
  cooling_slowest,   ///< hot, thinner plate, high end
  hardness_highest,  ///< upper bound: neither plate may cool faster than its own time
  hardness_lowest,   ///< lower bound: not both plates may cool slower
  leg,
  throat,
  area,        ///< of all passes (grooves)
  single_arc,  ///< how long the longest run burns
};

}  // namespace seamtakt
