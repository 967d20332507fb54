#include <set>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/text/comma_list.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/records/shown_record.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/derived_members.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"
#include "records/keep/record_history.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt::cli {

namespace {

std::string day_of(const JsonNode& body) {
  for (const char* path : {"results.started", "results.date", "t"})
    if (const std::string text = body_text(body, path); !text.empty()) return text.substr(0, 10);
  return {};
}

bool is_wanted(const LedgerOptions& given, const LedgerRow& row, const JsonNode& body) {
  const auto is = [&](const std::string& wanted, const char* path) {
    return wanted.empty() || body_text(body, path) == wanted;
  };
  const std::string day = day_of(body);
  return (given.kind.empty() || row.kind == given.kind) && is(given.seam, "results.seam") &&
         is(given.verdict, "results.verdict") && (given.from_date.empty() || day >= given.from_date) &&
         (given.to_date.empty() || day <= given.to_date);
}

/// Calls `each` with the records asked for, in order, and with their bodies by what holds now.
void each_wanted(const Ledger& ledger, const LedgerOptions& given,
                 const std::function<void(const LedgerRow&, const JsonNode&)>& each) {
  std::uint64_t count = 0;
  const auto look = [&](RecordHistory& history, const LedgerRow& row) {
    if (!given.kind.empty() && row.kind != given.kind) return true;
    const JsonNode body = history.corrected_body(row.seq);
    if (!is_wanted(given, row, body)) return true;
    each(row, body);
    return given.limit == 0 || ++count < given.limit;
  };
  if (!given.unit.empty()) {
    RecordHistory history(ledger);
    for (const std::uint64_t seq : records_of_unit(history, given.unit))
      if (!look(history, history.record(seq))) return;
    return;
  }
  constexpr std::size_t rows_at_once = 1000;  // with what came after them
  for (std::uint64_t next = 1;;) {
    const auto page = ledger.backend().records(next, rows_at_once);
    RecordHistory history(ledger);
    std::vector<std::uint64_t> numbers;
    for (const LedgerRow& row : page)
      if (given.kind.empty() || row.kind == given.kind) numbers.push_back(row.seq);
    history.load(numbers);
    for (const LedgerRow& row : page)
      if (!look(history, row)) return;
    if (page.size() < rows_at_once) return;
    next = page.back().seq + 1;
  }
}

void write_numbers(JsonWriter& json, const char* key, const std::vector<std::uint64_t>& numbers) {
  json.key(key).begin_array(JsonWriter::Layout::compact);
  for (const std::uint64_t number : numbers) json.value(number);
  json.end_array();
}

/// A body, the writer's name in place of its digest, and what came after.
void write_record(const Ledger& ledger, const LedgerRow& row, const JsonNode& body, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("seq", row.seq).member("kind", row.kind).member("leaf", hex(row.leaf));
  json.member("who", ledger.person_name(body_text(body, "who"))).member("who_sha256", body_text(body, "who"));
  for (const auto& [key, value] : body.members)
    if (key != "seq" && key != "kind" && key != "who" && key != "leaf" && key != "who_sha256")
      json.key(key).raw(canonical_json(value));
  const RecordChanges changes = changes_of(ledger, row.seq);
  write_numbers(json, "corrected_by", changes.corrections);
  write_numbers(json, "voided_by", changes.voids);
  write_numbers(json, "signed_off_by", changes.signoffs);
  write_numbers(json, "nonconformances", changes.nonconformances);
  write_numbers(json, "dispositions", changes.dispositions);
  json.end_object();
}

std::string what_of(const JsonNode& body) {
  const std::string seam = body_text(body, "results.seam");
  if (seam.empty()) {
    for (const char* path :
         {"results.place", "results.instrument", "results.decision", "results.schedule.id"})
      if (const std::string text = body_text(body, path); !text.empty()) return text;
    const JsonNode* ref = body.find("ref");
    if (ref == nullptr || !ref->is_integer) return "-";
    return shown_text(Sentence("ledger.record"_key, {{"record", static_cast<std::uint64_t>(ref->number)}}));
  }
  const JsonNode* pass = body_member(body, "results.pass");
  return body_text(body, "results.weldment") + "/" + seam +
         (pass != nullptr && pass->is_integer ? "/" + std::to_string(static_cast<long>(pass->number)) : "");
}

std::string verdict_of(const JsonNode& body) {
  const std::string verdict = body_text(body, "results.verdict");
  return verdict.empty() ? body_text(body, "results.result") : shown_verdict(verdict);
}

std::string changed_text(const Ledger& ledger, std::uint64_t seq) {
  const RecordChanges changes = changes_of(ledger, seq);
  std::string text = changes.is_void()             ? shown_word("void"_word)
                     : changes.corrections.empty() ? ""
                                                   : shown_word("corrected"_word);
  if (!changes.signoffs.empty()) text += (text.empty() ? "" : ", ") + shown_word("signed off"_word);
  return text;
}

void list_table(const Ledger& ledger, const LedgerOptions& given, Result& result) {
  TextTable table({{"Record"_word, "", false, 0},
                   {"Kind"_word, "", true, 0},
                   {"Time (UTC)"_word, "", true, 0},
                   {"Unit"_word, "", true, 0},
                   {"What"_word, "", true, 0},
                   {"Verdict"_word, "", true, 0},
                   {"Heat input"_word, "kJ/mm", false, 4},
                   {"Who"_word, "", true, 0},
                   {"Since"_word, "", true, 0}},
                  output_view());
  each_wanted(ledger, given, [&](const LedgerRow& row, const JsonNode& body) {
    table.cell(row.seq)
        .cell(row.kind)
        .cell(body_text(body, "t"))
        .cell(body_text(body, "results.unit_serial"));
    table.cell(what_of(body)).cell(verdict_of(body)).cell(body_number(body, "results.heat_input_kJ_mm"));
    table.cell(ledger.person_name(body_text(body, "who"))).cell(changed_text(ledger, row.seq));
  });
  result.output = table.rows() == 0 ? shown_word("No records."_word) + "\n" : table.text();
}

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

/// What was left undecided, by cause.
void write_open_causes(const std::vector<OpenCause>& causes, JsonWriter& json) {
  json.key("undecided").begin_array();
  for (const OpenCause& each : causes) {
    json.begin_object(JsonWriter::Layout::compact).member("cause", each.cause).member("text", each.text());
    write_numbers(json, "records", each.records);
    json.key("passes").begin_array();
    for (const std::string& pass : each.passes) json.value(pass);
    json.end_array().end_object();
  }
  json.end_array();
}

/// Unit, counts, what is missing and what is open.
std::string unit_text(const UnitStatus& status) {
  constexpr std::size_t longest = 400;
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
  for (const OpenCause& each : status.open_causes) {
    std::vector<std::string> passes;
    for (const std::string& pass : each.passes) passes.push_back(shown_text(place_sentence(pass)));
    const std::string why = each.text().empty() ? each.cause : shown_text(each.sentence);
    text += shown_text(Sentence("cli.unit.undecided"_key, {{"passes", printable(comma_list(passes), longest)},
                                                           {"why", printable(why, longest)}})) +
            "\n";
  }
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
    write_open_causes(status.open_causes, json);
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

void ledger_list(const LedgerOptions& given, Result& result) {
  if (!given.kind.empty() && !is_record_kind(given.kind))
    throw InputError("--kind", "\"" + printable(given.kind, 40) + "\"",
                     "a kind of record, such as pass, manual, ingest or nonconformance"_word);
  const Ledger ledger = open_for_reading(given);
  if (!given.json) return list_table(ledger, given, result);
  JsonWriter json;
  json.begin_object().key("records").begin_array();
  each_wanted(ledger, given,
              [&](const LedgerRow& row, const JsonNode& body) { write_record(ledger, row, body, json); });
  json.end_array().end_object();
  result.output = json.take();
}

void ledger_show(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  if (!given.unit.empty()) return show_unit(ledger, given, result);
  if (given.seq == 0)
    throw InputError("ledger show", "neither a record nor --unit"_word, "RECORD or --unit SERIAL"_word);
  const LedgerRow row = ledger.record(given.seq);
  const JsonNode body = body_of(row);
  if (!given.json && !given.proof) {
    result.output = record_text(ledger, row, body);
    return;
  }
  JsonWriter json;
  json.begin_object().key("record");
  write_record(ledger, row, body, json);
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
