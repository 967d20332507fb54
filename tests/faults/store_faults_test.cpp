// One append to a store with every call on its files failing, cut short, lied about or struck by a kill, one
// after the other. This shows what the program and SQLite do when the system says no or the process dies at
// any place. It doesn't show a loss of power: what was written stays written here, in the order in which it
// was. A "lie" (a call that says it was done and wasn't) is a disk that forgets one write: that the program
// can't prevent; then either the check of the store or the anchor kept outside must show it.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <set>

#include "base/error.hpp"
#include "fault_run.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/verify/verify.hpp"
#include "support/program_paths.hpp"
#include "support/scratch_folder.hpp"

using namespace seamtakt;

namespace {

/// A store of some records in a folder of its own, with its key outside of that folder.
class AppendUnderFaults {
 public:
  AppendUnderFaults() {
    std::filesystem::create_directory(folder_ / "store");
    const SigningKey key = SigningKey::generate();
    save_signing_key(folder_ / "key.pem", key);
    Ledger ledger = Ledger::open("sqlite:" + (folder_ / "base"), {StoreOpening::For::writing, true, false});
    for (int i = 0; i < 3; ++i)
      ledger.write([&](const std::string&, const std::string&) { return key; },
                   {"2026-03-02T06:00:00Z", "anna", "a test", "seamtakt test"},
                   [](LedgerBatch& batch) {
                     for (int k = 0; k < 10; ++k) batch.add({record_kind::note, {}, {}, {{"unit", "U1"}}});
                   });
    before_ = ledger.count();
  }

  /// The store's broken promises after a fault at one point of the append; empty if none.
  std::string broken_promise(const std::string& how, const FaultPoint& point) {
    restore();
    const FaultOutcome run =
        run_with_fault({store_driver(), how, file(), folder_ / "key.pem"}, folder_ / "store", point);
    last_calls_ = run.calls.size();
    failed_ += run.exit_code != 0;
    const std::string place = how + ", " + point.mode + " at call " + std::to_string(point.call) + ": ";
    if (run.exit_code != 0 && run.exit_code != -1 && run.exit_code != 3)
      return place + "exit code " + std::to_string(run.exit_code) + " " + run.error;
    if (run.exit_code == 0 && run.output.empty()) return place + "done, and nothing said";
    if (run.exit_code == 3 && run.error.empty()) return place + "failed, and nothing said";
    if (point.mode == "lie") return seen_or_kept(run) ? "" : place + "a record went, and nothing shows it";
    const VerifyReport report = verified(run.output);
    if (!report.trusted)
      return place + report.summary() + (report.problems.empty() ? "" : ", " + report.problems[0].text());
    if (report.records != before_ && report.records != before_ + 2)
      return place + std::to_string(report.records) + " records";
    // A store that was struck must take the next one.
    const FaultOutcome next =
        run_with_fault({store_driver(), "honest", file(), folder_ / "key.pem"}, folder_ / "store", {});
    if (next.exit_code != 0 || !verified(run.output + next.output).trusted)
      return place + "the next append doesn't do: " + next.error;
    return "";
  }

  std::vector<std::string> broken_promises(const std::string& how, const std::set<std::string>& modes,
                                           std::size_t step) {
    broken_promise(how, {});
    const std::size_t calls = last_calls_;
    EXPECT_GT(calls, 20u);
    failed_ = 0;
    std::vector<std::string> broken;
    std::size_t first = 1;
    for (const std::string& mode : modes) {
      // Each mode begins one call later, so that a short run still strikes calls of every sort.
      for (std::size_t call = first; call <= calls; call += step)
        if (std::string text = broken_promise(how, {mode, static_cast<long>(call), false}); !text.empty())
          broken.push_back(std::move(text));
      first = first % step + 1;
    }
    return broken;
  }
  int failed() const { return failed_; }

 private:
  std::string file() const { return folder_ / "store/records.sqlite"; }
  void restore() const {
    std::filesystem::remove_all(folder_ / "store");
    std::filesystem::create_directory(folder_ / "store");
    std::filesystem::copy_file(folder_ / "base", file());
  }
  VerifyReport verified(const std::string& anchors) const {
    VerifyOptions options;
    if (!anchors.empty()) options.anchors = parse_anchors(anchors, "acknowledged");
    try {
      return verify_ledger(Ledger::open("sqlite:" + file(), {}), options);
    } catch (const std::exception& error) {
      VerifyReport report;
      report.problems.push_back({0, 0, Sentence::verbatim(error.what())});
      return report;
    }
  }
  bool seen_or_kept(const FaultOutcome& run) const {
    const VerifyReport report = verified(run.output);
    if (!report.trusted) return true;
    return report.records == before_ + 2 || (report.records == before_ && run.output.empty());
  }

  ScratchFolder folder_;
  std::uint64_t before_ = 0;
  std::size_t last_calls_ = 0;
  int failed_ = 0;
};

}  // namespace

TEST(StoreIoFaultsTest, any_call_of_an_append_may_fail_and_nothing_said_to_be_stored_is_lost) {
  AppendUnderFaults append;
  const std::set<std::string> modes = {"eio", "enospc", "eintr", "short", "kill", "kill-after", "lie"};
  EXPECT_EQ(all_lines(append.broken_promises("honest", modes, long_tests() ? 1 : 4)), "");
  EXPECT_GT(append.failed(), 30) << "faults that nothing notices show nothing";
}

/// The checks themselves are checked.
TEST(StoreIoFaultsTest, planted_an_acknowledgement_before_the_commit_is_found_out) {
  AppendUnderFaults append;
  EXPECT_FALSE(append.broken_promises("early", {"eio", "kill"}, long_tests() ? 1 : 3).empty());
}

TEST(StoreIoFaultsTest, planted_a_failed_commit_taken_for_a_good_one_is_found_out) {
  AppendUnderFaults append;
  EXPECT_FALSE(append.broken_promises("unchecked", {"eio"}, 1).empty());
}
