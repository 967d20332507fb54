// store_driver HOW FILE KEY [TIMES]: appends two records to the store FILE (or postgresql://...), signed with
// KEY, and prints the anchor of its new head once they are stored; TIMES times, creating the store where it
// is absent. HOW: "honest", "early" (says so before it commits), "unchecked" (takes a failed commit for a
// good one) or a pragma ("synchronous=NORMAL") that it sets before it begins. Exit codes are the program's: 2
// for bad input, 3 where the machine failed.
#include <sqlite3.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/wrapped_backend.hpp"

namespace {

using namespace seamtakt;

sqlite3* newest_database = nullptr;

/// SQLite calls this for each database that is opened: the backend keeps its own to itself. One in memory is
/// its model of a store's tables.
int note_database(sqlite3* database, char**, const void*) {
  const char* file = sqlite3_db_filename(database, "main");
  if (file != nullptr && *file != '\0') newest_database = database;
  return SQLITE_OK;
}

class SayingBackend : public test::WrappedBackend {
 public:
  SayingBackend(std::unique_ptr<LedgerBackend> inner, std::string how)
      : WrappedBackend(std::move(inner)), how_(std::move(how)) {}
  void begin() override {
    if (how_.find('=') != std::string::npos &&
        sqlite3_exec(newest_database, ("PRAGMA " + how_).c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
      std::exit(9);
    WrappedBackend::begin();
  }
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

void append(const std::string& how, const std::string& file, const SigningKey& key, bool create) {
  const std::string uri = file.find("://") == std::string::npos ? "sqlite:" + file : file;
  Ledger ledger(std::make_unique<SayingBackend>(
      open_ledger_backend(uri, {StoreOpening::For::writing, create, false}), how));
  const WriteStamp stamp{"2026-03-02T07:00:00Z", "anna", "a test", "seamtakt test"};
  ledger.write([&](const std::string&, const std::string&) { return key; }, stamp,
               [](LedgerBatch& batch) {
                 for (int i = 0; i < 2; ++i) batch.add({record_kind::note, {}, {}, {{"unit", "U7"}}});
               });
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 4 && count != 5) return 64;
  sqlite3_auto_extension(reinterpret_cast<void (*)()>(&note_database));
  try {
    const SigningKey key = load_signing_key(arguments[3]);
    const bool create = count == 5;
    const int times = create ? std::atoi(arguments[4]) : 1;
    for (int i = 0; i < times; ++i) append(arguments[1], arguments[2], key, create);
  } catch (const InputError& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  } catch (const std::system_error& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 3;
  }
  return 0;
}
