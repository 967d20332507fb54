// The ledger's rules: corrections, nonconformances, calibration, schedules in force, imports.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "base/error.hpp"
#include "ledger/bundle/bundle.hpp"
#include "records/keep/effective_revision.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_changes.hpp"
#include "records/keep/record_store.hpp"
#include "store_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

PassRecord pass_of(const std::string& unit, const std::string& seam, Verdict verdict,
                   const std::string& date = "2026-03-02") {
  PassRecord pass;
  pass.unit_serial = unit;
  pass.weldment = "BD";
  pass.seam = seam;
  pass.pass = 1;
  pass.schedule = "F6";
  pass.verdict = verdict;
  pass.date = date;
  pass.source = pass.source_last = "log.csv";
  return pass;
}

AuditResult audit_of(std::vector<PassRecord> passes, const std::string& sha256,
                     const std::string& name = "log.csv") {
  AuditResult result;
  result.passes = std::move(passes);
  for (PassRecord& pass : result.passes) {
    pass.source = pass.source_last = name;
    if (pass.verdict == Verdict::fail)
      result.findings.push_back({"record.limit", Severity::fail, pass.place(), 200.0, 220.0, "A",
                                 Sentence::verbatim("Too low."), "plan limit"});
    UnitRecord unit;
    unit.unit_serial = pass.unit_serial;
    unit.weldment = "BD";
    unit.complete = unit.complete_robot = pass.verdict != Verdict::fail;
    result.units.push_back(unit);
  }
  AuditedLog log;
  log.name = name;
  log.bytes = 100;
  log.rows = 10;
  log.sha256 = sha256;
  result.logs.push_back(log);
  return result;
}

class LedgerTest : public testing::Test {
 protected:
  LedgerTest()
      : uri_("sqlite:" + (folder_ / "store.sqlite")),
        ledger_(Ledger::open(uri_, {StoreOpening::For::writing, true, false})) {}
  IngestOutcome import(const AuditResult& result, const Plan* plan = nullptr) {
    IngestNote note;
    note.stamp = stamp(at_++);
    note.plan = plan;
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
  }

  ScratchFolder folder_;
  std::string uri_;
  Ledger ledger_;
  KeyRing keys_;
  int at_ = 0;
};

Plan plan_with(int revision, const std::string& effective_from, const std::string& due = "2026-12-31") {
  Plan plan;
  Schedule schedule;
  schedule.id = "F6";
  schedule.revision = revision;
  schedule.status = "approved";
  schedule.effective_from = effective_from;
  schedule.process = "135";
  schedule.wire = "W";
  schedule.wire_feed_speed_m_min = 8;
  schedule.arc_voltage_V = 28;
  schedule.contact_tip_distance_mm = 18;
  schedule.travel_speed_mm_s = 7 + revision;
  plan.schedules.push_back(schedule);
  Instrument instrument;
  instrument.id = "R1-current";
  instrument.quantity = "current";
  instrument.due = due;
  instrument.certificate = "C-1";
  plan.instruments.push_back(instrument);
  return plan;
}

const std::string sha_a(64, 'a'), sha_b(64, 'b');

}  // namespace

TEST_F(LedgerTest, the_same_log_twice_adds_nothing_and_says_so) {
  const AuditResult result = audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a);
  const IngestOutcome once = import(result);
  EXPECT_TRUE(once.added);
  const std::uint64_t count = ledger_.count();
  const IngestOutcome twice = import(result);
  EXPECT_FALSE(twice.added);
  EXPECT_NE(twice.text().find("Nothing added"), std::string::npos);
  EXPECT_EQ(twice.first_seq, once.first_seq);
  EXPECT_EQ(ledger_.count(), count);
  AuditResult renamed = result;
  renamed.logs[0].name = renamed.passes[0].source = renamed.passes[0].source_last = "copy.csv";
  EXPECT_FALSE(import(renamed).added) << "the content counts, not the name";
}

