#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "records/keep/record_history.hpp"

namespace seamtakt {

/// The time by which a record is listed: when it was welded, if its body says so, else when it was recorded.
enum class RecordTime { welded, recorded };
inline constexpr const char *welded_time = "welded", *recorded_time = "recorded";
struct ListedTime {
  std::string text;  ///< as the body has it: a UTC time, or a manual seam's day
  bool is_welded = false;
};
/// Where `which` is welded and the body doesn't say when: recorded.
ListedTime listed_time(const JsonNode& body, RecordTime which);

/// Which passes and manual seams are meant: by when they were welded, by seam, or both.
struct RecordRange {
  std::optional<std::int64_t> from_ns, to_ns;  ///< since 1970 UTC; from <= moment < to
  std::string weldment, seam;                  ///< empty: any

  /// "2026-03-02" (a whole day) or "2026-03-02T06:00:00+01:00" (UTC without an offset); empty: open.
  /// InputError at --from and --to.
  void set_times(const std::string& from, const std::string& to);
  /// Whether a time or a day overlaps from_ns to to_ns; a text that isn't a time does if both are open.
  bool has(std::string_view time) const;
  /// "BD-2/S03". InputError at --seam.
  void set_seam(const std::string& text);
};

/// A record that was found, with the moment that its range is judged by.
struct FoundRecord {
  std::uint64_t seq = 0;
  /// When its arc was first on; for a manual seam its day's beginning; where neither is known, when it was
  /// stored.
  std::int64_t moment_ns = 0;
};

/// Pass and manual records within the range, by moment, then by number. A corrected record counts by its
/// corrected values; void ones are among them. A day without a time counts if it overlaps the range.
/// Reads the records of the range's days, or all of the store where that is as good (day_search.hpp), in
/// short transactions.
std::vector<FoundRecord> find_records(RecordHistory& history, const RecordRange& range);

}  // namespace seamtakt
