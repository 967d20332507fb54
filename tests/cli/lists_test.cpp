// `import` and `export`: lists of seams and schedules, into a plan and out of it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Lists : public FolderTest {
 protected:
  Lists() : plan(path("plan.weldplan.json")) { std::filesystem::copy_file(demo_plan, plan); }

  JsonNode result_of(std::vector<std::string> words) {
    words.push_back("--json");
    const ProgramRun run = run_program(words);
    EXPECT_TRUE(run.exit_code == 0 || run.exit_code == 2) << run.errors;
    return parse_json(run.output, "output");
  }
  static double count(const JsonNode& result, const char* state) {
    return result.find("counts")->find(state)->number;
  }
  static double seams_of_demo() {
    const JsonNode whole = parse_json(bytes_of(demo_plan), demo_plan);
    double count = 0;
    for (const JsonNode& weldment : whole.find("weldments")->elements)
      count += static_cast<double>(weldment.find("seams")->elements.size());
    return count;
  }
  static double schedules_of_demo() {
    const JsonNode whole = parse_json(bytes_of(demo_plan), demo_plan);
    return static_cast<double>(whole.find("schedules")->elements.size());
  }

  const std::string plan;
};

TEST_F(Lists, ImportOfAnExportLeavesThePlanAsItIs) {
  const std::string before = bytes_of(plan);
  for (const std::string ending : {"csv", "xlsx"})
    for (const std::string language : {"en", "de"}) {
      const std::string seams = path("seams-" + language + "." + ending),
                        schedules = path("schedules-" + language + "." + ending);
      const ProgramRun made = run_program({"export", plan, "--seams", seams, "--schedules", schedules,
                                           "--language", language, "--units", "us"});
      ASSERT_EQ(made.exit_code, 0) << made.errors;
      const JsonNode read = result_of({"import", seams, "--into", plan});
      EXPECT_EQ(count(read, "unchanged"), seams_of_demo());
      EXPECT_EQ(count(read, "changed") + count(read, "new") + count(read, "refused"), 0);
      const JsonNode again = result_of({"import", schedules, "--into", plan, "--schedules"});
      EXPECT_EQ(count(again, "unchanged"), schedules_of_demo());
      EXPECT_EQ(bytes_of(plan), before);
    }
}

TEST_F(Lists, OneWorkbookMayHoldBoth) {
  const std::string both = path("both.xlsx");
  ASSERT_EQ(run_program({"export", plan, "--seams", both, "--schedules", both}).exit_code, 0);
  EXPECT_EQ(count(result_of({"import", both, "--into", plan}), "unchanged"), seams_of_demo());
  EXPECT_EQ(count(result_of({"import", both, "--into", plan, "--schedules"}), "unchanged"),
            schedules_of_demo());
}

TEST_F(Lists, NewSeamsAreWrittenAndTheFileBeforeIsKept) {
  const std::string before = bytes_of(plan);
  const std::string list =
      write("list.csv",
            "Naht;Stoßart;Blechdicke 1;Blechdicke 2;Schenkel [mm];Schweißanweisung;x1;y1;z1;x2;y2;z2\n"
            "N1;T-Stoß;8;6,5;5;F5S;0;0;0;250,5;0;0\n");
  const ProgramRun run = run_program(
      {"import", list, "--into", plan, "--weldment", "BD", "--metal", "S355J2", "--default", "position=PB"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_NE(run.output.find("1 new, 0 changed, 0 unchanged, 0 refused"), std::string::npos) << run.output;
  EXPECT_EQ(bytes_of(plan + "~"), before);
  const JsonNode written = parse_json(bytes_of(plan), plan);
  const JsonNode& seam = written.find("weldments")->elements[0].find("seams")->elements.back();
  EXPECT_EQ(seam.find("id")->string, "N1");
  EXPECT_EQ(seam.find("joint")->string, "tee");
  EXPECT_EQ(seam.find("thickness_mm")->elements[1].number, 6.5);
  EXPECT_EQ(seam.find("base_metals")->elements[1].string, "S355J2");
  EXPECT_EQ(seam.find("position")->string, "PB");
  EXPECT_EQ(seam.find("path_mm")->elements[1].elements[0].number, 250.5);
}

TEST_F(Lists, ABadCellKeepsTheWholeListOutUnlessItsRowIsLeftOut) {
  const std::string before = bytes_of(plan);
  const std::string list = write("list.csv", "weldment,id,gap_mm\nBD,S01,wide\nBD,S02,0.75\n");
  const ProgramRun run = run_program({"import", list, "--into", plan});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  EXPECT_NE(run.errors.find("list.csv:2:3: found \"wide\""), std::string::npos) << run.errors;
  EXPECT_EQ(bytes_of(plan), before);
  EXPECT_FALSE(std::filesystem::exists(plan + "~"));
  const JsonNode preview = result_of({"import", list, "--into", plan, "--skip-refused", "--preview"});
  EXPECT_EQ(bytes_of(plan), before) << "a preview writes nothing";
  ASSERT_EQ(preview.find("refused")->elements.size(), 1u);
  EXPECT_EQ(preview.find("refused")->elements[0].find("heading")->string, "gap_mm");
  EXPECT_EQ(run_program({"import", list, "--into", plan, "--skip-refused"}).exit_code, 0);
  const JsonNode written = parse_json(bytes_of(plan), plan);
  const JsonNode& seams = *written.find("weldments")->elements[0].find("seams");
  EXPECT_EQ(seams.elements[1].find("gap_mm")->number, 0.75);
  EXPECT_EQ(seams.elements[0].find("gap_mm")->number, 0.3);
}

TEST_F(Lists, OutputLeavesThePlanThatIsReadAlone) {
  const std::string before = bytes_of(plan);
  const std::string list = write("list.csv", "weldment,id,gap_mm\nBD,S02,0.75\n");
  ASSERT_EQ(run_program({"import", list, "--into", plan, "--output", path("new.weldplan.json")}).exit_code,
            0);
  EXPECT_EQ(bytes_of(plan), before);
  EXPECT_NE(bytes_of(path("new.weldplan.json")).find("0.75"), std::string::npos);
}

TEST_F(Lists, BadUsageIsRefusedInOneLine) {
  const std::string list = write("list.csv", "id,gap_mm\nS02,0.75\n");
  for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
           {"import", list, "--into", plan},  // three weldments
           {"import", list, "--into", plan, "--weldment", "BD", "--default", "gap"},
           {"import", list, "--into", plan, "--weldment", "BD", "--columns", list},
           {"import", path("none.xlsx"), "--into", plan},
           {"import", plan, "--into", plan},
           {"export", plan},
           {"export", plan, "--seams", path("a.ods")},
           {"export", plan, "--seams", path("a.csv"), "--schedules", path("a.csv")},
           {"export", plan, "--seams", path("a.csv"), "--weldment", "none"},
           {"export", plan, "--seams", plan}}) {
    const ProgramRun run = run_program(words);
    EXPECT_EQ(run.exit_code, 2) << words[0] << " " << words.back();
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
    EXPECT_TRUE(run.output.empty()) << run.output;
  }
}

