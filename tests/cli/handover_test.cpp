// What leaves the plan for others: the order sheet for whoever programs the robots, the levelled sequence,
// and the plan of a shift without a robot.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <set>

#include "base/csv/csv.hpp"
#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

std::vector<std::string> serials_of(const JsonNode& line) {
  std::vector<std::string> serials;
  for (const JsonNode& unit : line.find("units")->elements) serials.push_back(text_of(unit, "serial"));
  return serials;
}

std::vector<std::string> column_of(const CsvTable& table, const char* name) {
  std::vector<std::string> values;
  const std::size_t at = table.require(name);
  for (const CsvRow& row : table.rows) values.push_back(row.fields[at]);
  return values;
}

std::string number_text_of(double value) {
  return std::to_string(static_cast<int>(value));
}

/// One pass of a robot as the timeline has it.
struct Arc {
  std::string seam, pass, direction;
  double start_s;
};

/// By weldment and robot, in order of time; an intermittent seam's later runs are of the same pass.
std::map<std::string, std::vector<Arc>> arcs_of(const JsonNode& cycles) {
  std::map<std::string, std::vector<Arc>> arcs;
  for (const JsonNode& cycle : cycles.find("weldments")->elements) {
    std::set<std::string> seen;
    for (const JsonNode& move : cycle.find("moves")->elements) {
      if (text_of(move, "kind") != "arc") continue;
      const Arc arc{text_of(move, "seam"), number_text_of(number(move, "pass")),
                    move.find("reversed")->boolean ? "reversed" : "as-drawn", number(move, "start_s")};
      if (seen.insert(arc.seam + "/" + arc.pass).second)
        arcs[text_of(cycle, "weldment") + " " + text_of(move, "robot")].push_back(arc);
    }
  }
  for (auto& [robot, list] : arcs)
    std::stable_sort(list.begin(), list.end(),
                     [](const Arc& a, const Arc& b) { return a.start_s < b.start_s; });
  return arcs;
}

class Handover : public FolderTest {
 protected:
  void SetUp() override { setenv("SOURCE_DATE_EPOCH", "1767225600", 1); }
  void TearDown() override { unsetenv("SOURCE_DATE_EPOCH"); }

  /// The demo with a manual schedule for each seam that R2 alone reaches, if asked for, and with hours.
  std::string shop(bool with_schedules) {
    std::string text = bytes_of(demo_plan);
    const std::string cell = "\"orientation_change_s\":", list = "\"robots\": [\"R2\"]",
                      schedule = "\"manual_schedule\": \"F4M\", ";
    text.insert(text.find(cell), "\"manual\": {\"arc_share\": 0.25, \"setup_s_per_seam\": 90},\n  ");
    if (with_schedules)
      for (std::size_t at = 0; (at = text.find(list, at)) != std::string::npos;
           at += schedule.size() + list.size())
        text.insert(at, schedule);
    return write("shop.weldplan.json", text);
  }
  ProgramRun line(const std::string& plan, std::vector<std::string> more) {
    more.insert(more.begin(), {"line", plan, "--runs", "3"});
    return run_program(more);
  }
};

}  // namespace

TEST_F(Handover, TheOrderSheetReadBackIsTheTimeline) {
  ASSERT_EQ(run_program({"report", demo_plan, "--table", "order", "--output", path("order.csv")}).exit_code,
            0);
  const CsvTable table = read_csv(path("order.csv"));
  EXPECT_EQ(std::vector<std::string>(table.header.begin(), table.header.begin() + 10),
            (std::vector<std::string>{"weldment", "robot", "number", "seam", "pass", "direction",
                                      "orientation", "schedule", "planned_start_s", "length_mm"}));
  auto arcs = arcs_of(json_of(run_program({"cycle", demo_plan, "--json"})));
  std::map<std::string, std::size_t> next;
  for (const CsvRow& row : table.rows) {
    const std::string robot = row.fields[0] + " " + row.fields[1];
    const std::size_t at = next[robot]++;
    ASSERT_LT(at, arcs[robot].size()) << robot;
    const Arc& arc = arcs[robot][at];
    EXPECT_EQ(row.fields[2], std::to_string(at + 1));
    EXPECT_EQ(row.fields[3], arc.seam);
    EXPECT_EQ(row.fields[4], arc.pass);
    EXPECT_EQ(row.fields[5], arc.direction);
    double start_s = -1;
    ASSERT_TRUE(parse_number(row.fields[8], start_s));
    EXPECT_EQ(start_s, arc.start_s);
  }
  EXPECT_EQ(next.size(), 6u) << "three weldments, two robots";
  for (const auto& [robot, list] : arcs) EXPECT_EQ(next[robot], list.size()) << robot;
}