TEST_F(LedgerTest, an_import_that_fails_leaves_nothing_and_can_be_run_again) {
  import(audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a));
  const std::uint64_t count = ledger_.count();
  EXPECT_THROW(ledger_.write(keys_.provider(), stamp(5),
                             [](LedgerBatch& batch) {
                               for (int i = 0; i < 3000; ++i) batch.add(some_pass(i));
                               throw std::runtime_error("power cut");
                             }),
               std::runtime_error);
  EXPECT_EQ(ledger_.count(), count);
  EXPECT_TRUE(verified(uri_).trusted);
  EXPECT_TRUE(import(audit_of({pass_of("U2", "S1", Verdict::pass)}, sha_b)).added);
}

TEST_F(LedgerTest, a_failed_pass_opens_a_nonconformance_and_only_a_passed_re_test_closes_its_repair) {
  EXPECT_EQ(import(audit_of({pass_of("U1", "S1", Verdict::fail), pass_of("U1", "S2", Verdict::pass)}, sha_a))
                .nonconformances,
            1u);
  auto open = nonconformances(ledger_, "U1");
  ASSERT_EQ(open.size(), 1u);
  EXPECT_TRUE(open[0].open);
  EXPECT_EQ(open[0].text(), "Too low.");
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(false));
  EXPECT_EQ(unit_status(ledger_, "U1").failed, 1u);
  EXPECT_EQ(unit_status(ledger_, "U1").undecided, 0u);
  EXPECT_THROW(disposition_entry(ledger_, {open[0].seq, Decision::repair, "", 0}), InputError)
      << "a repair names its schedule";
  add(disposition_entry(ledger_, {open[0].seq, Decision::repair, "F6R", 0}));
  EXPECT_TRUE(nonconformances(ledger_, "U1")[0].open) << "the repair isn't tested yet";

  import(audit_of({pass_of("U1", "S1", Verdict::undecided), pass_of("U1", "S3", Verdict::pass)}, sha_b,
                  "second.csv"));
  const std::uint64_t undecided = ledger_.backend().find("pass", pass_lookup_key("U1", "BD", "S1", 1)).back();
  const std::uint64_t other = ledger_.backend().find("pass", pass_lookup_key("U1", "BD", "S3", 1)).back();
  EXPECT_THROW(disposition_entry(ledger_, {open[0].seq, Decision::repair, "F6R", undecided}), InputError);
  EXPECT_THROW(disposition_entry(ledger_, {open[0].seq, Decision::repair, "F6R", other}), InputError);
  EXPECT_THROW(disposition_entry(ledger_, {open[0].seq, Decision::repair, "F6R", open[0].about}), InputError);

  const IngestOutcome again =
      import(audit_of({pass_of("U1", "S1", Verdict::pass)}, std::string(64, 'c'), "third.csv"));
  EXPECT_EQ(again.already_stored.size(), 2u);
  const std::uint64_t retest = ledger_.backend().find("pass", pass_lookup_key("U1", "BD", "S1", 1)).back();
  add(disposition_entry(ledger_, {open[0].seq, Decision::repair, "F6R", retest}));
  EXPECT_FALSE(nonconformances(ledger_, "U1")[0].open);
  EXPECT_EQ(unit_status(ledger_, "U1").complete, std::optional<bool>(true));
  EXPECT_THROW(disposition_entry(ledger_, {open[0].seq, Decision::scrap, "", 0}), InputError)
      << "closed is closed";
  add(void_entry(ledger_, ledger_.record(retest)));
  EXPECT_TRUE(nonconformances(ledger_, "U1")[0].open) << "the re-test doesn't count any more";
}

TEST_F(LedgerTest, used_as_is_closes_and_scrap_leaves_the_unit_incomplete) {
  import(audit_of({pass_of("U1", "S1", Verdict::fail), pass_of("U2", "S1", Verdict::fail)}, sha_a));
  const auto open = nonconformances(ledger_, "");
  ASSERT_EQ(open.size(), 2u);
  EXPECT_EQ(unit_serials(ledger_), (std::vector<std::string>{"U1", "U2"}));
  add(disposition_entry(ledger_, {open[0].seq, Decision::use_as_is, "", 0}));
  add(disposition_entry(ledger_, {open[1].seq, Decision::scrap, "", 0}));
  EXPECT_FALSE(nonconformances(ledger_, "")[0].open);
  EXPECT_EQ(unit_status(ledger_, "U2").complete, std::optional<bool>(false));
  EXPECT_TRUE(unit_status(ledger_, "U2").scrapped);
}

