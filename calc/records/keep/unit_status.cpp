#include <algorithm>
#include <map>
#include <set>

#include "records/judge/length_judgement.hpp"
#include "records/judge/manual_judgement.hpp"
#include "records/judge/seam_union.hpp"
#include "records/keep/cause_disposition.hpp"
#include "records/keep/derived_members.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/stored_parts.hpp"
#include "records/keep/stored_sentence.hpp"
#include "records/keep/unit_records.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

std::string pass_name(const JsonNode& results) {
  return body_text(results, "seam") + "/pass " +
         std::to_string(static_cast<long>(body_number(results, "pass").value_or(1)));
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

/// A record of a pass that isn't void.
struct Weld {
  std::uint64_t seq = 0;
  std::string verdict;
  std::vector<std::string> open_by;  ///< rules that left it undecided or failed it
  std::optional<PassCoverage> coverage;
  JsonNode body;
};

/// The rules that left a record open or failed it; of one that doesn't name them, those that warned or
/// failed. Never none where the record is open.
std::vector<std::string> rules_of(const JsonNode& body, const std::string& verdict) {
  const bool has_failed = verdict == "fail";
  if (!has_failed && verdict != "undecided") return {};
  std::vector<std::string> rules =
      body_texts(body, has_failed ? "results.failed_by" : "results.undecided_by");
  const JsonNode* findings = body.find("findings");
  if (rules.empty() && findings != nullptr)
    for (const JsonNode& finding : findings->elements)
      if (body_text(finding, "severity") == (has_failed ? "fail" : "warn"))
        add_rule(rules, body_text(finding, "rule"));
  return rules.empty() ? std::vector<std::string>{verdict} : rules;
}

/// The rules that leave a manual seam open by what holds now: its result and welder may have been corrected.
std::vector<std::string> rules_of_manual(const JsonNode& body) {
  std::vector<std::string> rules = body_texts(body, "results.undecided_by");
  for (const std::string& rule : body_texts(body, "results.failed_by")) add_rule(rules, rule);
  std::erase_if(rules, [&](const std::string& rule) {
    return rule == manual_failed_rule || rule == manual_unclear_rule ||
           (rule == manual_welder_rule && !body_text(body, "results.welder").empty());
  });
  const ManualResult result = manual_result(body_text(body, "results.result"));
  if (result == ManualResult::bad) add_rule(rules, manual_failed_rule);
  if (result == ManualResult::unclear) add_rule(rules, manual_unclear_rule);
  return rules;
}

Weld manual_weld(std::uint64_t seq, const JsonNode& body) {
  std::vector<std::string> rules = rules_of_manual(body);
  const char* verdict = rules.empty() ? "pass" : "undecided";
  return {seq, verdict, std::move(rules), std::nullopt, body};
}

Sentence sentence_of(const JsonNode& body, const std::string& rule) {
  if (rule == corrected_rule) return "It rests on a corrected value and hasn't been judged again."_word;
  if (const JsonNode* findings = body.find("findings"))
    for (const JsonNode& finding : findings->elements)
      if (body_text(finding, "rule") == rule) return stored_sentence(finding);
  return {};
}

/// The rule that a nonconformance was opened by; one that a person opened names none.
std::string rule_of(const JsonNode& nonconformance) {
  const JsonNode* findings = nonconformance.find("findings");
  const bool has_one = findings != nullptr && !findings->elements.empty();
  return has_one ? body_text(findings->elements[0], "rule") : std::string("nonconformance");
}

/// Finds what is still open of a unit's undecided passes. A record is settled by a later one of the same pass
/// that passed and isn't only a part of it, or by a nonconformance about it, which is an open item of its own
/// until it is closed. A failed pass whose nonconformance was made void is open again. Passes covered by a
/// disposition by cause are decided.
class OpenCauses {
 public:
  OpenCauses(RecordHistory& history, UnitStatus& status) : history_(history), status_(status) {}

  void add_pass(const std::string& name, const std::vector<Weld>& welds) {
    std::size_t first = 0;  // what came before a whole weld that passed is settled
    for (std::size_t i = 0; i < welds.size(); ++i)
      if (welds[i].verdict == "pass" && !is_part(welds[i])) first = i + 1;
    const bool whole = first > 0 || is_whole(welds);
    for (std::size_t i = first; i < welds.size(); ++i) {
      const Weld& weld = welds[i];
      if (has_nonconformance(history_, weld.seq)) continue;
      if (weld.verdict == "undecided" || weld.verdict == "fail")
        for (const std::string& rule : weld.open_by)
          if (rule != length_part_rule || !whole) add(rule, name, weld);
      // It passed together with a part that is now void.
      if (weld.verdict == "pass" && is_part(weld) && !whole) add(length_part_rule, name, weld);
    }
  }

 private:
  static bool is_part(const Weld& weld) { return weld.coverage && weld.coverage->is_part; }

  /// Whether all records of the pass together are as long as its seam.
  static bool is_whole(const std::vector<Weld>& welds) {
    std::vector<const PassCoverage*> together;
    for (const Weld& weld : welds)
      if (weld.coverage && (together.empty() || same_seam(*weld.coverage, *together.front())))
        together.push_back(&*weld.coverage);
    return !together.empty() && !is_short(least_certain(together), union_of(together));
  }

  void add(const std::string& rule, const std::string& name, const Weld& weld) {
    OpenCause& cause = list_of(rule, weld);
    if (cause.records.empty()) cause.sentence = sentence_of(weld.body, rule);
    cause.records.push_back(weld.seq);
    if (cause.passes.empty() || cause.passes.back() != name) cause.passes.push_back(name);
  }

  /// Where the record belongs: decided by a disposition, or open.
  OpenCause& list_of(const std::string& rule, const Weld& weld) {
    if (const auto decided = cause_disposition_of(history_, weld.seq, rule)) {
      for (DecidedCause& each : status_.decided_causes)
        if (each.disposition == decided->seq) return each.cause;
      status_.decided_causes.push_back({decided->seq, decided->decision, {rule, {}, {}, {}}});
      return status_.decided_causes.back().cause;
    }
    for (OpenCause& each : status_.open_causes)
      if (each.cause == rule) return each;
    status_.open_causes.push_back({rule, {}, {}, {}});
    return status_.open_causes.back();
  }

  RecordHistory& history_;
  UnitStatus& status_;
};

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

std::size_t UnitStatus::open_nonconformances() const {
  return static_cast<std::size_t>(std::count_if(nonconformances.begin(), nonconformances.end(),
                                                [](const Nonconformance& each) { return each.open; }));
}

UnitStatus unit_status(const Ledger& ledger, const std::string& unit_serial) {
  RecordHistory history(ledger);
  return unit_status(history, unit_serial);
}

UnitStatus unit_status(RecordHistory& history, const std::string& unit_serial) {
  UnitStatus status;
  status.unit_serial = unit_serial;
  Needs needs;
  std::set<std::string> there;
  std::vector<std::string> order;
  std::map<std::string, std::vector<Weld>> welds;
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
    const JsonNode* results = body.find("results");
    if (results == nullptr) continue;
    const std::string name = pass_name(*results);
    if (there.insert(name).second) order.push_back(name);
    if (is_manual) welds[name].push_back(manual_weld(seq, body));
    if (is_pass) welds[name].push_back({seq, verdict, rules_of(body, verdict), coverage_of(body), body});
  }
  OpenCauses causes(history, status);
  for (const std::string& name : order) causes.add_pass(name, welds[name]);
  for (const std::string& name : needs.missing)
    if (!there.contains(name)) status.missing.push_back(name);
  if (needs.known) add_left_behind(history, there, status);
  status.nonconformances = nonconformances(history, unit_serial);
  for (const Nonconformance& each : status.nonconformances)
    status.scrapped = status.scrapped || (each.decision == Decision::scrap && !each.open);
  for (const DecidedCause& each : status.decided_causes)
    status.scrapped = status.scrapped || each.decision == Decision::scrap;
  const bool open = status.open_items() > 0;
  if (needs.known) status.complete = status.missing.empty() && !open && !status.scrapped;
  // Nothing states its requirements, but something shows that it isn't right.
  if (!needs.known && (open || status.scrapped)) status.complete = false;
  return status;
}

