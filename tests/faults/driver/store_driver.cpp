// store_driver HOW FILE KEY: appends two records to the store FILE, signed with KEY, and prints the anchor of
// its new head once they are stored. HOW: "honest", "early" (says so before it commits) or "unchecked" (takes
// a failed commit for a good one). Exit codes are the program's: 2 for bad input, 3 where the machine failed.
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <system_error>

#include "base/error.hpp"
#include "ledger/wrapped_backend.hpp"
#include "records/ledger/ledger.hpp"

namespace {

using namespace seamtakt;

class SayingBackend : public test::WrappedBackend {
 public:
  SayingBackend(std::unique_ptr<LedgerBackend> inner, std::string how)
      : WrappedBackend(std::move(inner)), how_(std::move(how)) {}
  void insert_head(const SignedHead& head) override {
    line_ = head.anchor_line() + "\n";
    WrappedBackend::insert_head(head);
  }
  void commit() override {
    if (how_ == "early") say();
    try {
      WrappedBackend::commit();
    } catch (const std::exception&) {
      if (how_ != "unchecked") throw;
    }
    if (how_ != "early") say();
  }

 private:
  void say() const {
    if (::write(STDOUT_FILENO, line_.data(), line_.size()) < 0) std::exit(9);
  }
  std::string how_, line_;
};

void append(const std::string& how, const std::string& file, const SigningKey& key) {
  const std::string uri = "sqlite:" + file;
  Ledger ledger(std::make_unique<SayingBackend>(
      open_ledger_backend(uri, {StoreOpening::For::writing, false, false}), how));
  const WriteStamp stamp{"2026-03-02T07:00:00Z", "anna", "a test", "seamtakt test"};
  ledger.write([&](const std::string&, const std::string&) { return key; }, stamp,
               [](LedgerBatch& batch) {
                 for (int i = 0; i < 2; ++i) batch.add({record_kind::note, {}, {}, {{"unit", "U7"}}});
               });
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 4) return 64;
  try {
    append(arguments[1], arguments[2], load_signing_key(arguments[3]));
  } catch (const InputError& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  } catch (const std::system_error& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 3;
  }
  return 0;
}
