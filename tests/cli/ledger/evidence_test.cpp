// A record that an auditor can rely on: one decision for many passes, later calibrations, whose key it is,
// four eyes, manual seams, repairs; through the command line.
#include "cli/ledger/ledger_fixture.hpp"
#include "cli/ledger/verdict_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// The plan of the fixture with a second seam and other words in it.
std::string changed(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

constexpr const char *overdue = "record.instrument.overdue",
                     *manual_header = "unit_serial,seam,pass,welder,schedule,date,result\n";

class Evidence : public VerdictFixture {
 protected:
  /// The plan's instrument is overdue on the day of the welds.
  void make_overdue() {
    plan_ = write("due.weldplan.json", changed(plan_text(), "2026-11-30", "2026-01-31"));
  }
  ProgramRun ledger(std::vector<std::string> words, const std::string& who = "bea") {
    words.insert(words.begin(), "ledger");
    words.insert(words.end(), {"--store", store_, "--who", who, "--why", "a reason"});
    return run_program(words);
  }
  ProgramRun decide(const std::string& decision, const std::string& unit = "U1",
                    const std::string& cause = overdue, const std::string& who = "bea") {
    return ledger({"disposition", "--unit", unit, "--cause", cause, "--decision", decision}, who);
  }
  ProgramRun calibrate(const std::string& date, const std::string& as_found) {
    return ledger({"calibrate", "--instrument", "R1-current", "--certificate", "C-NEXT", "--date", date,
                   "--due", "2027-03-01", "--as-found", as_found});
  }
  int verified() { return run_program({"ledger", "verify", "--store", store_}).exit_code; }
  JsonNode listed(const std::string& kind) {
    const ProgramRun run = run_program({"ledger", "list", "--kind", kind, "--store", store_, "--json"});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return *parse_json(run.output, "output").find("records");
  }
  static std::string number(const JsonNode& record) {
    return std::to_string(static_cast<int>(record.find("seq")->number));
  }
  /// Two seams: S1 by the robot, M1 by hand.
  void plan_with_manual_seam() {
    plan_ = write("m.weldplan.json",
                  changed(plan_text(), R"("path_mm":[[0,0,0],[455,0,0]]}])",
                          R"("path_mm":[[0,0,0],[455,0,0]]},{"id":"M1","joint":"tee","thickness_mm":[10,12],
"base_metals":["steel","steel"],"leg_mm":6,"schedules":["F6"],"by":"manual","path_mm":[[0,9,0],[100,9,0]]}])"));
  }
  JsonNode with_manual(const std::string& row, const std::string& welders = "") {
    std::vector<std::string> more = {"--manual", write("m.csv", manual_header + row + "\n")};
    if (!welders.empty())
      more.insert(more.end(),
                  {"--welders", write("w.csv", "welder,valid_from,valid_until\n" + welders + "\n")});
    return audited(write("a.csv", weld_header + weld("U1", 0, 0, 455)), more);
  }
};

}  // namespace

TEST_F(Evidence, OneDispositionCoversAllPassesOfACauseAndIsShown) {
  make_overdue();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  stored(write("b.csv", weld_header + weld("U1", 10, 0, 455)));
  ASSERT_EQ(shown_unit("U1").find("undecided")->elements.at(0).find("records")->elements.size(), 2u);
  expect_refused(decide("repair"), "a repair is decided by a nonconformance about its pass");
  expect_refused(decide("use-as-is", "U1", "record.length.part"),
                 "expected one of record.instrument.overdue");
  expect_refused(decide("use-as-is", "U9"), "nothing is undecided in unit U9");
  expect_refused(ledger({"disposition", "--decision", "use-as-is"}), "--unit and --cause");
  ASSERT_EQ(decide("use-as-is").exit_code, 0);
  const JsonNode unit = shown_unit("U1");
  EXPECT_TRUE(unit.find("complete")->boolean);
  EXPECT_TRUE(unit.find("undecided")->elements.empty());
  ASSERT_EQ(unit.find("decided")->elements.size(), 1u);
  const JsonNode& decided = unit.find("decided")->elements[0];
  EXPECT_EQ(decided.find("decision")->string, "use-as-is");
  EXPECT_EQ(decided.find("records")->elements.size(), 2u);
  EXPECT_NE(report("U1", "open-items").find("use-as-is"), std::string::npos);
  EXPECT_NE(report("U1", "unit").find("Complete,yes"), std::string::npos);
  EXPECT_EQ(verified(), 0);
  expect_refused(decide("use-as-is"), "nothing is undecided in unit U1");
  // Made void, all is open again.
  ASSERT_EQ(ledger({"void", number(listed("disposition").elements.at(0))}).exit_code, 0);
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean);
}

