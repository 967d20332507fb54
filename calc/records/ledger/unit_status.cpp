#include <algorithm>
#include <map>
#include <set>

#include "records/ledger/nonconformance.hpp"
#include "records/ledger/unit_records.hpp"

namespace seamtakt {

namespace {

std::string pass_name(const JsonNode& results) {
  const JsonNode* pass = results.find("pass");
  const bool has_number = pass != nullptr && pass->kind == JsonNode::Kind::number;
  return body_text(results, "seam") + "/pass " +
         (has_number ? std::to_string(static_cast<long>(pass->number)) : "1");
}

/// What an audit said of one unit.
struct Needs {
  std::set<std::string> missing;
  bool known = false;
};

void take_needs(const JsonNode& ingest, UnitStatus& status, Needs& needs) {
  const JsonNode* units = body_member(ingest, "results.units");
  if (units == nullptr) return;
  for (const JsonNode& unit : units->elements) {
    if (body_text(unit, "unit_serial") != status.unit_serial) continue;
    if (const std::string weldment = body_text(unit, "weldment"); !weldment.empty())
      status.weldment = weldment;
    const JsonNode* complete = unit.find("complete");
    if (complete == nullptr || complete->kind != JsonNode::Kind::boolean) continue;
    // Each audit tells what it missed; what any of them had isn't missing.
    needs.known = true;
    needs.missing.clear();
    if (const JsonNode* missing = unit.find("missing_passes"))
      for (const JsonNode& pass : missing->elements) needs.missing.insert(pass_name(pass));
  }
}

/// Where a correction made another pass of one that an audit had counted, the one that it counted is missing.
void add_left_behind(RecordHistory& history, const std::set<std::string>& there, UnitStatus& status) {
  for (const std::uint64_t seq : history.ledger().backend().find("unit", status.unit_serial)) {
    const std::string& kind = history.record(seq).kind;
    if (kind != record_kind::pass && kind != record_kind::manual) continue;
    if (history.changes_of(seq).corrections.empty() || history.is_void(seq)) continue;
    const JsonNode logged = body_of(history.record(seq));
    if (body_text(logged, "results.unit_serial") != status.unit_serial) continue;
    const std::string name = pass_name(*logged.find("results"));
    if (!there.contains(name) &&
        std::find(status.missing.begin(), status.missing.end(), name) == status.missing.end())
      status.missing.push_back(name);
  }
}

}  // namespace

UnitStatus unit_status(const Ledger& ledger, const std::string& unit_serial) {
  RecordHistory history(ledger);
  return unit_status(history, unit_serial);
}

UnitStatus unit_status(RecordHistory& history, const std::string& unit_serial) {
  UnitStatus status;
  status.unit_serial = unit_serial;
  Needs needs;
  std::set<std::string> there;
  const auto numbers = records_of_unit(history, unit_serial);
  for (const std::uint64_t seq : numbers) {
    const LedgerRow& row = history.record(seq);
    if (history.is_void(seq)) continue;
    const bool is_pass = row.kind == record_kind::pass, is_manual = row.kind == record_kind::manual;
    if (!is_pass && !is_manual && row.kind != record_kind::ingest) continue;
    const JsonNode body = history.corrected_body(seq);
    if (row.kind == record_kind::ingest) {
      take_needs(body, status, needs);
      continue;
    }
    (is_pass ? status.passes : status.manual).push_back(seq);
    const std::string verdict = is_pass ? body_text(body, "results.verdict") : std::string();
    if (verdict == "fail") ++status.failed;
    if (verdict == "undecided") ++status.undecided;
    if (const JsonNode* results = body.find("results")) there.insert(pass_name(*results));
  }
  for (const std::string& name : needs.missing)
    if (!there.contains(name)) status.missing.push_back(name);
  if (needs.known) add_left_behind(history, there, status);
  status.nonconformances = nonconformances(history, unit_serial);
  bool open = false;
  for (const Nonconformance& each : status.nonconformances) {
    open = open || each.open;
    status.scrapped = status.scrapped || (each.decision == Decision::scrap && !each.open);
  }
  if (needs.known) status.complete = status.missing.empty() && !open && !status.scrapped;
  // Nothing says what it needs, but something says that it isn't as it should be.
  if (!needs.known && (open || status.scrapped)) status.complete = false;
  return status;
}

std::vector<std::string> unit_serials(const Ledger& ledger) {
  constexpr std::size_t rows_at_once = 10'000;
  const std::string topic = "unit";
  std::vector<std::string> serials;
  LookupRow last{topic, "", 0};
  for (bool more = true; more;) {
    std::size_t rows = 0;
    const LookupRow after = last;
    ledger.backend().each_lookup(after, rows_at_once,
                                 [&](std::string_view row_topic, std::string_view key, std::uint64_t seq) {
                                   ++rows;
                                   last = {std::string(row_topic), std::string(key), seq};
                                   if (last.topic != topic) return;
                                   if (serials.empty() || serials.back() != key) serials.emplace_back(key);
                                 });
    more = rows == rows_at_once && last.topic == topic;
  }
  return serials;
}

}  // namespace seamtakt