TEST_F(LedgerTest, a_correction_is_a_new_record_and_both_values_stay) {
  import(audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a));
  const std::uint64_t seq = ledger_.backend().find("pass", pass_lookup_key("U1", "BD", "S1", 1)).front();
  const LedgerRow before = ledger_.record(seq);
  const std::uint64_t correction = add(correction_of(ledger_, seq, "results.seam", "S4"));
  EXPECT_EQ(ledger_.record(seq).body, before.body);
  EXPECT_EQ(body_text(corrected_body(ledger_, before), "results.seam"), "S4");
  EXPECT_EQ(changes_of(ledger_, seq).corrections, std::vector<std::uint64_t>{correction});
  add(void_entry(ledger_, ledger_.record(correction)));
  EXPECT_EQ(body_text(corrected_body(ledger_, before), "results.seam"), "S1")
      << "a void correction corrects nothing";
  EXPECT_THROW(correction_of(ledger_, seq, "results.nothing", "1"), InputError);
  EXPECT_THROW(correction_of(ledger_, seq, "kind", "pass"), InputError);
  EXPECT_THROW(correction_of(ledger_, seq, "results.seam", "S1"), InputError);
  EXPECT_THROW(correction_entry(ledger_, before, {}, {}), InputError);
  EXPECT_THROW(parse_corrected_value("no sign"), InputError);
  EXPECT_THROW(void_entry(ledger_, ledger_.record(1)), InputError);
}

TEST_F(LedgerTest, another_key_and_a_clock_that_is_behind_are_refused) {
  add(some_pass(1));
  const SigningKey thief = SigningKey::generate();
  const auto with = [](const SigningKey& key) {
    return [key](const std::string&, const std::string&) { return key; };
  };
  EXPECT_THROW(ledger_.write(with(thief), stamp(9), [](LedgerBatch& batch) { batch.add(some_pass(2)); }),
               InputError);
  EXPECT_THROW(
      ledger_.write(keys_.provider(), stamp(-10), [](LedgerBatch& batch) { batch.add(some_pass(2)); }),
      InputError);
  ledger_.write(keys_.provider(), stamp(-3), [](LedgerBatch& batch) { batch.add(some_pass(2)); });
}

TEST_F(LedgerTest, names_stand_beside_the_records_and_not_in_them) {
  IngestNote note;
  note.stamp = stamp(0, "Jos\xC3\xA9 M\xC3\xBCller");
  AuditResult result = audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a);
  ManualSeam seam;
  seam.unit_serial = "U1";
  seam.seam = "S9";
  seam.welder = "W07";
  seam.result = "pass";
  result.manual.push_back(seam);
  append_audit(ledger_, keys_.provider(), result, note);
  ledger_.each_record(1, [&](const LedgerRow& row) {
    EXPECT_EQ(row.body.find("M\xC3\xBCller"), std::string::npos);
    EXPECT_EQ(row.body.find("W07"), std::string::npos);
    EXPECT_EQ(ledger_.person_name(body_text(body_of(row), "who")), "Jos\xC3\xA9 M\xC3\xBCller");
    return true;
  });
}

TEST_F(LedgerTest, hostile_names_come_back_byte_for_byte) {
  const std::vector<std::string> names = {"'; DROP TABLE rec;--",
                                          "=1+1",
                                          "<script>alert(1)</script>",
                                          "\xF0\x9F\x98\x80",
                                          "a\nb\tc\x01",
                                          "\\\"",
                                          "../../etc/passwd",
                                          "%s%n",
                                          "\xE2\x80\xAE"
                                          "abc",
                                          "U/1~2"};
  std::vector<PassRecord> passes;
  for (const std::string& name : names) passes.push_back(pass_of(name, name, Verdict::pass));
  import(audit_of(passes, sha_a, names[0]));
  for (const std::string& name : names) {
    const auto found = ledger_.backend().find("unit", name);
    ASSERT_EQ(found.size(), 2u) << name;
    EXPECT_EQ(body_text(body_of(ledger_.record(found.back())), "results.unit_serial"), name);
    EXPECT_EQ(ledger_.backend().find("pass", pass_lookup_key(name, "BD", name, 1)).size(), 1u);
  }
}