TEST_F(Evidence, AFailedPassStaysOpenWhenItsNonconformanceIsMadeVoid) {
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 43.4)), {"--close-unit"});
  const std::string opened = number(listed("nonconformance").elements.at(0));
  EXPECT_TRUE(shown_unit("U1").find("undecided")->elements.empty())
      << "it is the nonconformance that is open";
  ASSERT_EQ(ledger({"void", opened}).exit_code, 0);
  const JsonNode unit = shown_unit("U1");
  EXPECT_FALSE(unit.find("complete")->boolean);
  ASSERT_EQ(unit.find("undecided")->elements.size(), 1u);
  EXPECT_EQ(unit.find("undecided")->elements[0].find("cause")->string, "record.length.short");
}

TEST_F(Evidence, ALaterCalibrationInToleranceJudgesItsIntervalAgain) {
  make_overdue();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  expect_refused(calibrate("2026-03-09", "fine"), "in-tolerance");
  ASSERT_EQ(calibrate("2026-03-01", "in-tolerance").exit_code, 0) << "before the weld: it decides nothing";
  EXPECT_TRUE(listed("judgement").elements.empty());
  const ProgramRun after = calibrate("2026-03-09", "in-tolerance");
  ASSERT_EQ(after.exit_code, 0) << after.errors;
  EXPECT_NE(after.output.find("1 pass was judged again."), std::string::npos) << after.output;
  ASSERT_EQ(listed("judgement").elements.size(), 1u);
  EXPECT_TRUE(shown_unit("U1").find("complete")->boolean);
  EXPECT_NE(report("U1", "passes").find("judged again by"), std::string::npos);
  EXPECT_NE(report("U1", "changes").find("verdict (recomputed),undecided,pass"), std::string::npos)
      << report("U1", "changes");
  const JsonNode judged = listed("pass");
  EXPECT_EQ(judged.elements.at(0).find("judged_again_by")->elements.size(), 1u);
  EXPECT_EQ(judged.elements.at(0).find("results")->find("verdict")->string, "pass");
  EXPECT_EQ(verified(), 0);
  // A log that comes later, of a day before that calibration.
  stored(write("b.csv", weld_header + weld("U2", 20, 0, 455)));
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, ACalibrationOutOfToleranceOrMadeVoidLeavesPassesUndecided) {
  make_overdue();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  ASSERT_EQ(calibrate("2026-03-09", "out-of-tolerance").exit_code, 0);
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean);
  ASSERT_EQ(calibrate("2026-03-20", "in-tolerance").exit_code, 0);
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean) << "the first calibration after the weld counts";
  ASSERT_EQ(ledger({"void", number(listed("calibration").elements.at(0))}).exit_code, 0);
  ASSERT_EQ(calibrate("2026-03-10", "in-tolerance").exit_code, 0);
  EXPECT_TRUE(shown_unit("U1").find("complete")->boolean);
  ASSERT_EQ(ledger({"void", number(listed("calibration").elements.back())}).exit_code, 0);
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean) << "what it decided falls with it";
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, ALogThatComesAfterTheCalibrationIsJudgedByIt) {
  make_overdue();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  ASSERT_EQ(calibrate("2026-03-09", "in-tolerance").exit_code, 0);
  stored(write("b.csv", weld_header + weld("U2", 20, 0, 455)));
  EXPECT_TRUE(shown_unit("U2").find("complete")->boolean);
  EXPECT_EQ(listed("judgement").elements.size(), 2u);
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, APersonsKeyBelongsToOneName) {
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  const std::string pass = number(listed("pass").elements.at(0)), key = folder / "p.pem",
                    other = folder / "q.pem";
  ASSERT_EQ(ledger({"person", "--person-key", key}, "bea").exit_code, 0);
  EXPECT_EQ(ledger({"sign", pass, "--person-key", key}, "bea").exit_code, 0);
  expect_refused(ledger({"sign", pass, "--person-key", key}, "carl"), "bea: this key is theirs");
  expect_refused(ledger({"person", "--person-key", key}, "carl"), "bea: this key is theirs");
  // Without `person`, the first to sign with a key is whose it is.
  EXPECT_EQ(ledger({"sign", pass, "--person-key", other}, "carl").exit_code, 0);
  expect_refused(ledger({"sign", pass, "--person-key", other}, "bea"), "carl: this key is theirs");
  expect_refused(ledger({"person", "--person-key", other}, "  "), "--who");
  expect_refused(ledger({"void", number(listed("person").elements.at(0))}), "a record of kind person");
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, WhoOpenedANonconformanceCanNotUseItAsItIsWhereThePlanAsksForFourEyes) {
  const std::string with =
      changed(plan_text(), R"("instruments")", R"("record_requires":["four_eyes"],"instruments")");
  for (const bool four_eyes : {true, false}) {
    SCOPED_TRACE(four_eyes);
    store_ = "sqlite:" + (folder / (four_eyes ? "four.sqlite" : "two.sqlite")).string();
    plan_ = write("f.weldplan.json", four_eyes ? with : plan_text());
    const JsonNode result = stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
    EXPECT_EQ(first_text(result, "record.required.missing"), "") << "it is no column";
    const std::string pass = number(listed("pass").elements.at(0));
    ASSERT_EQ(ledger({"nonconformance", pass}, "bea").exit_code, 0);
    const std::string opened = number(listed("nonconformance").elements.at(0));
    const auto use = [&](const std::string& who) {
      return ledger({"disposition", opened, "--decision", "use-as-is"}, who);
    };
    if (four_eyes) {
      expect_refused(use("bea"), "the plan asks for four eyes");
      expect_refused(use(" BEA "), "the plan asks for four eyes");
      EXPECT_EQ(ledger({"disposition", opened, "--decision", "repair", "--schedule", "F6"}, "bea").exit_code,
                0);
    }
    EXPECT_EQ(use(four_eyes ? "carl" : "bea").exit_code, 0);
  }
}