TEST_F(Handover, TheOrderSheetHasScheduleLengthAndOrientationOfEachPass) {
  ASSERT_EQ(run_program({"report", demo_plan, "--table", "order", "--output", path("order.csv")}).exit_code,
            0);
  const CsvTable table = read_csv(path("order.csv"));
  std::map<std::string, const CsvRow*> rows;
  for (const CsvRow& row : table.rows) rows[row.fields[0] + "/" + row.fields[3] + "/" + row.fields[4]] = &row;
  EXPECT_EQ(rows.size(), table.rows.size()) << "each pass once";
  std::size_t found = 0;
  const JsonNode evaluation = json_of(run_program({"evaluate", demo_plan, "--json"}));
  for (const JsonNode& pass : evaluation.find("passes")->elements) {
    const auto row = rows.find(text_of(pass, "weldment") + "/" + text_of(pass, "seam") + "/" +
                               number_text_of(number(pass, "pass")));
    if (row == rows.end()) continue;  // a manual seam
    ++found;
    EXPECT_EQ(row->second->fields[7], text_of(pass, "schedule"));
    double length_mm = -1;
    ASSERT_TRUE(parse_number(row->second->fields[9], length_mm));
    EXPECT_DOUBLE_EQ(length_mm, number(pass, "length_mm"));
  }
  EXPECT_EQ(found, rows.size());
  const JsonNode plan = parse_json(bytes_of(demo_plan), "demo");
  for (const JsonNode& weldment : plan.find("weldments")->elements)
    for (const JsonNode& seam : weldment.find("seams")->elements) {
      const auto row = rows.find(text_of(weldment, "id") + "/" + text_of(seam, "id") + "/1");
      if (row == rows.end()) continue;
      const JsonNode* orientation = seam.find("orientation");
      EXPECT_EQ(row->second->fields[6], orientation ? orientation->string : "");
    }
}

TEST_F(Handover, ThePageHasTheOrderSheetInTheReadersLanguage) {
  ASSERT_EQ(run_program({"report", demo_plan, "--output", path("r.html")}).exit_code, 0);
  EXPECT_NE(bytes_of(path("r.html")).find("<h2>Order sheet</h2>"), std::string::npos);
  ASSERT_EQ(run_program({"report", demo_plan, "--language", "de", "--output", path("r.html")}).exit_code, 0);
  EXPECT_NE(bytes_of(path("r.html")).find("<h2>Reihenfolge der Roboter</h2>"), std::string::npos);
}

TEST_F(Handover, TheLevelledSequenceIsReadAgainAsTheGivenOne) {
  const std::string file = path("levelled.csv");
  const ProgramRun levelled =
      line(demo_plan, {"--orders", demo_orders, "--level", "--output-orders", file, "--json"});
  ASSERT_LE(levelled.exit_code, 1) << levelled.errors;
  const CsvTable table = read_csv(file);
  EXPECT_EQ(column_of(table, "unit_serial"), serials_of(json_of(levelled)));
  EXPECT_EQ(std::vector<std::string>(table.header.begin(), table.header.begin() + 3),
            (std::vector<std::string>{"unit_serial", "weldment", "due"}));
  const CsvTable given = read_csv(demo_orders);
  std::map<std::string, std::vector<std::string>> due;
  for (const CsvRow& row : given.rows) due[row.fields[given.require("unit_serial")]] = row.fields;
  for (const CsvRow& row : table.rows) {
    EXPECT_EQ(row.fields[1], due[row.fields[0]][given.require("weldment")]);
    EXPECT_EQ(row.fields[2], due[row.fields[0]][given.require("due")]);
  }
  const ProgramRun again = line(demo_plan, {"--orders", file, "--json"});
  ASSERT_LE(again.exit_code, 1) << again.errors;
  EXPECT_EQ(serials_of(json_of(again)), serials_of(json_of(levelled)));
}

