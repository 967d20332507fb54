#include <gtest/gtest.h>
#include <signal.h>

#include <chrono>
#include <filesystem>
#include <iostream>
#include <random>
#include <sstream>
#include <thread>

#include "base/error.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/store/postgres.hpp"
#include "ledger/store/postgres_schema.hpp"
#include "postgres_server.hpp"
#include "records/keep/nonconformance.hpp"
#include "support/program_paths.hpp"
#include "writers.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// One server for all tests of this file: to start one takes seconds.
class PostgresStore : public testing::Test {
 protected:
  static void SetUpTestSuite() { server_ = PostgresServer::start(why_); }
  static void TearDownTestSuite() { server_.reset(); }
  void SetUp() override {
    if (!server_) GTEST_SKIP() << "PostgreSQL isn't tested: " << why_;
    uri_ = server_->make_database("t" + std::to_string(++databases_));
    database_ = "t" + std::to_string(databases_);
  }
  /// As the superuser, with the guards off.
  void unguarded(const std::string& text) {
    bool failed = false;
    const std::string said =
        server_->sql(database_, "SET session_replication_role = replica; " + text, &failed);
    ASSERT_FALSE(failed) << said;
  }
  void expect_caught(std::uint64_t first_bad) {
    const VerifyReport report = verified(uri_);
    EXPECT_FALSE(report.trusted);
    EXPECT_EQ(report.first_bad_seq(), first_bad) << problems_text(report);
  }

  static inline std::unique_ptr<PostgresServer> server_;
  static inline std::string why_;
  static inline int databases_ = 0;
  std::string uri_, database_;
};

}  // namespace

TEST_F(PostgresStore, keeps_and_proves_records_as_the_file_does) {
  const SampleStore sample = make_sample(uri_);
  const VerifyReport report = verified(uri_, sample.anchors, sample.keys.current().public_key().id());
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.records, 17u);
  EXPECT_TRUE(report.warnings.empty()) << report.warnings[0].english();
}

TEST_F(PostgresStore, a_backup_restored_through_both_kinds_of_store_has_the_same_root_and_the_same_bytes) {
  const ScratchFolder folder;
  const std::string first = "sqlite:" + (folder / "a.sqlite"), third = "sqlite:" + (folder / "b.sqlite");
  const SampleStore sample = make_sample(first);
  const std::string bundle = bundle_of(first);
  const auto restore = [&](const std::string& uri) {
    std::istringstream in(bundle);
    import_bundle(*open_ledger_backend(uri, {StoreOpening::For::writing, true, false}), in, "bundle");
    EXPECT_EQ(bundle_of(uri), bundle);
    const VerifyReport report = verified(uri, sample.anchors);
    EXPECT_TRUE(report.trusted) << problems_text(report);
    EXPECT_EQ(report.anchored_to, 17u);
  };
  restore(uri_);
  restore(third);
  // Both directions: from the file to the server, and from the server to another file.
  const std::string fourth = "sqlite:" + (folder / "c.sqlite");
  std::istringstream in(bundle_of(uri_));
  import_bundle(*open_ledger_backend(fourth, {StoreOpening::For::writing, true, false}), in, "bundle");
  EXPECT_EQ(bundle_of(fourth), bundle);
  EXPECT_EQ(verified(fourth).newest_head->root, verified(first).newest_head->root);
  EXPECT_LE(second_verdict(folder / "c.sqlite", sample.anchors, folder), 0);
}

