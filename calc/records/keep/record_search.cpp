#include "records/keep/record_search.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/time/log_time.hpp"
#include "ledger/body/canonical_json.hpp"

namespace seamtakt {

namespace {

constexpr std::int64_t day_ns = 86'400ll * 1'000'000'000;
constexpr std::size_t day_characters = 10;  // "2026-03-02"

struct Span {
  std::int64_t begin_ns = 0, end_ns = 0;  ///< equal for a moment
};

std::optional<Span> span_of(std::string_view text) {
  LogTime time;
  if (text.size() == day_characters) {
    if (!parse_iso8601(std::string(text) + "T00:00:00Z", time)) return std::nullopt;
    return Span{time.ns, time.ns + day_ns};
  }
  if (!parse_iso8601(text, time)) return std::nullopt;
  return Span{time.ns, time.ns};
}

/// When something was welded: the first of these members that is a time.
Span welded_at(const JsonNode& body) {
  for (const char* path : {"results.started", "results.date", "t"})
    if (const auto span = span_of(body_text(body, path))) return *span;
  return {};
}

bool meets(const RecordRange& range, const Span& span) {
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

/// The text between the quotes, where a member is a text without escapes.
std::string_view plain_text(const std::vector<CanonicalMember>& members, std::string_view key) {
  const std::string_view text = member_text(members, key);
  return text.size() >= 2 && text.front() == '"' ? text.substr(1, text.size() - 2) : std::string_view();
}

/// Looks at a body without making a tree of it. False only where it is certainly outside the range.
class RangeLook {
 public:
  explicit RangeLook(const RecordRange& range) : range_(range) {}

  bool may_meet(std::string_view body) {
    if (!scan_canonical_object(body, members_)) return true;
    const std::string_view stored = plain_text(members_, "t");
    if (!scan_canonical_object(member_text(members_, "results"), members_)) return true;
    for (const auto& [wanted, key] :
         {std::pair(&range_.weldment, "weldment"), std::pair(&range_.seam, "seam")})
      if (const auto text = plain_text(members_, key);
          !wanted->empty() && text.find('\\') == std::string_view::npos && text != *wanted)
        return false;
    for (const std::string_view text :
         {plain_text(members_, "started"), plain_text(members_, "date"), stored})
      if (const auto span = text.empty() ? std::nullopt : span_of(text)) return meets(range_, *span);
    return true;
  }

 private:
  const RecordRange& range_;
  std::vector<CanonicalMember> members_;
};

/// Candidates for the range, by their own values or by those of a possible correction.
std::vector<std::uint64_t> candidates(const Ledger& ledger, const RecordRange& range) {
  std::vector<std::uint64_t> numbers;
  RangeLook look(range);
  for (std::uint64_t next = 1, rows = page_rows; rows == page_rows;) {
    rows = 0;
    ledger.backend().each_record(next, page_rows, [&](const LedgerRowView& row) {
      ++rows;
      next = row.seq + 1;
      if (row.kind == record_kind::pass || row.kind == record_kind::manual) {
        if (look.may_meet(row.body)) numbers.push_back(row.seq);
      } else if (row.kind == record_kind::correction) {
        const JsonNode body = body_of(row);
        if (const JsonNode* ref = body.find("ref"); ref != nullptr && ref->is_integer)
          numbers.push_back(static_cast<std::uint64_t>(ref->number));
      }
    });
  }
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  return numbers;
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
  const auto numbers = candidates(history.ledger(), range);
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
