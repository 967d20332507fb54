#include <system_error>

#include "ledger/store/refusal_sentence.hpp"
#include "ledger/store/uri_password.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

namespace {

VerifyReport unreadable(Sentence why) {
  VerifyReport report;
  report.problems.push_back({0, 0, std::move(why)});
  return report;
}

}  // namespace

VerifyReport verify_store(const std::string& uri, const StoreOpening& opening, const VerifyOptions& options) {
  if (!store_exists(uri))
    throw InputError(printable(without_passwords(uri)), "no such store"_word, "a store"_word);
  std::optional<Ledger> ledger;
  try {
    ledger.emplace(Ledger::open(uri, opening));
  } catch (const InputError& error) {
    if (!uri.starts_with("sqlite:")) throw;
    return unreadable(refusal_sentence(error));
  } catch (const StoreDamaged& error) {
    // What a disk, a right or a lock refuses says nothing of the records, and is thrown on.
    return unreadable(Sentence::verbatim(error.what()));
  }
  return verify_ledger(*ledger, options);
}

}  // namespace seamtakt
