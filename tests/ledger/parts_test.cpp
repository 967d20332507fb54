// Passes that continue in another log, and passes that were left undecided: their unit's state in the store.
#include <gtest/gtest.h>

#include "ledger/bundle/bundle.hpp"
#include "records/judge/length_judgement.hpp"
#include "records/keep/effective_revision.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"
#include "records/keep/record_store.hpp"
#include "records/keep/stored_parts.hpp"
#include "store_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// A pass over S1 of 400 mm, from `from_mm` to `to_mm`.
PassRecord part_of(const std::string& unit, double from_mm, double to_mm, Verdict verdict,
                   const std::string& started) {
  PassRecord pass;
  pass.unit_serial = unit;
  pass.weldment = "BD";
  pass.seam = "S1";
  pass.pass = 1;
  pass.schedule = "F6";
  pass.robot = "R1";
  pass.started = started;
  pass.date = started.substr(0, 10);
  pass.samples = static_cast<std::uint64_t>(to_mm);
  PassCoverage& coverage = pass.coverage.emplace();
  coverage.spans = {{from_mm, to_mm}};
  coverage.welded_mm = to_mm - from_mm;
  coverage.path_mm = coverage.needed_mm = 400;
  coverage.allowed_short_mm = 10;
  coverage.is_part = to_mm - from_mm < 390;
  pass.verdict = verdict;
  if (verdict == Verdict::undecided) pass.undecided_by = {length_part_rule};
  if (verdict == Verdict::fail) pass.failed_by = {length_short_rule};
  return pass;
}

class Parts : public testing::Test {
 protected:
  Parts() : ledger_(Ledger::open(uri_, {StoreOpening::For::writing, true, false})) {}

  IngestOutcome import(PassRecord pass, const std::string& log, const Findings& findings = {}) {
    AuditResult result;
    pass.source = pass.source_last = log;
    UnitRecord unit;
    unit.unit_serial = pass.unit_serial;
    unit.weldment = pass.weldment;
    unit.complete = unit.complete_robot = pass.verdict == Verdict::pass;
    result.units.push_back(unit);
    result.findings = findings;
    if (pass.verdict == Verdict::fail)
      result.findings.push_back({length_short_rule, Severity::fail, pass.place(), 40.0, 400.0, "mm",
                                 Sentence::verbatim("Too short."), ""});
    result.passes.push_back(std::move(pass));
    AuditedLog audited;
    audited.name = log;
    audited.sha256 = hex(Sha256().add(log).take());
    result.logs.push_back(audited);
    IngestNote note;
    note.stamp = stamp(at_++);
    return append_audit(ledger_, keys_.provider(), result, note);
  }
  std::uint64_t add(const LedgerEntry& entry) {
    std::uint64_t seq = 0;
    ledger_.write(keys_.provider(), stamp(at_++), [&](LedgerBatch& batch) { seq = batch.add(entry); });
    return seq;
  }
  void TearDown() override {
    const VerifyReport report = verified(uri_);
    EXPECT_TRUE(report.trusted) << problems_text(report);
    if (const int second = second_verdict(folder_ / "store.sqlite", {}, folder_); second >= 0) {
      EXPECT_EQ(second, 0) << "reference/verify_log.py";
    }
  }

  ScratchFolder folder_;
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_;
  KeyRing keys_;
  int at_ = 0;
};

constexpr const char *morning = "2026-03-02T06:00:00Z", *later = "2026-03-02T07:00:00Z",
                     *evening = "2026-03-02T18:00:00Z";

}  // namespace

