#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// The mass that a unit gained by a seam, or by one pass of it: weighed after welding less before it, slag
/// and spatter brushed off.
struct Weighing {
  std::string unit_serial, weldment, seam;
  std::optional<int> pass;  ///< empty: all passes of the seam together
  double gained_g = 0;      ///< above 0
  std::uint64_t line = 0;
};

/// A CSV of weighings: unit_serial, seam, gained_g; weldment and pass are optional. InputError: a
/// needed column or value missing, a pass that is no number above 0, a mass that isn't above 0, a weld twice.
std::vector<Weighing> parse_weighings(std::string_view csv, const std::string& file);
std::vector<Weighing> load_weighings(const std::string& path);

}  // namespace seamtakt
