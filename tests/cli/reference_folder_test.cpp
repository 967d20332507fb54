// reference/ is the only place of a table: with each number of a table changed in a folder that
// SEAMTAKT_REFERENCE names, the result that follows from it changes.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "cli/program.hpp"
#include "support/scratch_folder.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

using Row = std::function<std::string(const char* column)>;

/// A table, the numbers in it that are changed, and the command whose text follows from a row; an empty
/// command passes the row over.
struct Case {
  const char* file;
  std::vector<const char*> columns;
  std::function<std::vector<std::string>(const Row&)> command;
};

std::ostream& operator<<(std::ostream& out, const Case& each) {
  return out << each.file;
}

/// A bound's middle: of the plate that a row is for.
std::string thickness_of(const Row& row) {
  const auto number = [&](const char* column, double where_empty) {
    double value = where_empty;
    parse_number(row(column), value);
    return value;
  };
  const double least = number("thickness_above_mm", number("thickness_from_mm", 0));
  return number_text((least + number("thickness_up_to_mm", number("thickness_below_mm", least + 50))) / 2);
}

/// Pcm and hydrogen level that lead to a group.
std::vector<std::string> preheat_of(const Row& row) {
  const char group = row("group")[0];
  const char* pcm[] = {"0.17", "0.2", "0.25", "0.3", "0.35", "0.35", "0.35"};
  return {
      "calc",        "preheat",        "--method",         "aws-hydrogen",
      "--pcm",       pcm[group - 'A'], "--hydrogen-level", group == 'G' ? "H3" : group == 'F' ? "H2" : "H1",
      "--restraint", row("restraint"), "--thickness",      thickness_of(row)};
}

std::vector<std::string> cooling_of(const Row& row, const char* thickness) {
  return {"calc", "cooling-time", "--joint", row("joint"), "--heat-input", "1", "--thickness", thickness};
}

std::vector<Case> cases() {
  using Words = std::vector<std::string>;
  return {
      {"processes.csv",
       {"thermal_efficiency"},
       [](const Row& row) {
         return Words{"calc", "heat-input", "--process", row("number"),    "--voltage",
                      "25",   "--current",  "250",       "--travel-speed", "8"};
       }},
      {"shape_factors.csv", {"f2", "f2_low", "f2_high"}, [](const Row& row) { return cooling_of(row, "5"); }},
      {"shape_factors.csv", {"f3"}, [](const Row& row) { return cooling_of(row, "60"); }},
      {"transition_current.csv",
       {"transition_current_A"},
       [](const Row& row) {
         return Words{"calc",  "transfer", "--wire-material", row("material"),
                      "--gas", row("gas"), "--wire-diameter", row("diameter_mm")};
       }},
      {"preheat_aws.csv", {"preheat_C"}, preheat_of},
      {"hydrogen_scales.csv",
       {"above_ml_100g"},
       [](const Row& row) {
         if (row("above_ml_100g") == "0") return Words{};
         return Words{"calc", "preheat", "--cet", "0.3", "--hydrogen", row("above_ml_100g")};
       }},
      {"gases.csv",
       {"co2_up_to_pct"},
       [](const Row& row) {
         if (row("id")[0] != 'M' || row("co2_up_to_pct").empty() || !row("o2_up_to_pct").empty() ||
             !row("h2_up_to_pct").empty())
           return Words{};
         return Words{"calc",
                      "transfer",
                      "--wire-material",
                      "mild-steel",
                      "--wire-diameter",
                      "1.2",
                      "--gas",
                      row("id") + "-ArC-" + row("co2_up_to_pct")};
       }},
      {"wires.csv",
       {"alpha_mm_s_A", "beta_per_s_A2"},
       [](const Row& row) {
         if (row("form") != "solid" || row("diameter_mm") != "1.2" || row("alpha_mm_s_A").empty())
           return Words{};
         return Words{
             "calc", "melting-rate",    "--current",    "250", "--extension", "15", "--wire-diameter",
             "1.2",  "--wire-material", row("material")};
       }},
      {"fillet_minimum.csv",
       {"leg_min_mm"},
       [](const Row& row) {
         const std::string up_to = row("thickness_up_to_mm");
         return Words{"calc", "fillet-minimum", "--thickness",
                      up_to.empty() ? number_text(std::stod(row("thickness_above_mm")) + 1) : up_to};
       }},
      {"fillet_strength.csv",
       {"tensile_design_MPa", "beta_w"},
       [](const Row& row) {
         return Words{"calc",    "fillet-resistance", "--throat",           "4",    "--length", "150",
                      "--steel", row("grade"),        "--force-along-weld", "100kN"};
       }},
      {"iso13920.csv",
       {"tolerance_mm"},
       [](const Row& row) {
         const std::string up_to = row("up_to_mm");
         if (row("tolerance_mm").empty() || row("kind") == "angular") return Words{};
         return Words{"calc",   "tolerance", "--class",  row("class"),
                      "--kind", row("kind"), "--length", up_to.empty() ? "25000" : up_to};
       }},
      {"iso5817.csv",
       {"cap_mm"},
       [](const Row& row) {
         if (row("imperfection") != "convexity") return Words{};
         return Words{"calc", "imperfection", "--level", row("level"), "--face-width", "200"};
       }},
      {"qualification_ranges.csv",
       {"high_factor"},
       [](const Row& row) {
         if (row("quantity") != "thickness" || row("high_factor").empty()) return Words{};
         const std::string up_to = row("up_to_mm"), below = row("below_mm");
         return Words{"calc",
                      "qualification",
                      "--edition",
                      row("edition"),
                      "--joint",
                      row("joint"),
                      "--runs",
                      row("runs").empty() ? "multi" : row("runs"),
                      "--tested-thickness",
                      !up_to.empty()   ? up_to
                      : !below.empty() ? number_text(0.9 * std::stod(below))
                                       : "150"};
       }},
      {"weld_metal_density.csv",
       {"density_g_cm3"},
       [](const Row& row) {
         if (row("material") != "mild-steel") return Words{};
         return Words{"evaluate", source_path("/reference/demo/ground-equipment.weldplan.json")};
       }},
  };
}