TEST_F(PostgresStore, what_came_after_records_is_found_as_in_the_file) {
  const ScratchFolder folder;
  const std::string file = "sqlite:" + (folder / "a.sqlite");
  make_sample(file);
  std::istringstream in(bundle_of(file));
  import_bundle(*open_ledger_backend(uri_, {StoreOpening::For::writing, true, false}), in, "bundle");
  const Ledger ledgers[] = {Ledger::open(file, {}), Ledger::open(uri_, {})};
  std::vector<std::string> texts;
  for (const Ledger& ledger : ledgers) {
    RecordHistory history(ledger);
    std::string text;
    for (std::uint64_t seq = 1; seq <= 17; ++seq) {
      const RecordChanges& changes = history.changes_of(seq);
      text += std::to_string(changes.corrections.size()) + std::to_string(changes.signoffs.size()) +
              history.record(seq).kind + canonical_json(history.corrected_body(seq)) + "\n";
    }
    for (const std::uint64_t pass : unit_status(history, "U1").passes) text += std::to_string(pass) + " ";
    texts.push_back(text);
  }
  EXPECT_EQ(texts[0], texts[1]);
  EXPECT_NE(texts[0].find("10pass"), std::string::npos) << "the corrected pass";
  // More than one question's worth, with numbers that there aren't.
  std::vector<std::uint64_t> numbers;
  for (std::uint64_t seq = 12'000; seq > 0; --seq) numbers.push_back(seq);
  std::vector<std::uint64_t> found;
  ledgers[1].backend().each_record_of(numbers, [&](const LedgerRowView& row) { found.push_back(row.seq); });
  EXPECT_EQ(found.size(), 17u);
  EXPECT_EQ(ledgers[1].backend().references_to(numbers).size(),
            ledgers[0].backend().references_to(numbers).size());
}

TEST_F(PostgresStore, the_writer_may_add_and_nothing_else) {
  make_sample(uri_);
  server_->sql("postgres",
               "CREATE ROLE importer LOGIN IN ROLE seamtakt_writer; CREATE ROLE auditor LOGIN IN ROLE "
               "seamtakt_reader;");
  bool failed = false;
  for (const char* text :
       {"UPDATE seamtakt.rec SET kind = 'note'", "DELETE FROM seamtakt.rec", "TRUNCATE seamtakt.rec",
        "DROP TABLE seamtakt.rec", "ALTER TABLE seamtakt.rec DISABLE TRIGGER ALL",
        "DELETE FROM seamtakt.head", "UPDATE seamtakt.person SET name = 'x'", "DELETE FROM seamtakt.state"}) {
    server_->sql(database_, std::string("SET ROLE seamtakt_writer; ") + text, &failed);
    EXPECT_TRUE(failed) << text;
  }
  for (const char* text :
       {"UPDATE seamtakt.rec SET kind = 'note'", "DELETE FROM seamtakt.rec", "TRUNCATE seamtakt.head"}) {
    server_->sql(database_, text, &failed);
    EXPECT_TRUE(failed) << "triggers deter even the superuser: " << text;
  }
  const std::string other = server_->make_database("u" + database_),
                    importer = server_->uri("u" + database_, "importer");
  KeyRing keys;
  begin_store(other, keys);
  Ledger ledger = Ledger::open(importer, {StoreOpening::For::writing, false, false});
  ledger.write(keys.provider(), stamp(1), [](LedgerBatch& batch) { batch.add(some_pass(1)); });
  EXPECT_TRUE(verified(server_->uri("u" + database_, "auditor")).trusted);
  EXPECT_THROW(
      Ledger::open(server_->uri("u" + database_, "auditor"), {StoreOpening::For::writing, false, false}),
      InputError);
}

TEST_F(PostgresStore, alterations_are_caught_and_named) {
  make_sample(uri_);
  unguarded(
      "UPDATE seamtakt.rec SET body = replace(convert_from(body, 'UTF8'), '0.505', '0.405')::text::bytea "
      "WHERE seq = 8");
  expect_caught(8);
}

TEST_F(PostgresStore, a_deleted_record_and_a_cut_tail_are_caught) {
  const SampleStore sample = make_sample(uri_);
  unguarded("DELETE FROM seamtakt.rec WHERE seq > 12; DELETE FROM seamtakt.head WHERE n > 12;");
  expect_caught(13);
  unguarded("DELETE FROM seamtakt.rec WHERE seq = 9");
  expect_caught(9);
}

TEST_F(PostgresStore, a_changed_structure_is_caught) {
  make_sample(uri_);
  for (const char* text : {"ALTER TABLE seamtakt.rec DISABLE TRIGGER rec_stays",
                           "GRANT UPDATE ON seamtakt.rec TO seamtakt_writer",
                           "CREATE RULE r AS ON INSERT TO seamtakt.head DO INSTEAD NOTHING"}) {
    server_->sql(database_, text);
    EXPECT_FALSE(verified(uri_).trusted) << text;
    server_->sql(database_,
                 "ALTER TABLE seamtakt.rec ENABLE TRIGGER rec_stays; REVOKE UPDATE ON seamtakt.rec FROM "
                 "seamtakt_writer");
  }
}

TEST_F(PostgresStore, records_lie_in_pieces_of_a_million_by_number) {
  make_sample(uri_);
  EXPECT_EQ(server_->sql(database_, "SELECT DISTINCT tableoid::regclass FROM seamtakt.rec"),
            "seamtakt.rec_00\n");
  // What the server does with numbers that a test can't reach; nothing of it is a record of the store.
  const std::string insert =
      "INSERT INTO seamtakt.rec SELECT n, 'note', '', sha256('') FROM unnest(ARRAY[1000000, 1000001, "
      "16000000, 16000001]) n";
  EXPECT_EQ(server_->sql(database_, "BEGIN; " + insert +
                                        "; SELECT seq, tableoid::regclass FROM seamtakt.rec WHERE seq > 17 "
                                        "ORDER BY seq; ROLLBACK"),
            "1000000|seamtakt.rec_00\n1000001|seamtakt.rec_01\n16000000|seamtakt.rec_15\n"
            "16000001|seamtakt.rec_rest\n");
  EXPECT_TRUE(verified(uri_).trusted);
}

TEST_F(PostgresStore, a_piece_of_the_records_is_kept_as_the_whole_is) {
  make_sample(uri_);
  bool failed = false;
  for (const char* text :
       {"UPDATE seamtakt.rec_00 SET kind = 'note'", "DELETE FROM seamtakt.rec_00", "TRUNCATE seamtakt.rec_00",
        "TRUNCATE seamtakt.rec_rest", "INSERT INTO seamtakt.rec SELECT * FROM seamtakt.rec WHERE seq = 9",
        "SET ROLE seamtakt_writer; INSERT INTO seamtakt.rec_01 SELECT 1000001, 'note', '', "
        "sha256('')"}) {
    server_->sql(database_, text, &failed);
    EXPECT_TRUE(failed) << text;
  }
  EXPECT_TRUE(verified(uri_).trusted);
  for (const auto& [text, back] :
       {std::pair("ALTER TABLE seamtakt.rec_00 DISABLE TRIGGER rec_stays",
                  "ALTER TABLE seamtakt.rec_00 ENABLE TRIGGER rec_stays"),
        std::pair("GRANT DELETE ON seamtakt.rec_03 TO seamtakt_writer",
                  "REVOKE DELETE ON seamtakt.rec_03 FROM seamtakt_writer"),
        std::pair("ALTER TABLE seamtakt.rec DETACH PARTITION seamtakt.rec_07",
                  "ALTER TABLE seamtakt.rec ATTACH PARTITION seamtakt.rec_07 FOR VALUES FROM (7000001) TO "
                  "(8000001)"),
        std::pair("CREATE TABLE seamtakt.rec_more(n integer)", "DROP TABLE seamtakt.rec_more"),
        std::pair("UPDATE seamtakt.version SET version = 1", "UPDATE seamtakt.version SET version = 2")}) {
    server_->sql(database_, text, &failed);
    EXPECT_FALSE(failed) << text;
    EXPECT_FALSE(verified(uri_).trusted) << text;
    server_->sql(database_, back, &failed);
    EXPECT_FALSE(failed) << back;
    EXPECT_TRUE(verified(uri_).trusted) << back;
  }
}

TEST_F(PostgresStore, one_that_an_older_program_made_in_one_table_goes_on_as_it_is) {
  Postgres server(uri_);
  server.run("BEGIN");
  server.run(postgres_roles);
  server.run(postgres_schema(1).c_str());
  server.run("COMMIT");
  const SampleStore sample = make_sample(uri_);
  const VerifyReport report = verified(uri_, sample.anchors, sample.keys.current().public_key().id());
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.records, 17u);
  EXPECT_EQ(server_->sql(database_, "SELECT version FROM seamtakt.version"), "1\n");
  EXPECT_EQ(server_->sql(database_, "SELECT relkind FROM pg_class WHERE relname = 'rec'"), "r\n");
  unguarded("DELETE FROM seamtakt.rec WHERE seq = 9");
  expect_caught(9);
}

