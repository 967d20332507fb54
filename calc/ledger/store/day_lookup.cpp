#include "ledger/store/day_lookup.hpp"

#include <algorithm>

#include "base/time/log_time.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view started_path = "results.started", date_path = "results.date";
constexpr std::size_t day_length = 10;       // "2026-03-02"
constexpr std::size_t first_rows_back = 16;  // mostly the last record or the one before it is enough

/// The day of a time or a day; empty: it is neither.
std::string utc_day(const std::string& text) {
  LogTime time;
  const bool is_day = text.size() == day_length;
  if (!parse_iso8601(is_day ? text + "T00:00:00Z" : text, time)) return {};
  return utc_text_of_ns(time.ns).substr(0, day_length);
}

std::string day_set_by(const JsonNode& correction) {
  const JsonNode* changes = body_member(correction, "results.changes");
  if (changes == nullptr) return {};
  for (const std::string_view path : {started_path, date_path})
    for (const JsonNode& change : changes->elements)
      if (body_text(change, "member") == path)
        if (std::string day = utc_day(body_text(change, "new")); !day.empty()) return day;
  return {};
}

}  // namespace

bool has_day(std::string_view kind) {
  return kind == record_kind::pass || kind == record_kind::manual || kind == record_kind::calibration ||
         kind == record_kind::correction;
}

std::string day_of(const JsonNode& body) {
  for (const std::string_view path : {started_path, date_path})
    if (std::string day = utc_day(body_text(body, path)); !day.empty()) return day;
  if (std::string day = day_set_by(body); !day.empty()) return day;
  return utc_day(body_text(body, "t"));
}

bool tells_day(std::string_view body) {
  static const std::string begin = std::string("\"") + day_topic + ":";
  std::vector<CanonicalMember> members;
  if (!scan_canonical_object(body, members)) return false;
  const std::string_view keys = member_text(members, lookups_member);
  // Within a text a quote has a backslash before it.
  for (const char before : {'[', ','})
    if (keys.find(before + begin) != std::string_view::npos) return true;
  return false;
}

void each_record_back(LedgerBackend& backend, std::uint64_t end,
                      const std::function<bool(const LedgerRow&)>& visit) {
  for (std::size_t rows = first_rows_back; end > 1; rows = std::min(2 * rows, page_rows)) {
    const std::uint64_t first = end > rows ? end - rows : 1;
    const auto page = backend.records(first, static_cast<std::size_t>(end - first));
    for (auto row = page.rbegin(); row != page.rend(); ++row)
      if (row->seq < end && !visit(*row)) return;
    end = first;
  }
}

bool lacks_days_before(LedgerBackend& backend, std::uint64_t end) {
  bool lacks = false;
  each_record_back(backend, end, [&](const LedgerRow& row) {
    if (!has_day(row.kind)) return true;
    lacks = !tells_day(row.body);
    return false;
  });
  return lacks;
}

}  // namespace seamtakt
