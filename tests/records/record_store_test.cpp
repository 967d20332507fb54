#include <gtest/gtest.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <limits>
#include <set>
#include <stdexcept>
#include <system_error>
#include <thread>

#include "audit_fixture.hpp"
#include "base/atomic_save.hpp"
#include "base/error.hpp"
#include "base/json_node.hpp"
#include "records/record_store.hpp"
#include "records/unit_times.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* header = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n";

AuditResult digested(const std::vector<std::string>& texts, const Plan* plan = nullptr) {
  AuditOptions options;
  options.digest = true;
  return audit(memory_logs(texts), options, plan);
}

std::string log_of_unit(int unit, int passes = 3) {
  std::string log = header;
  for (int pass = 1; pass <= passes; ++pass)
    log +=
        arc_rows("U" + std::to_string(unit) + ",W,S" + std::to_string(pass) + ",1", pass * 10, pass * 10 + 2);
  return log;
}

class Store : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("seamtakt-store-" + std::to_string(::getpid()));
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  std::string path() const { return (folder_ / "records.db").string(); }
  std::string uri() const { return "sqlite:" + path(); }

  static std::vector<StoredRecord> all(const RecordStore& store) {
    std::vector<StoredRecord> records;
    store.list(1, [&](const StoredRecord& record) {
      records.push_back(record);
      return true;
    });
    return records;
  }

  /// Runs SQL as another program would; the outcome's code.
  int run_sql(const char* sql) const {
    sqlite3* database = nullptr;
    EXPECT_EQ(sqlite3_open(path().c_str(), &database), SQLITE_OK);
    const int code = sqlite3_exec(database, sql, nullptr, nullptr, nullptr);
    sqlite3_close(database);
    return code;
  }

  std::filesystem::path folder_;
};

TEST_F(Store, KeepsAnIngestAndItsPasses) {
  const Plan plan = small_plan();
  const auto store = open_record_store(uri());
  IngestNote note;
  note.recorded_at_utc = "2026-11-25T12:00:00Z";
  note.who = "A. Auditor";
  const auto outcome = store->append(digested({log_of_unit(1)}, &plan), note);
  EXPECT_TRUE(outcome.added);
  EXPECT_EQ(outcome.first_seq, 1u);
  EXPECT_EQ(outcome.last_seq, 4u);
  const auto records = all(*store);
  ASSERT_EQ(records.size(), 4u);
  EXPECT_EQ(records[0].kind, "ingest");
  const JsonNode ingest = parse_json(records[0].body, "body");
  EXPECT_EQ(ingest.find("who")->string, "A. Auditor");
  EXPECT_EQ(ingest.find("rows")->find("in_passes")->number, 60);
  const JsonNode pass = parse_json(records[1].body, "body");
  EXPECT_EQ(records[1].kind, "pass");
  EXPECT_EQ(pass.find("results")->find("seam")->string, "S1");
  EXPECT_EQ(pass.find("ingest")->number, 1);
  EXPECT_FALSE(pass.find("findings")->elements.empty()) << "the pass's own findings stand with it";
  for (const auto& record : records) EXPECT_EQ(record.sha256, sha256_hex(record.body));
}

TEST_F(Store, TheSameLogTwiceAddsNothingAndSaysSo) {
  const auto store = open_record_store(uri());
  store->append(digested({log_of_unit(1)}), {});
  const auto again = store->append(digested({log_of_unit(1)}), {});
  EXPECT_FALSE(again.added);
  EXPECT_EQ(again.first_seq, 1u);
  EXPECT_NE(again.text.find("already"), std::string::npos);
  EXPECT_EQ(store->count(), 4u);
  // And through a new connection, under another name.
  AuditOptions options;
  options.digest = true;
  const auto renamed = audit({{"renamed.csv", memory_bytes(log_of_unit(1))}}, options, nullptr);
  EXPECT_FALSE(open_record_store(uri())->append(renamed, {}).added);
}

TEST_F(Store, OfLogsPartlyStoredOnlyTheNewOnesPassesAreAdded) {
  const auto store = open_record_store(uri());
  store->append(digested({log_of_unit(1)}), {});
  const auto outcome = store->append(digested({log_of_unit(1), log_of_unit(2, 2)}), {});
  EXPECT_TRUE(outcome.added);
  EXPECT_NE(outcome.text.find("1 of the logs"), std::string::npos);
  EXPECT_EQ(store->count(), 4u + 1u + 2u);
  EXPECT_FALSE(store->append(digested({log_of_unit(2, 2)}), {}).added);
}