TEST_F(Parts, an_undecided_pass_keeps_its_unit_incomplete_and_is_an_open_item_with_its_reason) {
  PassRecord pass = part_of("U1", 0, 400, Verdict::undecided, morning);
  pass.undecided_by = {"record.instrument.overdue"};
  const Findings findings = {{"record.instrument.overdue",
                              Severity::warn,
                              pass.place(),
                              {},
                              {},
                              "",
                              Sentence::verbatim("Instrument V-7 was due."),
                              "ISO 17662 (recalled)"}};
  const IngestOutcome stored = import(pass, "a.csv", findings);
  const UnitStatus open = unit_status(ledger_, "U1");
  EXPECT_EQ(open.complete, std::optional<bool>(false));
  ASSERT_EQ(open.open_causes.size(), 1u);
  EXPECT_EQ(open.open_causes[0].cause, "record.instrument.overdue");
  EXPECT_EQ(open.open_causes[0].text(), "Instrument V-7 was due.");
  EXPECT_EQ(open.open_causes[0].passes, std::vector<std::string>{"S1/pass 1"});
  // A person takes it over as a nonconformance, and decides.
  const std::uint64_t raised = add(raised_nonconformance_entry(ledger_, stored.last_seq));
  EXPECT_EQ(unit_status(ledger_, "U1").open_items(), 1u);
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(false));
  add(disposition_entry(ledger_, {raised, Decision::use_as_is, "", 0}));
  EXPECT_EQ(unit_status(ledger_, "U1").open_items(), 0u);
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
}

TEST_F(Parts, a_later_whole_weld_that_passed_settles_an_undecided_one) {
  PassRecord pass = part_of("U1", 0, 400, Verdict::undecided, morning);
  pass.undecided_by = {"record.instrument.overdue"};
  import(pass, "a.csv");
  import(part_of("U1", 0, 400, Verdict::pass, later), "b.csv");
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
}

TEST_F(Parts, a_part_is_open_until_the_next_log_completes_the_pass) {
  import(part_of("U1", 0, 205, Verdict::undecided, morning), "a.csv");
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(false));
  const StoredWelds stored = stored_welds(ledger_, part_of("U1", 200, 400, Verdict::pass, later));
  ASSERT_EQ(stored.parts.size(), 1u);
  EXPECT_EQ(stored.parts[0].coverage.spans.at(0).to_mm, 205);
  EXPECT_TRUE(stored_welds(ledger_, part_of("U1", 0, 205, Verdict::pass, morning)).parts.empty())
      << "the same weld once more";
  const IngestOutcome second = import(part_of("U1", 200, 400, Verdict::pass, later), "b.csv");
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
  // The second part is void: the first one alone is short again.
  add(void_entry(ledger_, ledger_.record(second.last_seq)));
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(false));
}

TEST_F(Parts, of_parts_together_the_least_certain_one_says_how_short_they_may_be) {
  // By the logged travel speed: shorter by 20 mm may still be the whole.
  PassRecord by_speed = part_of("U1", 0, 200, Verdict::undecided, morning);
  by_speed.coverage->spans.clear();
  by_speed.coverage->allowed_short_mm = 20;
  import(by_speed, "a.csv");
  // The audit that reads the second log passes both together, and the unit's status is the same.
  import(part_of("U1", 200, 385, Verdict::pass, later), "b.csv");
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
}

TEST_F(Parts, a_pass_is_short_again_when_the_part_it_was_judged_with_is_void) {
  const IngestOutcome first = import(part_of("U1", 0, 205, Verdict::undecided, morning), "a.csv");
  import(part_of("U1", 200, 400, Verdict::pass, later), "b.csv");
  add(void_entry(ledger_, ledger_.record(first.last_seq)));
  const UnitStatus status = unit_status(ledger_, "U1");
  EXPECT_EQ(status.complete, std::optional<bool>(false));
  ASSERT_EQ(status.open_causes.size(), 1u);
  EXPECT_EQ(status.open_causes[0].cause, length_part_rule);
}

