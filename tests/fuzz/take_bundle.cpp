// Bundles of strangers: all or nothing, and what was taken is a store that verifies.
#include <sstream>
#include <string>

#include "fuzz/fuzz_target.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/verify/verify.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt::fuzz {

bool take_bundle(std::string_view input) {
  std::istringstream bundle{std::string(input)};
  if (!is_taken([&] { check_bundle_header(bundle, "fuzzed.jsonl"); })) return false;
  const ScratchFolder folder(ScratchFolder::On::memory);
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  const auto backend = open_ledger_backend(uri, {StoreOpening::For::writing, true, false});
  const bool taken = is_taken([&] { import_bundle(*backend, bundle, "fuzzed.jsonl"); });
  const std::uint64_t records = backend->snapshot().last_seq;
  promise(taken || records == 0, "of a bundle that is refused nothing is stored");
  if (records > 0)
    promise(verify_ledger(Ledger::open(uri, {}), {}).trusted, "a store made from a bundle verifies");
  return taken;
}

}  // namespace seamtakt::fuzz
