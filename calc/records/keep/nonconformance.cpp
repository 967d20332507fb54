#include "records/keep/nonconformance.hpp"

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "records/keep/four_eyes.hpp"
#include "records/keep/record_changes.hpp"
#include "records/keep/stored_sentence.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt {

namespace {

constexpr Decision decisions[] = {Decision::repair, Decision::use_as_is, Decision::scrap};

std::uint64_t whole(const JsonNode& body, std::string_view path) {
  const JsonNode* member = body_member(body, path);
  return member != nullptr && member->is_integer && member->number > 0
             ? static_cast<std::uint64_t>(member->number)
             : 0;
}

Sentence first_finding(const JsonNode& body) {
  const JsonNode* findings = body.find("findings");
  return findings != nullptr && !findings->elements.empty() ? stored_sentence(findings->elements[0])
                                                            : Sentence();
}

std::string place_of(const JsonNode& body) {
  const std::uint64_t pass = whole(body, "results.pass");
  return body_text(body, "results.unit_serial") + "/" + body_text(body, "results.weldment") + "/" +
         body_text(body, "results.seam") + "/pass " + (pass > 0 ? std::to_string(pass) : "-");
}

/// Where the weld that it is about was corrected to be another one.
void move_with_its_weld(RecordHistory& history, Nonconformance& each) {
  if (each.about == 0 || history.changes_of(each.about).corrections.empty()) return;
  const JsonNode body = history.corrected_body(each.about);
  each.unit_serial = body_text(body, "results.unit_serial");
  each.place = place_of(body);
}

void check_retest(const Ledger& ledger, const Nonconformance& about, std::uint64_t retest) {
  const LedgerRow row = ledger.record(retest), failed = ledger.record(about.about);
  const auto refuse = [](Phrase found) {
    throw InputError("--retest", std::move(found),
                     "a later record of the same unit, seam and pass that passed"_word);
  };
  if (row.kind != record_kind::pass && row.kind != record_kind::manual) refuse(kind_sentence(row));
  if (retest <= about.about) refuse(Sentence("ledger.retest.not-later"_key, {{"record", retest}}));
  const JsonNode body = corrected_body(ledger, row), before = corrected_body(ledger, failed);
  for (const char* path : {"results.unit_serial", "results.weldment", "results.seam"})
    if (body_text(body, path) != body_text(before, path))
      refuse(Sentence("ledger.retest.other-weld"_key, {{"record", retest}}));
  if (row.kind == record_kind::pass && failed.kind == record_kind::pass &&
      whole(body, "results.pass") != whole(before, "results.pass"))
    refuse(Sentence("ledger.retest.other-pass"_key, {{"record", retest}}));
  const std::string verdict =
      body_text(body, row.kind == record_kind::pass ? "results.verdict" : "results.result");
  if (verdict != "pass" && verdict != "passed" && verdict != "ok")
    refuse(Sentence("ledger.retest.verdict"_key, {{"verdict", printable(verdict, 20)}}));
  if (changes_of(ledger, retest).is_void()) refuse("a void record"_word);
}

}  // namespace

const char* to_string(Decision decision) {
  switch (decision) {
    case Decision::repair:
      return "repair";
    case Decision::use_as_is:
      return "use-as-is";
    case Decision::scrap:
      return "scrap";
  }
  return "";
}

std::optional<Decision> decision_of(const std::string& text) {
  for (const Decision each : decisions)
    if (text == to_string(each)) return each;
  return std::nullopt;
}

Decision parse_decision(const std::string& text) {
  if (const auto decision = decision_of(text)) return *decision;
  throw InputError("--decision", "\"" + printable(text, 40) + "\"", "repair, use-as-is or scrap"_word);
}

std::vector<Nonconformance> nonconformances(const Ledger& ledger, const std::string& unit_serial) {
  RecordHistory history(ledger);
  return nonconformances(history, unit_serial);
}