std::vector<StoredPass> stored_passes(const Ledger& ledger, const std::string& unit_serial) {
  RecordHistory history(ledger);
  const UnitStatus status = unit_status(history, unit_serial);
  std::map<std::string, StoredPass> by_name;
  std::map<std::uint64_t, std::string> names;
  for (const auto* numbers : {&status.passes, &status.manual})
    for (const std::uint64_t seq : *numbers) {
      const JsonNode body = history.corrected_body(seq);
      const JsonNode* results = body.find("results");
      if (results == nullptr) continue;
      const std::string name = names[seq] = pass_name(*results);
      by_name.try_emplace(name,
                          StoredPass{unit_serial, body_text(*results, "seam"),
                                     static_cast<int>(body_number(*results, "pass").value_or(1)), "", ""});
    }
  for (const OpenCause& cause : status.open_causes)
    for (const std::string& name : cause.passes) by_name[name].undecided_by = cause.cause;
  for (const Nonconformance& each : status.nonconformances)
    if (const auto name = names.find(each.about); each.open && name != names.end())
      by_name[name->second].failed_by = rule_of(body_of(history.record(each.seq)));
  std::vector<StoredPass> passes;
  for (auto& [name, pass] : by_name) passes.push_back(std::move(pass));
  return passes;
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