TEST_F(LedgerTest, schedules_are_kept_in_full_once_a_revision) {
  const Plan two = plan_with(2, "2026-01-12"), three = plan_with(3, "2026-04-01");
  import(audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a), &two);
  import(audit_of({pass_of("U2", "S1", Verdict::pass)}, sha_b), &two);
  EXPECT_EQ(ledger_.backend().find("schedule", "F6").size(), 1u);
  import(audit_of({pass_of("U3", "S1", Verdict::pass, "2026-04-02")}, std::string(64, 'c')), &three);
  EXPECT_EQ(ledger_.backend().find("schedule", "F6").size(), 2u);
  const StoreHistory history = history_of(ledger_, three);
  ASSERT_EQ(history.schedules.size(), 2u);
  EXPECT_EQ(history.schedules[0].schedule.travel_speed_mm_s, 9);
  EXPECT_EQ(effective_revision(three, history, "F6", "2026-03-02")->revision, 2);
  EXPECT_EQ(effective_revision(three, history, "F6", "2026-04-01")->revision, 3);
  EXPECT_EQ(effective_revision(three, history, "F6", "2025-12-31"), nullptr);
}

TEST_F(LedgerTest, a_pass_is_judged_by_the_revision_in_force_on_its_day) {
  const Plan two = plan_with(2, "2026-01-12"), three = plan_with(3, "2026-04-01");
  import(audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a), &two);
  const StoreHistory history = history_of(ledger_, three);
  const auto audit_with = [](const Plan& plan) {
    const Verdict verdict = plan.schedules[0].revision == 2 ? Verdict::pass : Verdict::fail;
    return audit_of({pass_of("U5", "S1", verdict, "2026-03-02"), pass_of("U5", "S2", verdict, "2026-04-02")},
                    sha_b);
  };
  int asked = 0;
  const AuditResult judged = judged_in_force(audit_with(three), three, history, [&](const Plan& then) {
    ++asked;
    return audit_with(then);
  });
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(judged.passes[0].verdict, Verdict::pass);
  EXPECT_EQ(judged.passes[1].verdict, Verdict::fail);
  EXPECT_EQ(judged.findings.size(), 1u) << "the first pass's finding went with the wrong revision";
  const AuditResult early =
      judged_in_force(audit_of({pass_of("U6", "S1", Verdict::pass, "2025-11-01")}, sha_b), three, history,
                      [&](const Plan&) { return AuditResult(); });
  EXPECT_EQ(early.passes[0].verdict, Verdict::undecided);
  EXPECT_EQ(early.findings.back().rule, "record.schedule.not-in-force");
}

TEST_F(LedgerTest, a_schedule_changed_without_a_new_revision_is_told) {
  const Plan two = plan_with(2, "2026-01-12");
  import(audit_of({pass_of("U1", "S1", Verdict::pass)}, sha_a), &two);
  const AuditResult same =
      judged_in_force(audit_of({pass_of("U2", "S1", Verdict::pass)}, sha_b), two, history_of(ledger_, two),
                      [](const Plan&) { return AuditResult(); });
  EXPECT_TRUE(same.findings.empty()) << same.findings[0].text();
  Plan changed = two;
  changed.schedules[0].travel_speed_mm_s = 20;
  const AuditResult result = audit_of({pass_of("U2", "S1", Verdict::pass)}, sha_b);
  const AuditResult judged =
      judged_in_force(result, changed, history_of(ledger_, changed), [&](const Plan&) { return result; });
  ASSERT_FALSE(judged.findings.empty());
  EXPECT_EQ(judged.findings.back().rule, "record.schedule.changed");
}