TEST_F(Evidence, WhoStoredUndecidedPassesCanNotUseThemAsTheyAreWithFourEyes) {
  plan_ =
      write("f.weldplan.json", changed(changed(plan_text(), "2026-11-30", "2026-01-31"), R"("instruments")",
                                       R"("record_requires":["four_eyes"],"instruments")"));
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)));
  expect_refused(decide("use-as-is", "U1", overdue, "anna"), "the plan asks for four eyes");
  EXPECT_EQ(decide("use-as-is", "U1", overdue, "bea").exit_code, 0);
}

TEST_F(Evidence, AManualSeamNeedsItsWelderScheduleAndDate) {
  plan_with_manual_seam();
  const auto complete = [](const JsonNode& result) { return first_unit(result).find("complete")->boolean; };
  const std::string list = "W07,2025-01-01,2026-12-31";
  EXPECT_TRUE(complete(with_manual("U1,M1,1,W07,F6,2026-03-02,pass")));
  EXPECT_TRUE(complete(with_manual("U1,M1,1,W07,F6,2026-03-02,pass", list)));
  const std::pair<const char*, const char*> open[] = {
      {"U1,M1,1,,F6,2026-03-02,pass", "manual.welder.missing"},
      {"U1,M1,1,W07,,2026-03-02,pass", "manual.schedule.unknown"},
      {"U1,M1,1,W07,F99,2026-03-02,pass", "manual.schedule.unknown"},
      {"U1,M1,1,W07,F6,,pass", "manual.date.missing"},
      {"U1,M1,1,W07,F6,yesterday,pass", "manual.date.missing"},
      {"U1,M1,1,W07,F6,2026-02-30,pass", "manual.date.missing"},
      {"U1,M1,1,W08,F6,2026-03-02,pass", "manual.welder.not-valid"},
      {"U1,M1,1,W07,F6,2027-01-01,pass", "manual.welder.not-valid"},
      {"U1,M1,1,W07,F6,2024-12-31,pass", "manual.welder.not-valid"}};
  for (const auto& [row, rule] : open) {
    SCOPED_TRACE(row);
    const JsonNode result = with_manual(row, list);
    EXPECT_FALSE(complete(result));
    EXPECT_NE(first_text(result, rule), "");
    EXPECT_EQ(first_unit(result).find("open_items")->elements.at(0).find("cause")->string, rule);
  }
  const std::string welders = write("bad.csv", "welder,valid_until\nW07,soon\n");
  EXPECT_EQ(audit(folder / "a.csv", {"--welders", welders}).exit_code, 2);
}

TEST_F(Evidence, AManualSeamsDateLiesWithinItsUnitsTime) {
  plan_with_manual_seam();
  const auto found = [&](const std::string& date) {
    const JsonNode result = audited(
        write("a.csv", weld_header + weld("U1", 0, 0, 455)),
        {"--manual", write("m.csv", manual_header + ("U1,M1,1,W07,F6," + date + ",pass\n")), "--unit-times",
         write("u.csv",
               "unit_serial,weldment,start,end\nU1,BD,2026-03-02T05:00:00Z,2026-03-03T18:00:00Z\n")});
    return first_text(result, "manual.date.outside") != "";
  };
  EXPECT_FALSE(found("2026-03-02"));
  EXPECT_FALSE(found("2026-03-03"));
  EXPECT_TRUE(found("2026-02-27"));
  EXPECT_TRUE(found("2026-03-06"));
  // Without unit times by the days of the robots' passes, to a month.
  const auto by_passes = [&](const std::string& date) {
    return first_text(with_manual("U1,M1,1,W07,F6," + date + ",pass"), "manual.date.outside") != "";
  };
  EXPECT_FALSE(by_passes("2026-04-02"));
  EXPECT_TRUE(by_passes("2026-04-03"));
  EXPECT_TRUE(by_passes("1999-01-01"));
}

