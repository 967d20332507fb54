#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/text/comma_list.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/record_out.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/derived_members.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"
#include "records/keep/record_history.hpp"

namespace seamtakt::cli {

namespace {

void write_nonconformance(const Nonconformance& each, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("seq", each.seq).member("record", each.about).member("opened", each.opened);
  json.member("unit_serial", each.unit_serial).member("place", each.place).member("text", each.text());
  json.member("open", each.open).key("decision");
  each.decision ? json.value(to_string(*each.decision)) : json.null();
  json.key("retest");
  each.retest != 0 ? json.value(each.retest) : json.null();
  write_numbers(json, "dispositions", each.dispositions);
  json.end_object();
}

Word decision_word(Decision decision) {
  switch (decision) {
    case Decision::repair:
      return "repair"_word;
    case Decision::use_as_is:
      return "use-as-is"_word;
    case Decision::scrap:
      break;
  }
  return "scrap"_word;
}

/// "closed: repair, re-test record 12".
Sentence state_of(const Nonconformance& each) {
  const Word state = each.open ? "open"_word : "closed"_word;
  if (!each.decision) return state;
  std::vector<Argument> arguments = {{"state", state}, {"decision", decision_word(*each.decision)}};
  if (each.retest == 0) return Sentence("cli.nonconformance.decided"_key, std::move(arguments));
  arguments.emplace_back("record", each.retest);
  return Sentence("cli.nonconformance.retested"_key, std::move(arguments));
}

std::string nonconformance_table(const std::vector<Nonconformance>& list) {
  TextTable table({{"Record"_word, "", false, 0},
                   {"About"_word, "", false, 0},
                   {"Place"_word, "", true, 0},
                   {"State"_word, "", true, 0},
                   {"What failed"_word, "", true, 0}},
                  output_view());
  for (const Nonconformance& each : list)
    table.cell(each.seq)
        .cell(each.about)
        .cell(place_sentence(each.place))
        .cell(state_of(each))
        .cell(each.sentence);
  return list.empty() ? shown_word("No nonconformances."_word) + "\n" : table.text();
}

void write_cause_members(const OpenCause& each, JsonWriter& json) {
  json.member("cause", each.cause).member("text", each.text());
  write_numbers(json, "records", each.records);
  json.key("passes").begin_array();
  for (const std::string& pass : each.passes) json.value(pass);
  json.end_array();
}

/// What was left undecided, by cause, and what of it was decided.
void write_causes(const UnitStatus& status, JsonWriter& json) {
  json.key("undecided").begin_array();
  for (const OpenCause& each : status.open_causes) {
    json.begin_object(JsonWriter::Layout::compact);
    write_cause_members(each, json);
    json.end_object();
  }
  json.end_array().key("decided").begin_array();
  for (const DecidedCause& each : status.decided_causes) {
    json.begin_object(JsonWriter::Layout::compact).member("disposition", each.disposition);
    json.member("decision", to_string(each.decision));
    write_cause_members(each.cause, json);
    json.end_object();
  }
  json.end_array();
}

/// Passes and why; the rule is what --cause takes.
std::string cause_text(SentenceKey key, const OpenCause& cause, std::vector<Argument> arguments = {}) {
  constexpr std::size_t longest = 400;
  std::vector<std::string> passes;
  for (const std::string& pass : cause.passes) passes.push_back(shown_text(place_sentence(pass)));
  const std::string why =
      cause.text().empty() ? cause.cause : shown_text(cause.sentence) + " (" + cause.cause + ")";
  arguments.emplace_back("passes", printable(comma_list(passes), longest));
  arguments.emplace_back("why", printable(why, longest));
  return shown_text(Sentence(key, std::move(arguments))) + "\n";
}

/// Unit, counts, what is missing and what is open.
std::string unit_text(const UnitStatus& status) {
  const Word state = status.scrapped    ? "scrapped"_word
                     : !status.complete ? "no plan says what it needs"_word
                     : *status.complete ? "complete"_word
                                        : "incomplete"_word;
  std::string text = shown_text(Sentence("cli.unit"_key, {{"unit", printable(status.unit_serial)},
                                                          {"weldment", printable(status.weldment)},
                                                          {"state", state}})) +
                     "\n";
  text += shown_text(Sentence("cli.unit.counts"_key,
                              {{"passes", status.passes.size()}, {"manual", status.manual.size()}})) +
          "\n";
  for (const std::string& each : status.missing)
    text += shown_text(Sentence("cli.unit.missing"_key, {{"pass", place_sentence(printable(each))}})) + "\n";
  for (const OpenCause& each : status.open_causes) text += cause_text("cli.unit.undecided"_key, each);
  for (const DecidedCause& each : status.decided_causes)
    text += cause_text("cli.unit.decided"_key, each.cause,
                       {{"record", each.disposition}, {"decision", decision_word(each.decision)}});
  return text;
}

void show_unit(const Ledger& ledger, const LedgerOptions& given, Result& result) {
  const UnitStatus status = unit_status(ledger, given.unit);
  if (status.passes.empty() && status.manual.empty() && status.weldment.empty())
    throw InputError("--unit", "\"" + printable(given.unit, 60) + "\"",
                     "a unit that the store has records of"_word);
  if (given.json) {
    JsonWriter json;
    json.begin_object().key("unit").begin_object();
    json.member("unit_serial", status.unit_serial)
        .member("weldment", status.weldment)
        .member("complete", status.complete);
    json.member("scrapped", status.scrapped);
    write_numbers(json, "passes", status.passes);
    write_numbers(json, "manual", status.manual);
    json.key("missing").begin_array(JsonWriter::Layout::compact);
    for (const std::string& each : status.missing) json.value(each);
    json.end_array().key("nonconformances").begin_array();
    for (const Nonconformance& each : status.nonconformances) write_nonconformance(each, json);
    json.end_array();
    write_causes(status, json);
    json.end_object().end_object();
    result.output = json.take();
    return;
  }
  result.output = unit_text(status) + "\n" + nonconformance_table(status.nonconformances);
}

void write_proof(const Ledger& ledger, std::uint64_t seq, JsonWriter& json) {
  const auto snapshot = ledger.backend().snapshot();
  SignedHead head = snapshot.newest_head.value_or(SignedHead{});
  head.store = ledger.store_id();
  const auto leaves = ledger.leaves(head.n);
  json.key("proof").begin_object();
  json.member("head", head.text()).member("signature", hex(head.signature));
  json.member("public_key", key_in_force(ledger.backend()).pem)
      .member("index", seq - 1)
      .member("tree_size", head.n);
  json.key("path").begin_array();
  for (const Digest& digest : inclusion_proof(leaves, seq - 1)) json.value(hex(digest));
  json.end_array().end_object();
}

/// Which record, of what kind, when, by whom and why.
std::string stamp_text(SentenceKey key, const Ledger& ledger, const LedgerRow& row, const JsonNode& body) {
  return shown_text(Sentence(key, {{"record", row.seq},
                                   {"kind", row.kind},
                                   {"time", body_text(body, "t")},
                                   {"who", printable(ledger.person_name(body_text(body, "who")))},
                                   {"why", printable(body_text(body, "why"))}})) +
         "\n";
}

/// A value as it is now, and what it was.
std::string value_text(const std::string& name, const std::string& is, const std::string& was) {
  const std::string now = printable(is, 2000);
  if (was == is) return now;
  const SentenceKey key =
      is_derived_member("results." + name) ? "cli.record.recomputed"_key : "cli.record.corrected"_key;
  return now + "   " + shown_text(Sentence(key, {{"was", printable(was, 200)}}));
}

std::string change_text(const RecordHistory::Change& change) {
  const SentenceKey key = change.is_derived ? "cli.record.change.recomputed"_key : "cli.record.change"_key;
  return shown_text(Sentence(key, {{"member", printable(change.member)},
                                   {"was", printable(change.was, 200)},
                                   {"now", printable(change.is, 200)}}));
}

/// Text of a record for people: body members one a line, corrected values beside the old ones.
std::string record_text(const Ledger& ledger, const LedgerRow& row, const JsonNode& body) {
  std::string text = stamp_text("cli.record"_key, ledger, row, body);
  RecordHistory history(ledger);
  const JsonNode now = history.corrected_body(row.seq);
  for (const auto& [key, value] : body.members) {
    if (key == "results" && value.kind == JsonNode::Kind::object) {
      const JsonNode* current = now.find("results");
      for (const auto& [name, old] : value.members) {
        const std::string is = canonical_json(*current->find(name));
        text += "  " + printable(name) + ": " + value_text(name, is, canonical_json(old)) + "\n";
      }
    } else if (key != "who" && key != "why" && key != "t" && key != "seq" && key != "kind") {
      text += "  " + key + ": " + printable(canonical_json(value), 2000) + "\n";
    }
  }
  const Retention retention = Retentions(history).of(row.seq);
  if (!retention.until.empty())
    text += "  " + shown_text(Sentence("cli.list.retained"_key, {{"date", printable(retention.until, 40)}})) +
            "\n";
  for (const std::uint64_t hold : retention.holds)
    text += "  " + shown_word("legal hold"_word) + ": " +
            shown_text(Sentence("ledger.record"_key, {{"record", hold}})) + "\n";
  for (const std::uint64_t later : ledger.backend().find("ref", std::to_string(row.seq))) {
    const LedgerRow other = ledger.record(later);
    const JsonNode since = body_of(other);
    text += stamp_text("cli.record.since"_key, ledger, other, since);
    if (other.kind != record_kind::correction) continue;
    for (const RecordHistory::Change& change : history.changes_by(later, row.seq))
      text += "    " + change_text(change) + "\n";
  }
  return text;
}

}  // namespace

void ledger_show(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  if (!given.unit.empty()) return show_unit(ledger, given, result);
  if (given.seq == 0)
    throw InputError("ledger show", "neither a record nor --unit"_word, "RECORD or --unit SERIAL"_word);
  if (!given.explain.empty()) return explain_number(ledger, given, result);
  const LedgerRow row = ledger.record(given.seq);
  const JsonNode body = body_of(row);
  if (!given.json && !given.proof) {
    result.output = record_text(ledger, row, body);
    return;
  }
  JsonWriter json;
  json.begin_object().key("record").begin_object(JsonWriter::Layout::compact);
  write_record_members(ledger, row, body, json);
  RecordHistory history(ledger);
  write_retention(Retentions(history).of(row.seq), json);
  json.end_object();
  json.member("body", row.body);
  if (const JsonNode now = corrected_body(ledger, row); is_corrected(now, body, "results"))
    json.key("results_now").raw(canonical_json(*now.find("results")));
  if (given.proof) write_proof(ledger, row.seq, json);
  json.end_object();
  result.output = json.take();
}

void ledger_nonconformance(const LedgerOptions& given, Result& result) {
  if (given.seq != 0) {
    Ledger ledger = open_for_writing(given);
    return write_entry(ledger, given, raised_nonconformance_entry(ledger, given.seq), result);
  }
  const Ledger ledger = open_for_reading(given);
  std::vector<Nonconformance> list = nonconformances(ledger, given.unit);
  if (given.open_only) std::erase_if(list, [](const Nonconformance& each) { return !each.open; });
  if (!given.json) {
    result.output = nonconformance_table(list);
    return;
  }
  JsonWriter json;
  json.begin_object().key("nonconformances").begin_array();
  for (const Nonconformance& each : list) write_nonconformance(each, json);
  json.end_array().end_object();
  result.output = json.take();
}

}  // namespace seamtakt::cli
