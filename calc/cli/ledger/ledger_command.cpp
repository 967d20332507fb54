#include <memory>
#include <tuple>

#include "base/error.hpp"
#include "cli/common/number_option.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/store_key.hpp"
#include "ledger/body/record_text.hpp"
#include "records/keep/later_calibration.hpp"
#include "records/keep/record_search.hpp"

namespace seamtakt::cli {

Ledger open_for_reading(const LedgerOptions& given) {
  return Ledger::open(given.store, {StoreOpening::For::reading, false, given.force});
}

Ledger open_for_writing(const LedgerOptions& given) {
  if (given.who.empty()) throw InputError("--who", "nothing"_word, "who writes this"_word);
  if (given.why.empty()) throw InputError("--why", "nothing"_word, "why it is written"_word);
  check_record_text("--who", given.who, longest_who);
  check_record_text("--why", given.why, longest_why);
  for (const auto& [option, text, longest] : {std::tuple("--instrument", &given.instrument, longest_id),
                                              std::tuple("--certificate", &given.certificate, longest_why),
                                              std::tuple("--schedule", &given.schedule, longest_id),
                                              std::tuple("--append", &given.append, longest_why)})
    if (!text->empty()) check_record_text(option, *text, longest);
  return Ledger::open(given.store, {StoreOpening::For::writing, false, given.force});
}

WriteStamp stamp_of(const LedgerOptions& given) {
  return write_stamp(given.who, given.why);
}

namespace {

constexpr std::uint64_t most_records = std::numeric_limits<std::int64_t>::max();

using Action = void (*)(const LedgerOptions&, Result&);

/// The `ledger` command and what its subcommands have in common.
class LedgerCommands {
 public:
  LedgerCommands(const Command& app, Result& result)
      : options_(std::make_shared<LedgerOptions>()), result_(result) {
    ledger_ = app.command("ledger", "The stored records: search, prove that nothing was altered, hand out");
    ledger_->needs_commands(1, 1);
  }

  LedgerOptions& options() { return *options_; }

  Command reading(const char* name, const char* text, Action action) {
    LedgerOptions& o = *options_;
    const Command command = ledger_->command(name, text);
    command.option("--store", o.store, "sqlite:FILE or postgresql://user@host:port/database").required();
    command.flag("--json", o.json, "one JSON document on standard output");
    command.flag("--force", o.force, "also on a network drive");
    Result& result = result_;
    command.run([options = options_, &result, action] { action(*options, result); });
    return command;
  }

  Command writing(const char* name, const char* text, Action action) {
    LedgerOptions& o = *options_;
    const Command command = reading(name, text, action);
    command.option("--who", o.who, "who writes this");
    command.option("--why", o.why, "why it is written");
    command.option("--key", o.key, "the store's private key where it isn't in its usual place");
    return command;
  }