TEST_F(LedgerTest, the_store_knows_which_calibration_held_on_a_day) {
  const Plan plan = plan_with(2, "2026-01-12", "2026-02-28");
  const auto calibrate = [&](const std::string& date, const std::string& due) {
    add({record_kind::calibration,
         {},
         {{"results", "{\"instrument\":\"R1-current\",\"certificate\":\"C-2\",\"date\":\"" + date +
                          "\",\"due\":\"" + due + "\"}"}},
         {{"instrument", "R1-current"}}});
  };
  EXPECT_EQ(plan_in_force(plan, history_of(ledger_, plan), "2026-03-02").instruments[0].due, "2026-02-28");
  calibrate("2026-03-01", "2027-03-01");
  const StoreHistory history = history_of(ledger_, plan);
  EXPECT_EQ(plan_in_force(plan, history, "2026-02-28").instruments[0].due, "2026-02-28")
      << "not calibrated yet";
  EXPECT_EQ(plan_in_force(plan, history, "2026-03-02").instruments[0].due, "2027-03-01");
  EXPECT_EQ(plan_in_force(plan, history, "2026-03-02").instruments[0].certificate, "C-2");
  calibrate("2026-03-02", "2026-03-10");
  EXPECT_EQ(plan_in_force(plan, history_of(ledger_, plan), "2026-03-05").instruments[0].due, "2026-03-10");
}

TEST_F(LedgerTest, a_bundle_is_imported_once_and_an_interrupted_import_goes_on) {
  for (int i = 0; i < 5; ++i) add(some_pass(i));
  std::string bundle, part;
  export_bundle(ledger_, {}, [&](std::string_view piece) { bundle += piece; });
  for (int i = 5; i < 9; ++i) add(some_pass(i));
  std::string whole;
  export_bundle(ledger_, {}, [&](std::string_view piece) { whole += piece; });
  const auto target =
      open_ledger_backend("sqlite:" + (folder_ / "copy.sqlite"), {StoreOpening::For::writing, true, false});
  const auto import_text = [&](const std::string& text) {
    std::istringstream in(text);
    return import_bundle(*target, in, "bundle.jsonl");
  };
  EXPECT_EQ(import_text(bundle).records_added, 6u);
  EXPECT_EQ(import_text(bundle).records_added, 0u);
  EXPECT_THROW(import_text(whole.substr(0, whole.size() / 2)), InputError) << "a cut bundle";
  EXPECT_LE(import_text(whole).records_added, 4u);
  EXPECT_EQ(import_text(whole).records_added, 0u);
  EXPECT_THROW(import_text(bundle), InputError) << "older than the store";
  EXPECT_TRUE(verified("sqlite:" + (folder_ / "copy.sqlite")).trusted);
}

TEST_F(LedgerTest, an_altered_bundle_is_refused_by_its_line) {
  for (int i = 0; i < 3; ++i) add(some_pass(i));
  std::string bundle;
  export_bundle(ledger_, {}, [&](std::string_view piece) { bundle += piece; });
  const auto refused = [&](const std::string& from, const std::string& to) {
    std::string text = bundle;
    const auto at = text.find(from);
    ASSERT_NE(at, std::string::npos) << from;
    text.replace(at, from.size(), to);
    const ScratchFolder other;
    const auto target =
        open_ledger_backend("sqlite:" + (other / "copy.sqlite"), {StoreOpening::For::writing, true, false});
    std::istringstream in(text);
    EXPECT_THROW(import_bundle(*target, in, "bundle.jsonl"), InputError) << from;
  };
  refused("0.501", "0.601");
  refused("\"verdict\":\"pass\"", "\"verdict\": \"pass\"");
  refused("{\"head\":", "{\"hat\":");
  refused("\"signature\":\"", "\"signature\":\"00");
  refused("\"utc\":\"2026", "\"utc\":\"2027");
  refused("seamtakt-bundle", "some-bundle");
  refused("\"version\":1", "\"version\":2");
  refused("\"kind\":\"pass\"", "\"kind\":\"gift\"");
}

TEST_F(LedgerTest, proofs_from_the_store_hold_against_its_signed_head) {
  for (int i = 0; i < 20; ++i) add(some_pass(i));
  const SignedHead head = *ledger_.backend().snapshot().newest_head;
  const auto leaves = ledger_.leaves(head.n);
  EXPECT_EQ(merkle_root(leaves), head.root);
  EXPECT_TRUE(
      check_inclusion(leaf_digest(ledger_.record(7).body), 6, head.n, inclusion_proof(leaves, 6), head.root));
  const SignedHead old = ledger_.backend().heads(4, 1)[0];
  EXPECT_TRUE(check_consistency(old.n, old.root, head.n, head.root, consistency_proof(leaves, old.n)));
}