Nonconformance nonconformance_of(RecordHistory& history, std::uint64_t seq) {
  const JsonNode body = body_of(history.record(seq));
  Nonconformance each;
  each.seq = seq;
  each.about = whole(body, "ref");
  each.opened = body_text(body, "t");
  each.unit_serial = body_text(body, "results.unit_serial");
  each.place = body_text(body, "results.place");
  move_with_its_weld(history, each);
  each.sentence = first_finding(body);
  if (each.text().empty()) each.sentence = Sentence::verbatim(body_text(body, "why"));
  for (const std::uint64_t number : history.changes_of(seq).dispositions) {
    if (history.is_void(number)) continue;
    const JsonNode disposition = body_of(history.record(number));
    each.dispositions.push_back(number);
    each.decision = decision_of(body_text(disposition, "results.decision"));
    each.retest = whole(disposition, "results.retest");
  }
  // The re-test must still count.
  if (each.retest != 0 && history.is_void(each.retest)) each.retest = 0;
  const bool closed = each.decision && (*each.decision != Decision::repair || each.retest != 0);
  each.open = !closed && !history.is_void(seq) && !(each.about != 0 && history.is_void(each.about));
  return each;
}

std::vector<Nonconformance> nonconformances(RecordHistory& history, const std::string& unit_serial) {
  LedgerBackend& backend = history.ledger().backend();
  auto numbers =
      unit_serial.empty() ? backend.find("nonconformance", "") : records_of_unit(history, unit_serial);
  history.load(numbers);
  std::erase_if(numbers,
                [&](std::uint64_t seq) { return history.record(seq).kind != record_kind::nonconformance; });
  std::vector<std::uint64_t> abouts;
  for (const std::uint64_t seq : numbers)
    if (const std::uint64_t about = whole(body_of(history.record(seq)), "ref"); about != 0)
      abouts.push_back(about);
  history.load(abouts);
  std::vector<Nonconformance> list;
  for (const std::uint64_t seq : numbers) list.push_back(nonconformance_of(history, seq));
  return list;
}

LedgerEntry disposition_entry(const Ledger& ledger, const DispositionRequest& request) {
  const LedgerRow row = ledger.record(request.nonconformance);
  const std::string name = "record " + std::to_string(row.seq);
  if (row.kind != record_kind::nonconformance)
    throw InputError(name, kind_sentence(row), "a nonconformance"_word);
  RecordHistory history(ledger);
  const Nonconformance about = nonconformance_of(history, row.seq);
  if (!about.open) throw InputError(name, "a nonconformance that is closed"_word, "an open one"_word);
  if (request.decision == Decision::repair && request.schedule.empty())
    throw InputError("--schedule", "nothing"_word, "the schedule that the repair is welded to"_word);
  if (request.retest != 0) check_retest(ledger, about, request.retest);
  if (request.decision == Decision::use_as_is) check_four_eyes(history, about.about, row.seq, request.who);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("decision", to_string(request.decision));
  if (!request.schedule.empty()) json.member("schedule", request.schedule);
  if (request.retest != 0) json.member("retest", request.retest);
  json.member("unit_serial", about.unit_serial).end_object();
  LedgerEntry entry{record_kind::disposition, row.seq, {{"results", json.take()}}, {}};
  if (!about.unit_serial.empty()) entry.lookups.emplace_back("unit", about.unit_serial);
  return entry;
}

LedgerEntry raised_nonconformance_entry(const Ledger& ledger, std::uint64_t about) {
  const LedgerRow row = ledger.record(about);
  if (row.kind != record_kind::pass && row.kind != record_kind::manual)
    throw InputError("record " + std::to_string(about), kind_sentence(row), "a pass or a manual seam"_word);
  const JsonNode body = corrected_body(ledger, row);
  const std::string unit = body_text(body, "results.unit_serial");
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("unit_serial", unit).member("place", place_of(body));
  json.end_object();
  LedgerEntry entry{record_kind::nonconformance, about, {{"results", json.take()}}, {{"nonconformance", ""}}};
  if (!unit.empty()) entry.lookups.emplace_back("unit", unit);
  return entry;
}

}  // namespace seamtakt