TEST_F(Store, NamesPassesThatStoodThereBefore) {
  const auto store = open_record_store(uri());
  store->append(digested({header + arc_rows("U1,W,S1,1", 0, 5)}), {});
  const auto outcome = store->append(digested({header + arc_rows("U1,W,S1,1", 100, 105)}), {});
  EXPECT_TRUE(outcome.added) << "another log of the same pass is another record";
  EXPECT_EQ(outcome.already_stored, std::vector<std::uint64_t>{2});
}

TEST_F(Store, KeepsManualSeams) {
  AuditOptions options;
  options.digest = true;
  options.manual = parse_manual_seams(
      "unit_serial,seam,pass,welder,schedule,date,result\nU1,M1,1,W,G,2026-11-25,pass\n", "m.csv");
  const auto store = open_record_store(uri());
  store->append(audit(memory_logs({log_of_unit(1, 1)}), options, nullptr), {});
  EXPECT_EQ(all(*store).back().kind, "manual");
}

TEST_F(Store, RefusesChangesByAnyHand) {
  open_record_store(uri())->append(digested({log_of_unit(1)}), {});
  for (const char* sql : {"UPDATE rec SET kind = 'x'", "DELETE FROM rec WHERE seq = 4", "DELETE FROM rec",
                          "INSERT OR REPLACE INTO rec SELECT 2, kind, body, sha256 FROM rec WHERE seq = 3",
                          "INSERT INTO rec SELECT 9, kind, body, sha256 FROM rec WHERE seq = 1"})
    EXPECT_NE(run_sql(sql), SQLITE_OK) << sql;
  EXPECT_EQ(open_record_store(uri())->count(), 4u);
}

TEST_F(Store, NoticesABodyAlteredBehindItsBack) {
  open_record_store(uri())->append(digested({log_of_unit(1)}), {});
  ASSERT_EQ(run_sql("DROP TRIGGER rec_stays; UPDATE rec SET body = CAST(replace(body, '\"U1\"', '\"U2\"') AS "
                    "BLOB) WHERE seq = 2"),
            SQLITE_OK);
  const auto store = open_record_store(uri());
  EXPECT_THROW(all(*store), InputError);
}

TEST_F(Store, StatesProgramAndVersionInItsFile) {
  open_record_store(uri());
  std::ifstream file(path(), std::ios::binary);
  std::string bytes(100, '\0');
  file.read(bytes.data(), 100);
  EXPECT_EQ(bytes.substr(68, 4), "SmTk");
  EXPECT_EQ(bytes.substr(60, 4), std::string("\0\0\0\1", 4));
  EXPECT_EQ(bytes[18], 1) << "rollback journal, not write-ahead log";
}

TEST_F(Store, OtherFilesAreRefused) {
  std::ofstream(path()) << "time_s,current_A\n this is a log, not a store, and long enough to look like a "
                           "database header might\n";
  EXPECT_THROW(open_record_store(uri()), InputError);
  std::filesystem::remove(path());
  ASSERT_EQ(run_sql("CREATE TABLE theirs(a)"), SQLITE_OK);
  EXPECT_THROW(open_record_store(uri()), InputError) << "another program's database";
  std::filesystem::remove(path());
  open_record_store(uri());
  ASSERT_EQ(run_sql("PRAGMA user_version = 2"), SQLITE_OK);
  try {
    open_record_store(uri());
    ADD_FAILURE() << "a newer store is accepted";
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what()).find("version 2"), std::string::npos);
  }
  EXPECT_THROW(open_record_store("sqlite:" + folder_.string()), InputError);
  EXPECT_THROW(open_record_store("sqlite:" + (folder_ / "absent" / "records.db").string()), InputError);
  EXPECT_THROW(open_record_store("sqlite:"), InputError);
  EXPECT_THROW(open_record_store("records.db"), InputError);
}

TEST_F(Store, PostgresIsRefusedWithWhatWorks) {
  try {
    open_record_store("postgresql://localhost/records");
    ADD_FAILURE();
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what()).find("this build keeps records in sqlite: files for now"),
              std::string::npos);
  }
}

