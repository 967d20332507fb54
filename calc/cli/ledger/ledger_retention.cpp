#include "base/error.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "records/keep/retention.hpp"

namespace seamtakt::cli {

namespace {

RetentionScope scope_of(const LedgerOptions& given, const char* command) {
  if ((given.seq == 0) == given.unit.empty())
    throw InputError(command,
                     given.seq == 0 ? "neither a record nor --unit"_word : "a record and --unit"_word,
                     "RECORD or --unit SERIAL"_word);
  return {given.seq, given.unit};
}

}  // namespace

void ledger_retain(const LedgerOptions& given, Result& result) {
  const RetentionScope scope = scope_of(given, "ledger retain");
  Ledger ledger = open_for_writing(given);
  write_entry(ledger, given, retain_entry(ledger, scope, given.until), result);
}

void ledger_hold(const LedgerOptions& given, Result& result) {
  const RetentionScope scope = scope_of(given, "ledger hold");
  Ledger ledger = open_for_writing(given);
  write_entry(ledger, given, hold_entry(ledger, scope), result);
}

void ledger_unhold(const LedgerOptions& given, Result& result) {
  Ledger ledger = open_for_writing(given);
  write_entry(ledger, given, unhold_entry(ledger, given.seq), result);
}

}  // namespace seamtakt::cli
