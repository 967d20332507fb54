#pragma once

#include <string>
#include <vector>

#include "cli/common/command.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt::cli {

/// What the `ledger` commands are given; each uses a part of it.
struct LedgerOptions {
  std::string store, key, who, why;
  bool json = false, force = false;

  std::string kind, unit, seam, verdict, from_date, to_date;  // list
  std::string list_time, retain_from, retain_to;
  bool held = false;
  std::uint64_t limit = 0;
  std::uint64_t seq = 0;  // show, correct, void, sign, nonconformance, disposition
  bool proof = false;     // show
  std::string explain;

  std::string pub, raw;  // verify
  std::vector<std::string> anchors;
  std::uint64_t from = 1;

  std::string files;            // head
  std::string append, witness;  // anchor
  std::string output, format;   // export
  bool without_names = false;
  std::string file;  // import

  std::vector<std::string> set;                             // correct
  std::string person_key;                                   // sign
  std::string instrument, certificate, calibrated_on, due;  // calibrate
  std::string as_found;
  bool open_only = false;                 // nonconformance
  std::string decision, schedule, cause;  // disposition
  std::uint64_t retest = 0;
  std::string query, tsa, ca;                                  // timestamp; ca: verify, too
  std::string until;                                           // retain
  bool rotate = false, protect = false, replace_lost = false;  // key
};

Ledger open_for_reading(const LedgerOptions& given);
/// InputError where --who or --why is missing.
Ledger open_for_writing(const LedgerOptions& given);
WriteStamp stamp_of(const LedgerOptions& given);
/// InputError where nothing was written yet.
SignedHead newest_head(const Ledger& ledger);
/// How a number of a record (--explain) comes about.
void explain_number(const Ledger& ledger, const LedgerOptions& given, Result& result);
/// Writes one record and says which.
void write_entry(Ledger& ledger, const LedgerOptions& given, const LedgerEntry& entry, Result& result);

void ledger_list(const LedgerOptions& given, Result& result);
void ledger_show(const LedgerOptions& given, Result& result);
void ledger_verify(const LedgerOptions& given, Result& result);
void ledger_head(const LedgerOptions& given, Result& result);
void ledger_anchor(const LedgerOptions& given, Result& result);
void ledger_export(const LedgerOptions& given, Result& result);
void ledger_import(const LedgerOptions& given, Result& result);
void ledger_correct(const LedgerOptions& given, Result& result);
void ledger_void(const LedgerOptions& given, Result& result);
void ledger_sign(const LedgerOptions& given, Result& result);
void ledger_person(const LedgerOptions& given, Result& result);
void ledger_calibrate(const LedgerOptions& given, Result& result);
void ledger_nonconformance(const LedgerOptions& given, Result& result);
void ledger_disposition(const LedgerOptions& given, Result& result);
void ledger_key(const LedgerOptions& given, Result& result);
void ledger_note(const LedgerOptions& given, Result& result);
void ledger_timestamp(const LedgerOptions& given, Result& result);
void ledger_retain(const LedgerOptions& given, Result& result);
void ledger_hold(const LedgerOptions& given, Result& result);
void ledger_unhold(const LedgerOptions& given, Result& result);

}  // namespace seamtakt::cli