TEST_F(Evidence, AManualSeamThatIsOpenKeepsItsStoredUnitIncompleteUntilItIsDecided) {
  plan_with_manual_seam();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)),
         {"--manual", write("m.csv", manual_header + std::string("U1,M1,1,,F6,2026-03-02,pass\n"))});
  const JsonNode unit = shown_unit("U1");
  EXPECT_FALSE(unit.find("complete")->boolean);
  ASSERT_EQ(unit.find("undecided")->elements.size(), 1u);
  EXPECT_EQ(unit.find("undecided")->elements[0].find("cause")->string, "manual.welder.missing");
  ASSERT_EQ(decide("use-as-is", "U1", "manual.welder.missing").exit_code, 0);
  EXPECT_TRUE(shown_unit("U1").find("complete")->boolean);
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, ARepairsLogIsJudgedWithWhatTheStoreHas) {
  plan_with_manual_seam();
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 455)),
         {"--manual", write("m.csv", manual_header + std::string("U1,M1,1,W07,F6,2026-03-02,fail\n"))});
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean);
  // The robot's seam welded again: the manual one is in the store, and what is open of it stays so.
  const JsonNode repair = stored(write("b.csv", weld_header + weld("U1", 20, 0, 455)));
  EXPECT_TRUE(first_unit(repair).find("missing_passes")->elements.empty());
  EXPECT_TRUE(first_unit(repair).find("complete_robot")->boolean);
  EXPECT_FALSE(first_unit(repair).find("complete_manual")->boolean);
  const auto& items = first_unit(repair).find("open_items")->elements;
  ASSERT_EQ(items.size(), 1u);
  EXPECT_EQ(items[0].find("cause")->string, "manual.result.fail");
  const JsonNode opened = listed("nonconformance");
  ASSERT_EQ(opened.elements.size(), 1u) << "opened although the table names no weldment";
  ASSERT_EQ(ledger({"disposition", number(opened.elements[0]), "--decision", "use-as-is"}).exit_code, 0);
  const JsonNode again = stored(write("c.csv", weld_header + weld("U1", 40, 0, 455)));
  EXPECT_TRUE(first_unit(again).find("complete")->boolean);
}

TEST_F(Evidence, APartIsFoundByTheIdentityItWasCorrectedTo) {
  stored(write("a.csv", weld_header + weld("U7", 0, 0, 231)));
  ASSERT_EQ(
      ledger({"correct", number(listed("pass").elements.at(0)), "--set", "results.unit_serial=U1"}).exit_code,
      0);
  const JsonNode second = stored(write("b.csv", weld_header + weld("U1", 10, 224, 455)));
  EXPECT_EQ(first_pass(second).find("coverage")->find("with_records")->elements.size(), 1u);
  EXPECT_EQ(first_pass(second).find("verdict")->string, "pass");
  const JsonNode other = stored(write("c.csv", weld_header + weld("U7", 30, 224, 455)));
  EXPECT_EQ(first_pass(other).find("verdict")->string, "undecided") << "and no more by the old one";
  EXPECT_EQ(verified(), 0);
}

TEST_F(Evidence, ACorrectedLengthMovesCoverageAndOpenRules) {
  stored(write("a.csv", weld_header + weld("U1", 0, 0, 43.4)));
  const std::string pass = number(listed("pass").elements.at(0));
  const auto now = [&] {
    const ProgramRun run = run_program({"ledger", "show", pass, "--store", store_, "--json"});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return *parse_json(run.output, "output").find("results_now");
  };
  ASSERT_EQ(ledger({"correct", pass, "--set", "results.length_mm=455"}).exit_code, 0);
  const JsonNode longer = now();
  EXPECT_NEAR(longer.find("coverage")->find("covered_mm")->number, 455, 1e-9);
  EXPECT_FALSE(longer.find("coverage")->find("is_part")->boolean);
  ASSERT_EQ(longer.find("undecided_by")->elements.size(), 1u);
  EXPECT_EQ(longer.find("undecided_by")->elements[0].string, "record.corrected");
  const JsonNode unit = shown_unit("U1");
  ASSERT_EQ(unit.find("undecided")->elements.size(), 1u);
  EXPECT_EQ(unit.find("undecided")->elements[0].find("cause")->string, "record.corrected");
  ASSERT_EQ(ledger({"correct", pass, "--set", "results.seam=S2"}).exit_code, 0);
  EXPECT_EQ(now().find("coverage")->kind, JsonNode::Kind::null) << "of another seam nothing is known";
  expect_refused(ledger({"correct", pass, "--set", "results.undecided_by=x"}), "which follows from others");
}
