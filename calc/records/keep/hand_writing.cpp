#include "records/keep/hand_writing.hpp"

#include <filesystem>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"
#include "base/json/json_writer.hpp"
#include "ledger/body/person_key.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/body/signoff.hpp"
#include "records/keep/later_calibration.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t largest_certificate = 64u << 20;

LedgerEntry calibration_entry(const CalibrationRequest& request) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact)
      .member("instrument", request.instrument)
      .member("certificate", request.certificate);
  json.member("date", request.date).member("due", request.due);
  if (std::filesystem::is_regular_file(request.certificate))
    json.member("certificate_sha256", sha256_hex(read_file(request.certificate, largest_certificate)));
  if (!request.as_found.empty()) json.member("as_found", request.as_found);
  json.end_object();
  return {record_kind::calibration, {}, {{"results", json.take()}}, {{"instrument", request.instrument}}};
}

}  // namespace

WrittenRecord write_record(const HandWriting& to, const LedgerEntry& entry) {
  WrittenRecord written{0, entry.kind, {}, 0};
  written.head =
      to.ledger.write(to.key, to.stamp, [&](LedgerBatch& batch) { written.seq = batch.add(entry); });
  return written;
}

WrittenRecord write_correction(const HandWriting& to, std::uint64_t seq,
                               const std::vector<CorrectedValue>& values) {
  const LedgerRow old = to.ledger.record(seq);
  const auto entry_with = [&](const PersonDigest& person) {
    return correction_entry(to.ledger, old, values, person);
  };
  entry_with([](const std::string& name) { return name; });  // refused before a key is asked for
  WrittenRecord written{0, record_kind::correction, {}, 0};
  written.head = to.ledger.write(to.key, to.stamp, [&](LedgerBatch& batch) {
    written.seq = batch.add(entry_with([&](const std::string& name) { return batch.person(name); }));
  });
  return written;
}

WrittenRecord write_signoff(const HandWriting& to, std::uint64_t seq, const SigningKey& person) {
  const LedgerRow row = to.ledger.record(seq);
  const std::string id = person.public_key().id();
  const LedgerEntry entry{record_kind::signoff,
                          row.seq,
                          signoff_members(person, to.ledger.store_id(), row.seq, leaf_digest(row.body)),
                          {{person_key_topic, id}}};
  WrittenRecord written{0, entry.kind, {}, 0};
  written.head = to.ledger.write(to.key, to.stamp, [&](LedgerBatch& batch) {
    check_key_owner(to.ledger, id, batch.person(to.stamp.who));
    written.seq = batch.add(entry);
  });
  return written;
}

void check_calibration(const CalibrationRequest& request) {
  check_record_text("--instrument", request.instrument, longest_id);
  check_record_text("--certificate", request.certificate, longest_why);
  check_date(request.date, "--date");
  check_date(request.due, "--due");
  if (request.due < request.date)
    throw InputError("--due", request.due, Sentence("cli.calibrate.due"_key, {{"calibrated", request.date}}));
}

WrittenRecord write_calibration(const HandWriting& to, const CalibrationRequest& request) {
  check_calibration(request);
  const LedgerEntry calibration = calibration_entry(request);
  std::vector<JudgedAgain> again;
  if (request.as_found == as_found_in_tolerance)
    again = passes_judged_again(to.ledger, request.instrument, request.date);
  WrittenRecord written{0, calibration.kind, {}, again.size()};
  written.head = to.ledger.write(to.key, to.stamp, [&](LedgerBatch& batch) {
    written.seq = batch.add(calibration);
    for (const JudgedAgain& each : again) batch.add(judgement_entry(each, written.seq));
  });
  return written;
}

WrittenRecord write_disposition_of(const HandWriting& to, std::uint64_t about, DispositionRequest request) {
  RecordHistory history(to.ledger);
  request.nonconformance = 0;
  for (const std::uint64_t seq : history.changes_of(about).nonconformances)
    if (nonconformance_of(history, seq).open) request.nonconformance = seq;
  if (request.nonconformance == 0)
    throw InputError("record " + std::to_string(about), "no open nonconformance about it"_word,
                     "a record that failed and waits for a decision"_word);
  request.who = to.stamp.who;
  return write_record(to, disposition_entry(to.ledger, request));
}

WrittenRecord write_note(const HandWriting& to, std::uint64_t about) {
  LedgerEntry entry{record_kind::note, {}, {}, {}};
  if (about != 0) entry.ref = to.ledger.record(about).seq;
  return write_record(to, entry);
}

}  // namespace seamtakt
