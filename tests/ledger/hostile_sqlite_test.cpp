// A database file may come from anyone: it must not control the program.
#include <gtest/gtest.h>

#include <filesystem>

#include "base/error.hpp"
#include "ledger/store/sqlite.hpp"
#include "store_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST(HostileSqlite, a_statement_without_end_is_ended) {
  Sqlite database(":memory:", Sqlite::Mode::create);
  const char* endless =
      "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT max(i) FROM n";
  EXPECT_THROW(database.integer(endless), StoreDamaged);
  EXPECT_EQ(database.integer("SELECT 7"), 7) << "the next one has steps of its own";
}

TEST(HostileSqlite, reading_ends_as_soon_as_nobody_wants_it) {
  Sqlite database(":memory:", Sqlite::Mode::create);
  int asked = 0;
  database.stop_when([&] { return ++asked == 3; });
  EXPECT_THROW(
      database.integer("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT max(i) "
                       "FROM n"),
      StoreReadingStopped);
  EXPECT_EQ(asked, 3);

  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  make_sample(uri);
  {
    // Long enough that the check of the file's structure is asked while it runs.
    Sqlite store(folder / "store.sqlite", Sqlite::Mode::read_write);
    store.run(
        "INSERT INTO person WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 60000) "
        "SELECT printf('%064d', i), '00', 'x' FROM n");
  }
  StoreOpening opening;
  opening.stopped = [] { return true; };
  EXPECT_THROW(verify_store(uri, opening, {}), StoreReadingStopped) << "and says nothing of trust";
}

TEST(HostileSqlite, a_value_longer_than_any_record_is_refused) {
  Sqlite database(":memory:", Sqlite::Mode::create);
  EXPECT_EQ(database.text("SELECT zeroblob(60000000)").size(), 60'000'000u);
  EXPECT_THROW(database.text("SELECT zeroblob(100000000)"), StoreDamaged);
}

TEST(HostileSqlite, views_and_triggers_run_where_they_are_allowed_alone) {
  Sqlite database(":memory:", Sqlite::Mode::create);
  database.run(
      "CREATE TABLE a(i); CREATE TABLE b(i); CREATE VIEW v AS SELECT i FROM a; "
      "CREATE TRIGGER t AFTER INSERT ON a BEGIN INSERT INTO b VALUES(NEW.i); END");
  database.allow_views_and_triggers(false);
  database.run("INSERT INTO a VALUES(1)");
  EXPECT_EQ(database.integer("SELECT count(*) FROM b"), 0);
  EXPECT_THROW(database.integer("SELECT count(*) FROM v"), StoreDamaged);
  database.allow_views_and_triggers(true);
  database.run("INSERT INTO a VALUES(2)");
  EXPECT_EQ(database.integer("SELECT count(*) FROM b"), 1);
}

TEST(HostileSqlite, a_store_that_was_taken_away_while_it_was_open_takes_no_more) {
  const ScratchFolder folder;
  KeyRing keys;
  const std::string file = folder / "store.sqlite";
  Ledger ledger = Ledger::open("sqlite:" + file, {StoreOpening::For::writing, true, false});
  ledger.write(keys.provider(), stamp(0), [](LedgerBatch& batch) { batch.add(some_pass(1)); });
  std::filesystem::remove(file);
  EXPECT_THROW(ledger.write(keys.provider(), stamp(1), [](LedgerBatch& batch) { batch.add(some_pass(2)); }),
               std::system_error)
      << "it would say that it is stored";
}

TEST(HostileSqlite, a_new_store_that_gets_no_record_goes_and_one_that_was_there_stays) {
  const ScratchFolder folder;
  const std::string file = folder / "store.sqlite", uri = "sqlite:" + file;
  const StoreOpening make{StoreOpening::For::writing, true, false};
  { const Ledger unused = Ledger::open(uri, make); }
  EXPECT_EQ(folder.names(), std::set<std::string>());
  KeyRing keys;
  {
    Ledger ledger = Ledger::open(uri, make);
    EXPECT_THROW(ledger.write(keys.provider(), stamp(0),
                              [](LedgerBatch&) { throw InputError("a test", "a failure", "none"); }),
                 InputError);
  }
  EXPECT_EQ(folder.names(), std::set<std::string>());
  {
    // Another one writes while the first one is open.
    const Ledger first = Ledger::open(uri, make);
    Ledger second = Ledger::open(uri, make);
    second.write(keys.provider(), stamp(0), [](LedgerBatch& batch) { batch.add(some_pass(1)); });
  }
  EXPECT_TRUE(verified(uri).trusted);
  { const Ledger again = Ledger::open(uri, make); }
  EXPECT_TRUE(verified(uri).trusted);
}
