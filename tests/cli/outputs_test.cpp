// No command's output covers a store, a key or a file of another kind.
#include "cli/ledger/ledger_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Outputs : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_EQ(audit_demo().exit_code, 1) << "the demo's log has a pass that fails";
    for (const auto& entry : std::filesystem::directory_iterator(folder / "data/seamtakt/keys"))
      key_ = entry.path();
    ASSERT_EQ(ledger({"export", "--output", path("bundle.jsonl")}).exit_code, 0);
    std::filesystem::copy_file(demo_plan, path("plan.weldplan.json"));
    std::filesystem::copy_file(demo_folder + "orders.csv", path("orders.csv"));
    std::filesystem::create_hard_link(path("orders.csv"), path("orders-link.csv"));
    std::filesystem::create_symlink(store_file(), path("to-the-store.html"));
    write_file(path("log.csv"), "time_s,current_A,voltage_V\n0,250,25\n1,250,25\n");
  }
  /// Refused, and the file as it was.
  void expect_kept(const std::string& file, const std::vector<std::string>& words) {
    SCOPED_TRACE(words[0] + " " + words[1] + " over " + file);
    const std::string before = bytes_of(file);
    expect_refused(run_program(words), "expected a new name");
    EXPECT_EQ(bytes_of(file), before);
  }
  std::string key_;
};

}  // namespace

TEST_F(Outputs, AReportOrAnExportCoversNothingOfAnotherKind) {
  const std::vector<std::string> all = {store_file(),         key_,
                                        path("bundle.jsonl"), path("plan.weldplan.json"),
                                        path("log.csv"),      path("orders-link.csv")};
  for (const std::string& file : all) {
    if (file != path("bundle.jsonl"))
      expect_kept(file, {"ledger", "export", "--store", store_, "--output", file});
    expect_kept(file, {"ledger", "export", "--store", store_, "--format", "csv", "--output", file});
  }
  expect_kept(path("to-the-store.html"), {"report", demo_plan, "--output", path("to-the-store.html")});
  expect_kept(path("log.csv"), {"report", demo_plan, "--output", path("log.csv")});
  expect_kept(path("orders-link.csv"),
              {"report", "--store", store_, "--unit", "AE-26-0101", "--output", path("orders-link.csv")});
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(Outputs, APlanThatIsWrittenCoversPlansAlone) {
  for (const std::string& file : {store_file(), key_, path("bundle.jsonl"), path("log.csv")}) {
    expect_kept(file, {"cycle", demo_plan, "--order", "given", "--output", file});
    expect_kept(file, {"fit", demo_plan, "--seam", "BD/S01", "--overwrite", "--output", file});
    expect_kept(file, {"learn", demo_folder + "arc-log.csv.gz", "--plan", demo_plan, "--output", file});
  }
  expect_refused(run_program({"learn", demo_folder + "arc-log.csv.gz", "--plan", path("plan.weldplan.json"),
                              "--output", path("./plan.weldplan.json")}),
                 "the plan itself");
}

TEST_F(Outputs, AHeadsFilesAndAnchorsCoverNothingEither) {
  for (const char* ending : {".txt", ".sig", ".pem"}) {
    write_file(path("head") + ending, "something of mine");
    expect_kept(path("head") + ending, {"ledger", "head", "--store", store_, "--files", path("head")});
    std::filesystem::remove(path("head") + ending);
    for (const char* other : {".txt", ".sig", ".pem"})
      EXPECT_FALSE(std::filesystem::exists(path("head") + other)) << "nothing is half written";
  }
  EXPECT_EQ(ledger({"head", "--files", path("head")}).exit_code, 0);
  EXPECT_EQ(ledger({"head", "--files", path("head")}).exit_code, 0) << "again over its own files";
  for (const std::string& file : {store_file(), key_, path("log.csv"), path("plan.weldplan.json")}) {
    const std::string before = bytes_of(file);
    expect_refused(write({"anchor", "--append", file}), "expected a file of anchors");
    EXPECT_EQ(bytes_of(file), before) << file;
  }
  write_file(path("anchors.txt"), "# of the store of line 3");
  EXPECT_EQ(write({"anchor", "--append", path("anchors.txt")}).exit_code, 0);
  EXPECT_EQ(ledger({"verify", "--anchor", path("anchors.txt")}).exit_code, 0);
}

TEST_F(Outputs, ANewKeyCoversNoOtherStoresKeyAndNoOtherFile) {
  const std::string other = path("keys/other.pem"), mine = bytes_of(key_);
  ASSERT_LE(
      run_program({"audit", path("log.csv"), "--store", "sqlite:" + path("other.sqlite"), "--key", other})
          .exit_code,
      1);
  const std::string before = bytes_of(other);
  ASSERT_FALSE(before.empty());
  expect_refused(write({"key", "--replace-lost", "--key", other}), "another store's key");
  EXPECT_EQ(bytes_of(other), before);
  const std::string plan = bytes_of(path("plan.weldplan.json"));
  expect_refused(write({"key", "--replace-lost", "--key", path("plan.weldplan.json")}), "no private key");
  EXPECT_EQ(bytes_of(path("plan.weldplan.json")), plan);
  EXPECT_EQ(bytes_of(key_), mine);
  EXPECT_EQ(write({"key", "--replace-lost"}).exit_code, 0) << "its own one goes";
}