TEST_F(PostgresStore, eight_importers_at_once_leave_no_gap) {
  KeyRing keys;
  begin_store(uri_, keys);
  const int batches = long_tests() ? 500 : 15;
  EXPECT_EQ(write_at_once(uri_, keys.current(), 8, batches, 3), std::vector<std::string>());
  const VerifyReport report = verified(uri_);
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.records, 2u + 8u * 3u * static_cast<unsigned>(batches));
}

TEST_F(PostgresStore, planted_a_state_read_before_the_lock_is_seen) {
  KeyRing keys;
  begin_store(uri_, keys);
  const auto errors =
      write_at_once(uri_, keys.current(), 8, 10, 1, [](auto inner) -> std::unique_ptr<LedgerBackend> {
        return std::make_unique<ReadsBeforeLock>(std::move(inner));
      });
  EXPECT_TRUE(!errors.empty() || !verified(uri_).trusted);
}

TEST_F(PostgresStore, a_newer_store_and_an_absent_one_are_refused) {
  EXPECT_THROW(Ledger::open(uri_, {}), InputError);
  make_sample(uri_);
  unguarded("UPDATE seamtakt.version SET version = 9");
  EXPECT_THROW(Ledger::open(uri_, {}), InputError);
  EXPECT_THROW(Ledger::open("postgresql://127.0.0.1:1/x?connect_timeout=1", {}), std::system_error);
  EXPECT_THROW(Ledger::open("postgresql://%%", {}), InputError);
}

