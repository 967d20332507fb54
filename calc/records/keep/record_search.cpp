#include "records/keep/record_search.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "records/keep/day_search.hpp"
#include "records/keep/time_span.hpp"

namespace seamtakt {

namespace {

/// When something was welded: the first of these members that is a time.
TimeSpan welded_at(const JsonNode& body) {
  for (const char* path : {"results.started", "results.date", "t"})
    if (const auto span = span_of(body_text(body, path))) return *span;
  return {};
}

bool meets(const RecordRange& range, const TimeSpan& span) {
  const bool is_moment = span.begin_ns == span.end_ns;
  return (!range.to_ns || span.begin_ns < *range.to_ns) &&
         (!range.from_ns || (is_moment ? span.begin_ns >= *range.from_ns : span.end_ns > *range.from_ns));
}

bool meets(const RecordRange& range, const JsonNode& body) {
  const auto is = [&](const std::string& wanted, const char* path) {
    return wanted.empty() || body_text(body, path) == wanted;
  };
  return is(range.weldment, "results.weldment") && is(range.seam, "results.seam") &&
         meets(range, welded_at(body));
}

std::int64_t time_given(const std::string& text, const char* option, bool end_of_day) {
  const auto span = span_of(text);
  if (!span)
    throw InputError(option, "\"" + printable(text, 40) + "\"",
                     "a day such as 2026-03-02, or a time such as 2026-03-02T06:00:00Z"_word);
  return end_of_day ? span->end_ns : span->begin_ns;
}

}  // namespace

void RecordRange::set_times(const std::string& from, const std::string& to) {
  if (!from.empty()) from_ns = time_given(from, "--from", false);
  if (!to.empty()) to_ns = time_given(to, "--to", true);
  if (from_ns && to_ns && *from_ns >= *to_ns)
    throw InputError("--to", "\"" + printable(to, 40) + "\"", "a time after --from"_word);
}

bool RecordRange::has(std::string_view time) const {
  const auto span = span_of(time);
  return span ? meets(*this, *span) : !from_ns && !to_ns;
}

ListedTime listed_time(const JsonNode& body, RecordTime which) {
  if (which == RecordTime::welded)
    for (const char* path : {"results.started", "results.date"})
      if (std::string text = body_text(body, path); span_of(text)) return {std::move(text), true};
  return {body_text(body, "t"), false};
}

void RecordRange::set_seam(const std::string& text) {
  const auto slash = text.find('/');
  if (slash == 0 || slash == std::string::npos || slash + 1 == text.size())
    throw InputError("--seam", "\"" + printable(text, 60) + "\"", "WELDMENT/SEAM, such as BD-2/S03"_word);
  weldment = text.substr(0, slash);
  seam = text.substr(slash + 1);
}

std::vector<FoundRecord> find_records(RecordHistory& history, const RecordRange& range) {
  const auto numbers = records_that_may_meet(history.ledger(), range);
  history.load(numbers);
  std::vector<FoundRecord> found;
  for (const std::uint64_t seq : numbers) {
    const std::string& kind = history.record(seq).kind;
    if (kind != record_kind::pass && kind != record_kind::manual) continue;
    const JsonNode body = history.corrected_body(seq);
    if (meets(range, body)) found.push_back({seq, welded_at(body).begin_ns});
  }
  std::sort(found.begin(), found.end(), [](const FoundRecord& a, const FoundRecord& b) {
    return std::pair(a.moment_ns, a.seq) < std::pair(b.moment_ns, b.seq);
  });
  return found;
}

}  // namespace seamtakt