TEST_F(Lists, TwoPlansAreComparedAndJoinedByIds) {
  const std::string one = path("one.weldplan.json"), other = path("other.weldplan.json"),
                    joined = path("joined.weldplan.json");
  const auto changed = [&](const std::string& row, const std::string& to) {
    const std::string list = write("list.csv", "weldment,id,gap_mm,position\n" + row);
    ASSERT_EQ(run_program({"import", list, "--into", plan, "--output", to}).exit_code, 0);
  };
  changed("BD,S01,0.75,\n", one);
  changed("BD,S01,,PA\nBD,S02,0.6,\n", other);
  const JsonNode differences = result_of({"diff", plan, one});
  ASSERT_EQ(differences.find("differences")->elements.size(), 1u);
  EXPECT_EQ(differences.find("differences")->elements[0].find("where")->string,
            "weldments/BD/seams/S01/gap_mm");
  EXPECT_EQ(differences.find("differences")->elements[0].find("after")->number, 0.75);
  ASSERT_EQ(run_program({"merge", plan, one, other, "--output", joined}).exit_code, 0);
  const JsonNode all = result_of({"diff", plan, joined});
  EXPECT_EQ(all.find("differences")->elements.size(), 3u);
  std::filesystem::remove(joined);
  changed("BD,S01,0.5,\n", other);
  const ProgramRun conflict = run_program({"merge", plan, one, other, "--output", joined});
  EXPECT_EQ(conflict.exit_code, 1);
  EXPECT_NE(conflict.output.find("weldments/BD/seams/S01/gap_mm"), std::string::npos) << conflict.output;
  EXPECT_FALSE(std::filesystem::exists(joined));
  EXPECT_EQ(run_program({"merge", plan, one, other, "--output", joined, "--prefer", "b"}).exit_code, 0);
  EXPECT_EQ(run_program({"merge", plan, one, other, "--output", plan}).exit_code, 2) << "a plan that is read";
}

/// A workbook opened and saved by another program, which keeps what a person relies on.
TEST_F(Lists, AnotherProgramsOpenAndSaveLosesNothing) {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  if (!length || std::string(length) != "long")
    GTEST_SKIP() << "takes half a minute: SEAMTAKT_TEST_LENGTH=long runs it";
  if (std::system("command -v soffice >/dev/null 2>&1") != 0) GTEST_SKIP() << "soffice is not installed";
  const std::string seams = path("seams.xlsx");
  ASSERT_EQ(run_program({"export", plan, "--seams", seams}).exit_code, 0);
  for (const std::string ending : {"xlsx", "ods"}) {
    const std::string out = path("saved-" + ending);
    const std::string command = "soffice -env:UserInstallation=file://" + path("profile") +
                                " --headless --convert-to " + ending + " --outdir " + out + " " + seams +
                                " >/dev/null 2>&1";
    ASSERT_EQ(std::system(command.c_str()), 0) << command;
    const JsonNode read = result_of({"import", out + "/seams." + ending, "--into", plan});
    EXPECT_EQ(count(read, "unchanged"), seams_of_demo()) << ending;
    EXPECT_EQ(count(read, "refused"), 0) << ending;
  }
}

}  // namespace