TEST_F(PostgresStore, a_server_killed_in_the_middle_loses_nothing_acknowledged) {
  KeyRing keys;
  begin_store(uri_, keys);
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937_64 random(seed);
  std::vector<std::string> anchors;
  const int rounds = long_tests() ? 99 : 6;
  for (int round = 0; round < rounds; ++round) {
    WriterProcesses writers(uri_, keys.current(), 8, WriterProcesses::Acknowledges::after_commit);
    writers.await_first();
    std::this_thread::sleep_for(std::chrono::milliseconds(random() % 200));
    if (round % 3 == 0) {
      kill(server_->process_id(), SIGKILL);
    } else if (round % 3 == 1) {
      server_->stop_immediately();
    } else {
      const std::string backends = server_->sql(
          "postgres", "SELECT pid FROM pg_stat_activity WHERE datname = '" + database_ + "' LIMIT 1");
      ASSERT_FALSE(backends.empty());
      kill(std::atoi(backends.c_str()), SIGKILL);  // the server ends all others and recovers
    }
    const auto said = writers.wait();
    EXPECT_GT(said.size(), 0u);
    anchors.insert(anchors.end(), said.begin(), said.end());
    if (round % 3 != 2) {
      ASSERT_TRUE(server_->restart());
    }
    ASSERT_TRUE(server_->answers_within_s(120)) << "the server doesn't come back";
    const VerifyReport report = verified(uri_, anchors);
    EXPECT_TRUE(report.trusted) << problems_text(report);
  }
  EXPECT_TRUE(server_->page_checksums_hold());
}

#ifndef SEAMTAKT_SANITIZED  // the server would take the sanitizer's library along with the shim
TEST_F(PostgresStore, a_flush_that_fails_ends_the_server_before_anything_is_acknowledged_that_is_not_kept) {
  KeyRing keys;
  begin_store(uri_, keys);
  server_->stop_immediately();
  const std::string shim = server_->folder() + "/iofault.so";
  std::filesystem::copy_file(iofault_library(), shim, std::filesystem::copy_options::overwrite_existing);
  // In each of the server's processes the 25th flush of the write-ahead log fails.
  server_->set_environment("LD_PRELOAD=" + shim +
                           " IOFAULT_PATH=pg_wal/ IOFAULT_NAME=fdatasync IOFAULT_MODE=eio IOFAULT_CALL=25");
  ASSERT_TRUE(server_->restart());
  const std::string before = server_->log();
  const auto said =
      WriterProcesses(uri_, keys.current(), 8, WriterProcesses::Acknowledges::after_commit).wait();
  EXPECT_GT(said.size(), 0u);
  const std::string since = server_->log().substr(before.size());
  EXPECT_NE(since.find("PANIC"), std::string::npos) << since;
  EXPECT_NE(since.find("could not fdatasync file"), std::string::npos) << since;
  server_->stop_immediately();
  server_->set_environment("");
  ASSERT_TRUE(server_->restart());
  ASSERT_TRUE(server_->answers_within_s(120));
  const VerifyReport report = verified(uri_, said);
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_TRUE(server_->page_checksums_hold());
}
#endif

TEST_F(PostgresStore, a_server_that_does_not_flush_is_refused) {
  make_sample(uri_);
  server_->stop_immediately();
  ASSERT_TRUE(server_->restart("-c fsync=off"));
  ASSERT_TRUE(server_->answers_within_s(120));
  EXPECT_THROW(Ledger::open(uri_, {StoreOpening::For::writing, false, false}), InputError);
  server_->stop_immediately();
  ASSERT_TRUE(server_->restart());
  ASSERT_TRUE(server_->answers_within_s(120));
  EXPECT_TRUE(verified(uri_).trusted);
}