 private:
  std::shared_ptr<LedgerOptions> options_;
  Result& result_;
  std::optional<Command> ledger_;
};

void add_reading(LedgerCommands& ledger) {
  LedgerOptions& o = ledger.options();
  const Command list = ledger.reading("list", "Records by kind, unit, seam, verdict and date", ledger_list);
  list.option("--kind", o.kind, "pass, manual, ingest, nonconformance, correction, ...");
  list.option("--unit", o.unit, "unit serial");
  list.option("--seam", o.seam, "seam");
  list.option("--verdict", o.verdict, "pass, fail or undecided");
  list.option(
          "--time", o.list_time,
          "which time is shown and meant by --from and --to: welded (else recorded), or recorded [welded]")
      .one_of({welded_time, recorded_time});
  list.option("--from,--from-date", o.from_date,
              "the time shown is this or later: a day (2026-11-25) or a UTC time (2026-11-25T06:00:00Z)");
  list.option("--to,--to-date", o.to_date, "it is before this time, or on this day or earlier");
  list.option("--retain-from", o.retain_from, "to be kept until this date or later (ledger retain)");
  list.option("--retain-to", o.retain_to, "to be kept until this date or earlier");
  list.flag("--held", o.held, "under a legal hold (ledger hold)");
  add_whole_number(list, "--limit", o.limit, 0, most_records, "so many at most; 0: all [0]");

  const Command show =
      ledger.reading("show", "One record with what was changed since, or a unit", ledger_show);
  add_whole_number(show, "RECORD", o.seq, 1, most_records, "its number");
  show.option("--unit", o.unit, "what the store knows of a unit: passes, what is missing, nonconformances");
  show.option("--explain", o.explain,
              "how a number of a pass comes about, such as heat_input_kJ_mm or steady.current_A");
  show.flag("--proof", o.proof, "with the digests that prove the record by the signed head");

  const Command verify =
      ledger.reading("verify", "Proves that nothing was altered, or says what was", ledger_verify);
  verify.option("--pub", o.pub, "the store's public key (PEM), or its fingerprint, as the auditor holds it");
  verify.option("--anchor", o.anchors, "file of anchors kept outside; may be given again");
  verify.option("--raw", o.raw, "folder of the raw logs");
  verify.option("--ca", o.ca, "certificates (PEM) of the time stamping authorities that the auditor trusts");
  add_whole_number(verify, "--from", o.from, 1, most_records, "look into the bodies from this record on [1]");

  const Command head = ledger.reading("head", "The newest signed head", ledger_head);
  head.option("--files", o.files,
              "write PREFIX.txt, PREFIX.sig and PREFIX.pem, for openssl pkeyutl -verify -rawin");

  const Command out =
      ledger.reading("export", "All records to hand out: a bundle, or a table of the passes", ledger_export);
  out.option("--output", o.output, "file; without it, standard output");
  out.option("--format", o.format,
             "bundle (JSON Lines, verifiable) or csv (passes) [by the file's name, else bundle]")
      .one_of({"bundle", "csv"});
  out.flag("--without-names", o.without_names, "digests only in place of persons' names");
}

void add_writing(LedgerCommands& ledger) {
  LedgerOptions& o = ledger.options();
  const Command anchor = ledger.writing(
      "anchor", "The line to keep outside, which shows if the store is ever rewritten", ledger_anchor);
  anchor.option("--append", o.append,
                "append it to this file (on another machine) and keep a record of that");
  anchor.option("--witness", o.witness, "keep another store's anchors (a file) as a record of this one");

  const Command in = ledger.reading(
      "import", "A bundle into a store that is empty or holds its first records", ledger_import);
  in.option("BUNDLE", o.file, "file that ledger export wrote").required();

  const Command correct =
      ledger.writing("correct", "A new record that says what an old one should have said", ledger_correct);
  add_whole_number(correct, "RECORD", o.seq, 1, most_records, "its number").required();
  correct
      .option("--set", o.set,
              "results.MEMBER=VALUE in the member's unit; may be given again. What follows from others (heat "
              "input, verdict, ...) is recomputed")
      .required();

  const Command cancel =
      ledger.writing("void", "A new record that says that an old one doesn't count", ledger_void);
  add_whole_number(cancel, "RECORD", o.seq, 1, most_records, "its number").required();

  const Command sign = ledger.writing("sign", "Signs a record off with a person's own key", ledger_sign);
  add_whole_number(sign, "RECORD", o.seq, 1, most_records, "its number").required();
  sign.option("--person-key", o.person_key,
              "the person's private key; made where it is absent [person.pem in the key folder]");

  const Command person = ledger.writing(
      "person", "Binds a person's own key to the name of --who: no other name can sign with it",
      ledger_person);
  person.option("--person-key", o.person_key,
                "the person's private key; made where it is absent [person.pem in the key folder]");

  const Command calibrate = ledger.writing("calibrate", "An instrument's calibration", ledger_calibrate);
  calibrate.option("--instrument", o.instrument, "its id in the plan").required();
  calibrate.option("--certificate", o.certificate, "number of the certificate, or its file").required();
  calibrate.option("--date", o.calibrated_on, "when it was calibrated (2026-11-25)").required();
  calibrate.option("--due", o.due, "when it is due again").required();
  calibrate
      .option("--as-found", o.as_found,
              "as it was found, before any adjustment: in-tolerance judges again the passes that were welded "
              "since it was due, out-of-tolerance leaves them undecided")
      .one_of({as_found_in_tolerance, as_found_out_of_tolerance});

  const Command nonconformance = ledger.writing(
      "nonconformance", "Lists what failed and how it stands; or opens one", ledger_nonconformance);
  add_whole_number(nonconformance, "RECORD", o.seq, 1, most_records,
                   "open one about this pass or manual seam");
  nonconformance.option("--unit", o.unit, "those of a unit");
  nonconformance.flag("--open", o.open_only, "those that are open");

  const Command disposition = ledger.writing(
      "disposition",
      "What becomes of a nonconformance, or of all passes of a unit that one cause left undecided",
      ledger_disposition);
  add_whole_number(disposition, "RECORD", o.seq, 1, most_records, "number of the nonconformance");
  disposition.option("--unit", o.unit, "with --cause: the unit whose undecided passes are meant");
  disposition.option("--cause", o.cause,
                     "the rule that left them undecided, such as record.instrument.overdue");
  disposition.option("--decision", o.decision, "repair, use-as-is or scrap").required();
  disposition.option("--schedule", o.schedule, "schedule of the repair");
  add_whole_number(disposition, "--retest", o.retest, 1, most_records,
                   "record of the pass that was welded anew and passed; closes a repair");

  const Command key =
      ledger.writing("key", "The store's key: shows its fingerprint, changes or protects it", ledger_key);
  key.flag("--rotate", o.rotate, "a new key, signed by the one before");
  key.flag("--protect", o.protect, "encrypt the key file (passphrase from SEAMTAKT_KEY_PASSPHRASE)");
  key.flag("--replace-lost", o.replace_lost,
           "a new key in place of a lost one; trust then rests on anchors from before");

  const Command note =
      ledger.writing("note", "A note (--why is its text), about a record or the store", ledger_note);
  add_whole_number(note, "RECORD", o.seq, 1, most_records, "number of the record that it is about");
}

/// What is kept how long, and what others say of the time.
void add_keeping(LedgerCommands& ledger) {
  LedgerOptions& o = ledger.options();
  const Command retain =
      ledger.writing("retain", "Until when a record, or all of a unit, is to be kept", ledger_retain);
  add_whole_number(retain, "RECORD", o.seq, 1, most_records, "its number");
  retain.option("--unit", o.unit, "unit serial");
  retain.option("--until", o.until, "the last day (2036-11-25)").required();

  const Command hold = ledger.writing(
      "hold", "A legal hold on a record, or on all of a unit, until it is lifted", ledger_hold);
  add_whole_number(hold, "RECORD", o.seq, 1, most_records, "its number");
  hold.option("--unit", o.unit, "unit serial");

  const Command unhold = ledger.writing("unhold", "Lifts a legal hold", ledger_unhold);
  add_whole_number(unhold, "RECORD", o.seq, 1, most_records, "number of the hold's record").required();

  const Command timestamp = ledger.writing(
      "timestamp",
      "An outside authority's time over the newest head (RFC 3161): makes the query, or stores the reply",
      ledger_timestamp);
  timestamp.option(
      "--query", o.query,
      "write the query to this file, to be sent by your own means; with --tsa, the query that was sent");
  timestamp.option("--tsa", o.tsa, "the authority's reply, which is checked and stored");
  timestamp.option("--ca", o.ca,
                   "certificates (PEM) that vouch for the authority; they are stored with the reply");
}

}  // namespace

void add_ledger(const Command& app, Result& result) {
  LedgerCommands ledger(app, result);
  add_reading(ledger);
  add_writing(ledger);
  add_keeping(ledger);
}

}  // namespace seamtakt::cli
