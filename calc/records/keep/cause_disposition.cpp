#include "records/keep/cause_disposition.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/comma_list.hpp"
#include "records/keep/four_eyes.hpp"

namespace seamtakt {

namespace {

const OpenCause& open_cause(const UnitStatus& status, const CauseRequest& request) {
  std::vector<std::string> names;
  for (const OpenCause& each : status.open_causes) {
    if (each.cause == request.cause) return each;
    names.push_back(each.cause);
  }
  const std::string found = '"' + printable(request.cause, 60) + '"';
  if (names.empty())
    throw InputError("--cause", Sentence::verbatim(found),
                     Sentence("ledger.cause.none-open"_key, {{"unit", printable(request.unit_serial, 60)}}));
  throw InputError("--cause", Sentence::verbatim(found),
                   Sentence("refusal.one-of"_key, {{"names", comma_list(names)}}));
}

}  // namespace

LedgerEntry cause_disposition_entry(const Ledger& ledger, const CauseRequest& request) {
  if (request.decision == Decision::repair)
    throw InputError("--decision", "repair of several passes at once"_word,
                     "use-as-is or scrap; a repair is decided by a nonconformance about its pass"_word);
  RecordHistory history(ledger);
  const UnitStatus status = unit_status(history, request.unit_serial);
  OpenCause cause = open_cause(status, request);
  std::sort(cause.records.begin(), cause.records.end());
  if (request.decision == Decision::use_as_is)
    for (const std::uint64_t seq : cause.records) check_four_eyes(history, seq, seq, request.who);

  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("decision", to_string(request.decision));
  json.member("cause", request.cause).member("unit_serial", request.unit_serial);
  json.key("records").begin_array();
  for (const std::uint64_t seq : cause.records) json.value(seq);
  json.end_array().key("passes").begin_array();
  for (const std::string& pass : cause.passes) json.value(pass);
  json.end_array().end_object();
  LedgerEntry entry{record_kind::disposition, cause.records.front(), {{"results", json.take()}}, {}};
  entry.lookups.emplace_back("unit", request.unit_serial);
  for (std::size_t i = 1; i < cause.records.size(); ++i)
    entry.lookups.emplace_back("ref", std::to_string(cause.records[i]));
  return entry;
}

std::optional<CauseDisposition> cause_disposition_of(RecordHistory& history, std::uint64_t record,
                                                     const std::string& cause) {
  std::optional<CauseDisposition> newest;
  const std::vector<std::uint64_t> dispositions = history.changes_of(record).dispositions;
  for (const std::uint64_t seq : dispositions) {
    if (history.is_void(seq)) continue;
    const JsonNode body = body_of(history.record(seq));
    const auto decision = decision_of(body_text(body, "results.decision"));
    if (decision && body_text(body, "results.cause") == cause) newest = {seq, *decision};
  }
  return newest;
}

}  // namespace seamtakt
