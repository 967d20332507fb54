#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/store_key.hpp"
#include "ledger/body/person_key.hpp"
#include "records/keep/cause_disposition.hpp"
#include "records/keep/hand_writing.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"

namespace seamtakt::cli {

namespace {

void say_written(const LedgerOptions& given, Result& result, std::uint64_t seq, const std::string& kind,
                 const SignedHead& head) {
  const Sentence written("cli.record.written"_key, {{"record", seq}, {"kind", kind}});
  if (!given.json) {
    result.output = shown_text(written) + "\n";
    return;
  }
  JsonWriter json;
  json.begin_object()
      .member("seq", seq)
      .member("text", written.english())
      .member("head", head.anchor_line())
      .end_object();
  result.output = json.take();
}

void say_written(const LedgerOptions& given, Result& result, const WrittenRecord& written) {
  say_written(given, result, written.seq, written.kind, written.head);
}

HandWriting hand_of(Ledger& ledger, const LedgerOptions& given) {
  return {ledger, key_provider(given.store, given.key), stamp_of(given)};
}

}  // namespace

void write_entry(Ledger& ledger, const LedgerOptions& given, const LedgerEntry& entry, Result& result) {
  say_written(given, result, write_record(hand_of(ledger, given), entry));
}

void ledger_correct(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  std::vector<CorrectedValue> values;
  for (const std::string& text : given.set) values.push_back(parse_corrected_value(text));
  say_written(given, result, write_correction(hand_of(ledger, given), given.seq, values));
}

void ledger_void(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  write_entry(ledger, given, void_entry(ledger, ledger.record(given.seq)), result);
}

void ledger_sign(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  ledger.record(given.seq);  // refused before a key is made
  say_written(given, result,
              write_signoff(hand_of(ledger, given), given.seq, person_signing_key(given.person_key)));
}

void ledger_person(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  const SigningKey key = person_signing_key(given.person_key);
  const std::string id = key.public_key().id();
  std::uint64_t seq = 0;
  const SignedHead head =
      ledger.write(key_provider(given.store, given.key), stamp_of(given), [&](LedgerBatch& batch) {
        const std::string person = batch.person(given.who);
        check_key_owner(ledger, id, person);
        seq = batch.add({record_kind::person,
                         {},
                         person_key_members(key, batch.store_id(), person),
                         {{person_key_topic, id}}});
      });
  say_written(given, result, seq, record_kind::person, head);
}

void ledger_calibrate(const LedgerOptions& given, Result& result) {
  const CalibrationRequest request{given.instrument, given.certificate, given.calibrated_on, given.due,
                                   given.as_found};
  check_calibration(request);
  Ledger ledger = open_for_writing(given);
  const WrittenRecord written = write_calibration(hand_of(ledger, given), request);
  say_written(given, result, written);
  if (!given.json && written.judged_again > 0)
    result.output +=
        shown_text(Sentence("cli.calibrate.judged"_key, {{"count", written.judged_again}})) + "\n";
}

void ledger_disposition(const LedgerOptions& given, Result& result) {
  if (given.seq == 0 && (given.unit.empty() || given.cause.empty()))
    throw InputError("ledger disposition", "neither a record nor --unit and --cause"_word,
                     "RECORD, or --unit SERIAL --cause RULE"_word);
  if (given.seq != 0 && !given.cause.empty())
    throw InputError("ledger disposition", "a record and --cause"_word, "one of the two"_word);
  Ledger ledger = open_for_writing(given);
  const Decision decision = parse_decision(given.decision);
  const LedgerEntry entry =
      given.seq != 0
          ? disposition_entry(ledger, {given.seq, decision, given.schedule, given.retest, given.who})
          : cause_disposition_entry(ledger, {given.unit, given.cause, decision, given.who});
  write_entry(ledger, given, entry, result);
}

void ledger_note(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  say_written(given, result, write_note(hand_of(ledger, given), given.seq));
}

}  // namespace seamtakt::cli