TEST_F(Store, WritesNothingWhereSomethingIsWrong) {
  const auto store = open_record_store(uri());
  AuditResult rejected = digested({std::string(header) + "x,U1,W,S1,1,200,25\n"});
  EXPECT_TRUE(rejected.too_many_rejected);
  EXPECT_THROW(store->append(rejected, {}), std::invalid_argument);
  AuditResult without_digest = audit_text(log_of_unit(1));
  EXPECT_THROW(store->append(without_digest, {}), std::invalid_argument);
  // A record that can't be written to JSON, after others could.
  AuditResult broken = digested({log_of_unit(1)});
  broken.passes[2].arc_time_s = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(store->append(broken, {}), std::logic_error);
  EXPECT_EQ(store->count(), 0u);
  EXPECT_TRUE(store->append(digested({log_of_unit(1)}), {}).added) << "and the store still works";
}

TEST_F(Store, AFullDiskLeavesWhatWasThere) {
  const auto store = open_record_store(uri());
  store->append(digested({log_of_unit(1)}), {});
  // Not through the store: a limit on the file's size as a full disk would set it.
  const auto size = std::filesystem::file_size(path());
  const pid_t child = ::fork();
  if (child == 0) {
    rlimit limit{size, size};
    ::signal(SIGXFSZ, SIG_IGN);
    ::setrlimit(RLIMIT_FSIZE, &limit);
    try {
      open_record_store(uri())->append(digested({log_of_unit(2, 3), log_of_unit(3, 3), log_of_unit(4, 3)}),
                                       {});
    } catch (const std::system_error&) {
      ::_exit(3);
    } catch (...) {
      ::_exit(4);
    }
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_EQ(WEXITSTATUS(status), 3);
  EXPECT_EQ(open_record_store(uri())->count(), 4u);
}

TEST_F(Store, TwoWritersTakeTurns) {
  constexpr int each = 20;
  const auto write = [&](int first) {
    const auto store = open_record_store(uri());
    for (int i = 0; i < each; ++i) store->append(digested({log_of_unit(first + i, 1)}), {});
  };
  open_record_store(uri());
  std::thread one(write, 1000), other(write, 2000);
  one.join();
  other.join();
  const auto store = open_record_store(uri());
  const auto records = all(*store);
  ASSERT_EQ(records.size(), 2u * 2 * each);
  for (std::size_t i = 0; i < records.size(); ++i) EXPECT_EQ(records[i].seq, i + 1);
}

/// Ingests the logs one by one and tells each by a byte once it is stored.
[[noreturn]] void ingest_until_killed(const std::string& uri, const std::vector<std::string>& logs,
                                      int told) {
  const auto store = open_record_store(uri);
  for (const auto& log : logs) {
    store->append(digested({log}), {});
    if (::write(told, ".", 1) != 1) ::_exit(1);
  }
  ::_exit(0);
}

TEST_F(Store, KilledInMidIngestItLosesNothingAcknowledgedAndARerunCompletesIt) {
  std::vector<std::string> logs;
  for (int unit = 0; unit < 60; ++unit) logs.push_back(log_of_unit(unit));
  std::size_t killed = 0;
  for (unsigned round = 0; round < 12; ++round) {
    std::filesystem::remove(path());
    std::filesystem::remove(path() + "-journal");
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) ingest_until_killed(uri(), logs, ends[1]);
    ::close(ends[1]);
    std::this_thread::sleep_for(std::chrono::milliseconds(5 + 17 * round));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    killed += WIFSIGNALED(status) ? 1 : 0;
    std::size_t acknowledged = 0;
    char bytes[256];
    for (ssize_t count = 0; (count = ::read(ends[0], bytes, sizeof bytes)) > 0;)
      acknowledged += static_cast<std::size_t>(count);
    ::close(ends[0]);

    const auto store = open_record_store(uri());
    const std::uint64_t found = store->count();
    EXPECT_EQ(found % 4, 0u) << "an ingest is there as a whole or not at all";
    EXPECT_GE(found / 4, acknowledged);
    EXPECT_LE(found / 4, acknowledged + 1);
    for (const auto& log : logs) store->append(digested({log}), {});
    std::multiset<std::string> units;
    store->list(1, [&](const StoredRecord& record) {
      if (record.kind == "pass")
        units.insert(parse_json(record.body, "body").find("results")->find("unit_serial")->string);
      return true;
    });
    EXPECT_EQ(units.size(), 180u);
    for (int unit = 0; unit < 60; ++unit) EXPECT_EQ(units.count("U" + std::to_string(unit)), 3u);
  }
  EXPECT_GE(killed, 3u) << "most rounds must really be cut off";
}

}  // namespace
}  // namespace seamtakt::test