TEST_F(Handover, ASequenceIsWrittenTwiceAndCoversNothingElse) {
  const std::string file = path("levelled.csv"), mine = path("mine.csv"), table = path("passes.csv");
  const std::vector<std::string> words = {"--orders", demo_orders, "--level", "--output-orders"};
  const auto to = [&](const std::string& output) {
    std::vector<std::string> all = words;
    all.push_back(output);
    return line(demo_plan, all);
  };
  ASSERT_LE(to(file).exit_code, 1);
  const std::string first = bytes_of(file);
  ASSERT_LE(to(file).exit_code, 1);
  EXPECT_EQ(bytes_of(file), first);
  std::filesystem::copy_file(demo_orders, mine);
  ASSERT_EQ(run_program({"report", demo_plan, "--output", table}).exit_code, 0);
  for (const std::string& other : {mine, table}) {
    const std::string before = bytes_of(other);
    const ProgramRun run = to(other);
    EXPECT_EQ(run.exit_code, 2) << other;
    EXPECT_NE(run.errors.find("expected a new name"), std::string::npos) << run.errors;
    EXPECT_EQ(run.output, "");
    EXPECT_EQ(bytes_of(other), before);
  }
  const ProgramRun report = run_program({"report", demo_plan, "--output", file});
  EXPECT_EQ(report.exit_code, 2);
  EXPECT_NE(report.errors.find("found orders written by this program"), std::string::npos) << report.errors;
  EXPECT_EQ(bytes_of(file), first);
  const ProgramRun itself = line(demo_plan, {"--orders", file, "--level", "--output-orders", file});
  EXPECT_EQ(itself.exit_code, 2);
  EXPECT_NE(itself.errors.find("the orders that are read"), std::string::npos) << itself.errors;
}

