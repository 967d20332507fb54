#include <filesystem>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"
#include "base/json/json_writer.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/store_key.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/body/signoff.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::size_t largest_certificate = 64u << 20;

/// "2026-11-25"; InputError where it is no date.
void check_date(const std::string& text, const char* where) {
  if (text.size() != 10 || !utc_seconds(text + "T00:00:00Z"))
    throw InputError(where, "\"" + printable(text, 40) + "\"", "a date such as 2026-11-25"_word);
}

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

}  // namespace

void write_entry(Ledger& ledger, const LedgerOptions& given, const LedgerEntry& entry, Result& result) {
  std::uint64_t seq = 0;
  const SignedHead head = ledger.write(key_provider(given.store, given.key), stamp_of(given),
                                       [&](LedgerBatch& batch) { seq = batch.add(entry); });
  say_written(given, result, seq, entry.kind, head);
}

void ledger_correct(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  std::vector<CorrectedValue> values;
  for (const std::string& text : given.set) values.push_back(parse_corrected_value(text));
  const LedgerRow old = ledger.record(given.seq);
  const auto entry_with = [&](const PersonDigest& person) {
    return correction_entry(ledger, old, values, person);
  };
  entry_with([](const std::string& name) { return name; });  // refused before a key is asked for
  std::uint64_t seq = 0;
  const SignedHead head =
      ledger.write(key_provider(given.store, given.key), stamp_of(given), [&](LedgerBatch& batch) {
        seq = batch.add(entry_with([&](const std::string& name) { return batch.person(name); }));
      });
  say_written(given, result, seq, record_kind::correction, head);
}

void ledger_void(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  write_entry(ledger, given, void_entry(ledger, ledger.record(given.seq)), result);
}

void ledger_sign(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  const LedgerRow row = ledger.record(given.seq);
  const std::string path = given.person_key.empty() ? key_folder() + "/person.pem" : given.person_key;
  if (!std::filesystem::exists(path)) save_signing_key(path, SigningKey::generate(), key_passphrase());
  const SigningKey person = load_signing_key(path, key_passphrase());
  LedgerEntry entry{record_kind::signoff,
                    row.seq,
                    signoff_members(person, ledger.store_id(), row.seq, leaf_digest(row.body)),
                    {}};
  entry.lookups.emplace_back("person_key", person.public_key().id());
  write_entry(ledger, given, entry, result);
}

void ledger_calibrate(const LedgerOptions& given, Result& result) {
  check_record_text("--instrument", given.instrument, longest_id);
  check_record_text("--certificate", given.certificate, longest_why);
  check_date(given.calibrated_on, "--date");
  check_date(given.due, "--due");
  if (given.due < given.calibrated_on)
    throw InputError("--due", given.due,
                     Sentence("cli.calibrate.due"_key, {{"calibrated", given.calibrated_on}}));
  Ledger ledger = open_for_writing(given);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact)
      .member("instrument", given.instrument)
      .member("certificate", given.certificate);
  json.member("date", given.calibrated_on).member("due", given.due);
  if (std::filesystem::is_regular_file(given.certificate))
    json.member("certificate_sha256", sha256_hex(read_file(given.certificate, largest_certificate)));
  json.end_object();
  write_entry(ledger, given,
              {record_kind::calibration, {}, {{"results", json.take()}}, {{"instrument", given.instrument}}},
              result);
}

void ledger_disposition(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  write_entry(
      ledger, given,
      disposition_entry(ledger, {given.seq, parse_decision(given.decision), given.schedule, given.retest}),
      result);
}

void ledger_note(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  LedgerEntry entry{record_kind::note, {}, {}, {}};
  if (given.seq != 0) entry.ref = ledger.record(given.seq).seq;
  write_entry(ledger, given, entry, result);
}

}  // namespace seamtakt::cli