class ReferenceFolder : public testing::TestWithParam<Case> {
 protected:
  ~ReferenceFolder() override { unsetenv("SEAMTAKT_REFERENCE"); }

  ProgramRun run_with(const CsvTable& table, const std::vector<std::string>& words) {
    std::string text;
    const auto add = [&](const std::vector<std::string>& fields) {
      for (const std::string& field : fields) text += (&field == &fields[0] ? "" : ",") + csv_field(field);
      text += "\n";
    };
    add(table.header);
    for (const CsvRow& row : table.rows) add(row.fields);
    return run_with_text(GetParam().file, text, words);
  }
  ProgramRun run_with_text(const std::string& file, const std::string& text,
                           const std::vector<std::string>& words) {
    write_text(folder_ / file, text);
    setenv("SEAMTAKT_REFERENCE", folder_.path().c_str(), 1);
    ProgramRun run = run_program(words);
    unsetenv("SEAMTAKT_REFERENCE");
    return run;
  }
  static void write_text(const std::string& path, const std::string& text) {
    std::FILE* file = std::fopen(path.c_str(), "wb");
    ASSERT_NE(file, nullptr);
    std::fwrite(text.data(), 1, text.size(), file);
    std::fclose(file);
  }

  ScratchFolder folder_;
};

TEST_P(ReferenceFolder, each_number_of_a_table_is_the_one_that_results_follow_from) {
  const CsvTable table = read_csv(source_path("/reference/") + GetParam().file);
  int compared = 0;
  for (std::size_t i = 0; i < table.rows.size(); ++i)
    for (const char* column : GetParam().columns) {
      const auto words =
          GetParam().command([&](const char* name) { return table.rows[i].fields[table.require(name)]; });
      double value = 0;
      if (words.empty() || !parse_number(table.rows[i].fields[table.require(column)], value) || value == 0)
        continue;
      CsvTable changed = table;
      changed.rows[i].fields[table.require(column)] = number_text(0.97 * value);
      const ProgramRun before = run_program(words), after = run_with(changed, words);
      EXPECT_EQ(before.errors, "");
      EXPECT_NE(after.output, before.output) << GetParam().file << ":" << table.rows[i].line << " " << column;
      ++compared;
    }
  EXPECT_GT(compared, 0);
}

TEST_P(ReferenceFolder, a_damaged_number_is_refused_by_any_command_in_one_line) {
  CsvTable table = read_csv(source_path("/reference/") + GetParam().file);
  const char* column = GetParam().columns.front();
  for (CsvRow& row : table.rows) {
    std::string& field = row.fields[table.require(column)];
    if (field.empty()) continue;
    if (std::string_view(GetParam().file) == "wires.csv" && row.fields[table.require("diameter_mm")] != "1.2")
      continue;
    field = "about 5";
    const ProgramRun run = run_with(table, {"calc", "takt", "--available", "7.5h", "--demand", "1"});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_EQ(run.output, "");
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
    const std::string place =
        folder_ / GetParam().file + ":" + std::to_string(row.line) + ": found \"about 5\"";
    EXPECT_NE(run.errors.find(place), std::string::npos) << run.errors;
    EXPECT_NE(run.errors.find(column), std::string::npos) << run.errors;
    EXPECT_NE(run.errors.find(", expected a number"), std::string::npos) << run.errors;
    return;
  }
  FAIL() << "no number to damage";
}

TEST_P(ReferenceFolder, a_table_without_its_column_is_refused) {
  CsvTable table = read_csv(source_path("/reference/") + GetParam().file);
  const char* column = GetParam().columns.front();
  table.header[table.require(column)] = "other";
  const ProgramRun run = run_with(table, {"calc", "takt", "--available", "7.5h", "--demand", "1"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find(folder_ / GetParam().file + ":1:1: found"), std::string::npos) << run.errors;
  EXPECT_NE(run.errors.find(column), std::string::npos) << run.errors;
}

INSTANTIATE_TEST_SUITE_P(Tables, ReferenceFolder, testing::ValuesIn(cases()), [](const auto& info) {
  std::string name = info.param.file;
  name.resize(name.find('.'));
  return name + "_" + info.param.columns.front();
});

}  // namespace
}  // namespace seamtakt::test