TEST_F(Parts, a_later_unit_on_the_robot_makes_the_part_a_nonconformance) {
  const IngestOutcome first = import(part_of("U1", 0, 40, Verdict::undecided, morning), "a.csv");
  const IngestOutcome second = import(part_of("U2", 0, 400, Verdict::pass, later), "b.csv");
  EXPECT_EQ(second.nonconformances, 1u);
  const UnitStatus status = unit_status(ledger_, "U1");
  ASSERT_EQ(status.nonconformances.size(), 1u);
  EXPECT_EQ(status.nonconformances[0].about, first.last_seq);
  EXPECT_NE(status.nonconformances[0].text().find("40 mm where the seam needs 400 mm: 360 mm short"),
            std::string::npos)
      << status.nonconformances[0].text();
  EXPECT_TRUE(status.open_causes.empty()) << "one open item, not two";
  EXPECT_EQ(import(part_of("U3", 0, 400, Verdict::pass, evening), "c.csv").nonconformances, 0u)
      << "once is enough";
}

TEST_F(Parts, another_robot_an_earlier_unit_or_a_whole_pass_closes_nothing) {
  import(part_of("U1", 0, 40, Verdict::undecided, later), "a.csv");
  PassRecord other = part_of("U2", 0, 400, Verdict::pass, evening);
  other.robot = "R2";
  EXPECT_EQ(import(other, "b.csv").nonconformances, 0u);
  EXPECT_EQ(import(part_of("U3", 0, 400, Verdict::pass, morning), "c.csv").nonconformances, 0u);
  import(part_of("U1", 30, 400, Verdict::pass, evening), "d.csv");
  EXPECT_EQ(import(part_of("U4", 0, 400, Verdict::pass, "2026-03-03T06:00:00Z"), "e.csv").nonconformances,
            0u);
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
}

TEST_F(Parts, closing_the_unit_of_a_stored_log_opens_a_nonconformance_once) {
  import(part_of("U1", 0, 40, Verdict::undecided, morning), "a.csv");
  const IngestOutcome closed = import(part_of("U1", 0, 40, Verdict::fail, morning), "a.csv");
  EXPECT_FALSE(closed.added);
  EXPECT_EQ(closed.nonconformances, 1u);
  EXPECT_NE(closed.text().find("1 nonconformance opened for passes that stayed too short"),
            std::string::npos);
  EXPECT_EQ(import(part_of("U1", 0, 40, Verdict::fail, morning), "a.csv").nonconformances, 0u);
}

TEST_F(Parts, a_repair_that_was_decided_on_is_known) {
  const IngestOutcome first = import(part_of("U1", 0, 400, Verdict::pass, morning), "a.csv");
  const std::uint64_t raised = add(raised_nonconformance_entry(ledger_, first.last_seq));
  EXPECT_FALSE(stored_welds(ledger_, part_of("U1", 100, 140, Verdict::pass, later)).being_repaired);
  add(disposition_entry(ledger_, {raised, Decision::repair, "F6", 0}));
  EXPECT_TRUE(stored_welds(ledger_, part_of("U1", 100, 140, Verdict::pass, later)).being_repaired);
}

TEST_F(Parts, the_record_names_the_certificate_that_the_pass_was_judged_by) {
  PassRecord pass = part_of("U1", 0, 400, Verdict::pass, morning);
  pass.instruments = {{"R1-current", "current", "C-2", "2026-02-20"}};
  Plan plan;
  Instrument instrument;
  instrument.id = "R1-current";
  instrument.quantity = "current";
  instrument.certificate = "C-9";
  instrument.due = "2026-11-30";
  plan.instruments = {instrument};
  AuditResult result;
  pass.source = pass.source_last = "log.csv";
  result.passes = {pass};
  AuditedLog log;
  log.name = "log.csv";
  log.sha256 = std::string(64, 'a');
  result.logs = {log};
  IngestNote note;
  note.stamp = stamp(at_++);
  note.plan = &plan;
  const JsonNode body =
      body_of(ledger_.record(append_audit(ledger_, keys_.provider(), result, note).last_seq));
  const JsonNode& kept = body.find("instruments")->elements.at(0);
  EXPECT_EQ(body_text(kept, "certificate"), "C-2");
  EXPECT_EQ(body_text(kept, "due"), "2026-02-20");
}