TEST_F(Handover, ASequenceIsWrittenOnlyWhereItIsLevelled) {
  const ProgramRun run = line(demo_plan, {"--orders", demo_orders, "--output-orders", path("o.csv")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(run.errors, "--output-orders: found no --level, expected --level with it\n");
  EXPECT_FALSE(std::filesystem::exists(path("o.csv")));
}

TEST_F(Handover, ASerialThatLooksLikeAFormulaComesBackAsItWas) {
  const std::string plan = write("p.weldplan.json", R"({"format": "weldplan", "version": 1,
    "weldments": [{"id": "A", "seams": []}, {"id": "B", "seams": []}],
    "line": {"stages": [{"id": "weld", "time": 60}]}})");
  const std::string orders = write("o.csv", "unit_serial,weldment,due\n-A1,A,\n=2,B,2026-03-02\n");
  ASSERT_EQ(line(plan, {"--orders", orders, "--level", "--output-orders", path("l.csv")}).exit_code, 0);
  EXPECT_NE(bytes_of(path("l.csv")).find("'=2,B,2026-03-02,"), std::string::npos) << bytes_of(path("l.csv"));
  EXPECT_EQ(serials_of(json_of(line(plan, {"--orders", path("l.csv"), "--json"}))),
            (std::vector<std::string>{"=2", "-A1"}));
}

TEST_F(Handover, UnitsThatWaitStayInTheSequence) {
  const ProgramRun run = line(demo_plan, {"--orders", demo_orders, "--carts", demo_folder + "carts",
                                          "--level", "--output-orders", path("l.csv"), "--json"});
  ASSERT_LE(run.exit_code, 1) << run.errors;
  EXPECT_EQ(serials_of(json_of(run)).size(), 23u);
  const std::vector<std::string> written = column_of(read_csv(path("l.csv")), "unit_serial"),
                                 given = column_of(read_csv(demo_orders), "unit_serial");
  EXPECT_EQ(std::set<std::string>(written.begin(), written.end()),
            std::set<std::string>(given.begin(), given.end()));
  EXPECT_EQ(written.size(), given.size());
}

TEST_F(Handover, SeamsThatNobodyReachesAreWeldedByHandAndNoUnitWaits) {
  const std::string plan = shop(true);
  const ProgramRun run =
      line(plan, {"--orders", demo_orders, "--without-robot", "R2", "--to-manual", "--json"});
  const JsonNode result = json_of(run);
  EXPECT_EQ(number(result, "units_not_run"), 0);
  EXPECT_EQ(number(result, "unit_count"), 24);
  std::set<std::string> by_hand;
  for (const JsonNode& moved : result.find("moved_seams")->elements) {
    const std::string to = text_of(moved, "to");
    if (to == "R1") {
      EXPECT_EQ(moved.find("hand_time_s")->kind, JsonNode::Kind::null);
      continue;
    }
    EXPECT_EQ(to, "manual");
    EXPECT_EQ(text_of(moved, "schedule"), "F4M");
    EXPECT_EQ(text_of(moved, "basis"), "manual schedule");
    EXPECT_GT(number(moved, "hand_time_s"), 90);
    by_hand.insert(text_of(moved, "weldment") + "/" + text_of(moved, "seam"));
  }
  EXPECT_FALSE(by_hand.empty());
  std::set<std::string> said;
  for (const JsonNode& finding : result.find("findings")->elements) {
    EXPECT_NE(text_of(finding, "rule"), "cell.robot-out.unreached");
    EXPECT_NE(text_of(finding, "rule"), "cycle.robot.none");
    if (text_of(finding, "rule") == "cell.to-manual") said.insert(text_of(finding, "where"));
  }
  EXPECT_EQ(said, by_hand);
}

TEST_F(Handover, ACycleThatIsShorterWithoutARobotSaysWhy) {
  const JsonNode result = json_of(run_program(
      {"cycle", shop(true), "--weldment", "TT", "--without-robot", "R2", "--to-manual", "--json"}));
  const JsonNode whole = json_of(run_program({"cycle", shop(true), "--weldment", "TT", "--json"}));
  std::vector<const JsonNode*> notes;
  for (const JsonNode& finding : result.find("findings")->elements)
    if (text_of(finding, "rule") == "cell.fewer-is-faster") notes.push_back(&finding);
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_EQ(text_of(*notes[0], "where"), "TT");
  EXPECT_EQ(text_of(*notes[0], "severity"), "note");
  EXPECT_EQ(number(*notes[0], "value"), number(result.find("weldments")->elements[0], "cycle_time_s"));
  EXPECT_EQ(number(*notes[0], "limit"), number(whole.find("weldments")->elements[0], "cycle_time_s"));
  EXPECT_NE(text_of(*notes[0], "text").find("of its seams are welded by hand instead."), std::string::npos);
  // Seams that nobody welds are no reason to be faster.
  const ProgramRun unwelded = run_program({"cycle", demo_plan, "--without-robot", "R2", "--json"});
  EXPECT_EQ(unwelded.output.find("cell.fewer-is-faster"), std::string::npos);
}

TEST_F(Handover, TheShiftsPlanGivesTheShiftsResult) {
  const std::string plan = shop(true), shift = path("shift.weldplan.json");
  const ProgramRun run = line(plan, {"--orders", demo_orders, "--without-robot", "R2", "--to-manual",
                                     "--output-plan", shift, "--json"});
  ASSERT_LE(run.exit_code, 1) << run.errors;
  const ProgramRun again = line(shift, {"--orders", demo_orders, "--json"});
  ASSERT_LE(again.exit_code, 1) << again.errors;
  EXPECT_EQ(number(json_of(again), "makespan_s"), number(json_of(run), "makespan_s"));
  EXPECT_EQ(number(json_of(again), "units_not_run"), 0);
  const ProgramRun cycle = run_program({"cycle", plan, "--without-robot", "R2", "--to-manual",
                                        "--output-plan", path("of-cycle.weldplan.json"), "--summary"});
  ASSERT_LE(cycle.exit_code, 1) << cycle.errors;
  EXPECT_EQ(bytes_of(path("of-cycle.weldplan.json")), bytes_of(shift));
  EXPECT_NE(cycle.output.find("\nWhere the seams go:\n"), std::string::npos) << cycle.output.substr(0, 900);
  EXPECT_NE(cycle.output.find(" min by F4M\n"), std::string::npos);
  EXPECT_NE(cycle.output.find("\nThe shift's plan is in " + path("of-cycle.weldplan.json") + ".\n"),
            std::string::npos);
  const ProgramRun same =
      line(plan, {"--orders", demo_orders, "--without-robot", "R2", "--to-manual", "--output-plan", plan});
  EXPECT_EQ(same.exit_code, 2);
  EXPECT_NE(same.errors.find("the plan that is read"), std::string::npos) << same.errors;
}

TEST_F(Handover, HoursWithoutAManualScheduleAreMarkedAndFail) {
  const ProgramRun run = run_program({"cycle", shop(false), "--without-robot", "R2", "--to-manual"});
  EXPECT_EQ(run.exit_code, 1) << run.errors;
  EXPECT_NE(run.output.find(" h, no manual schedule\n"), std::string::npos) << run.output.substr(0, 900);
  EXPECT_NE(run.output.find("a robot's isn't weldable by hand"), std::string::npos);
  const JsonNode result =
      json_of(run_program({"cycle", shop(false), "--without-robot", "R2", "--to-manual", "--json"}));
  int marked = 0;
  for (const JsonNode& moved : result.find("moved_seams")->elements) {
    if (text_of(moved, "to") != "manual") continue;
    EXPECT_EQ(moved.find("schedule")->kind, JsonNode::Kind::null);
    EXPECT_EQ(text_of(moved, "basis"), "no manual schedule");
    ++marked;
  }
  EXPECT_GT(marked, 0);
  for (const JsonNode& cycle : result.find("weldments")->elements)
    EXPECT_TRUE(cycle.find("unwelded_seams")->elements.empty());
}

TEST_F(Handover, WithoutToManualTheUnitsWaitAsBefore) {
  const JsonNode result =
      json_of(line(shop(true), {"--orders", demo_orders, "--without-robot", "R2", "--json"}));
  EXPECT_GT(number(result, "units_not_run"), 0);
  int nobody = 0;
  for (const JsonNode& moved : result.find("moved_seams")->elements)
    nobody += moved.find("to")->kind == JsonNode::Kind::null;
  EXPECT_GT(nobody, 0);
  const ProgramRun text = run_program({"cycle", demo_plan, "--without-robot", "R2", "--summary"});
  EXPECT_NE(text.output.find(": nobody, it waits\n"), std::string::npos) << text.output.substr(0, 900);
}

TEST_F(Handover, HandWorkWithoutAnArcShareOrAStageIsRefused) {
  const ProgramRun no_share = run_program({"cycle", demo_plan, "--without-robot", "R2", "--to-manual"});
  EXPECT_EQ(no_share.exit_code, 2);
  EXPECT_EQ(no_share.errors,
            "--to-manual: found a cell without hand welding, expected the arc share and the set-up of a seam "
            "under cell.manual\n");
  std::string text = bytes_of(shop(true));
  const std::string stage = "\"time\": \"manual\"";
  ASSERT_NE(text.find(stage), std::string::npos);
  text.replace(text.find(stage), stage.size(), "\"time\": 60");
  const std::string plan = write("no-stage.weldplan.json", text);
  const ProgramRun no_stage = line(plan, {"--orders", demo_orders, "--without-robot", "R2", "--to-manual"});
  EXPECT_EQ(no_stage.exit_code, 2);
  EXPECT_EQ(no_stage.output, "");
  EXPECT_NE(no_stage.errors.find("found no stage for hand work, expected a stage with the time \"manual\""),
            std::string::npos)
      << no_stage.errors;
}

TEST_F(Handover, AShiftsPlanIsWrittenOnlyWhereEachSeamHasSomebody) {
  const std::string file = path("shift.weldplan.json");
  const ProgramRun nothing = run_program({"cycle", demo_plan, "--output-plan", file});
  EXPECT_EQ(nothing.exit_code, 2);
  EXPECT_EQ(
      nothing.errors,
      "--output-plan: found neither --without-robot nor --to-manual, expected one of the two, or both\n");
  const ProgramRun unreached =
      run_program({"cycle", demo_plan, "--without-robot", "R2", "--output-plan", file});
  EXPECT_EQ(unreached.exit_code, 2);
  EXPECT_NE(unreached.errors.find(" seams that no robot reaches, expected --to-manual with it"),
            std::string::npos)
      << unreached.errors;
  EXPECT_FALSE(std::filesystem::exists(file));
}
