#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// From when to when a welder's qualification is valid, both days included; empty `valid_from`: from ever.
struct Welder {
  std::string name, valid_from, valid_until;  ///< dates as "2026-11-25"
};

/// A --welders CSV: welder, valid_until, and optionally valid_from; a welder may have several rows.
/// InputError: a missing column, an empty name, a text that is no date, valid_until before valid_from.
std::vector<Welder> parse_welders(std::string_view csv, const std::string& file);
std::vector<Welder> load_welders(const std::string& path);

/// Whether a text is a date of the calendar such as "2026-11-25".
bool is_calendar_date(const std::string& text);

}  // namespace seamtakt
