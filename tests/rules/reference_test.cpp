// What people read off reference/: each table has its columns, each row a source that exists, each number a
// sane value.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

#include "base/csv/csv.hpp"
#include "rules/reference_catalogue.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

const std::filesystem::path folder = std::filesystem::path(source_path()) / "reference";

CsvTable table(const std::string& file) {
  return read_csv((folder / file).string());
}

const std::string& cell(const CsvTable& table, const CsvRow& row, std::string_view column) {
  return row.fields[table.require(column)];
}

double number(const CsvTable& table, const CsvRow& row, std::string_view column, double if_empty = NAN) {
  const std::string& text = cell(table, row, column);
  double value = if_empty;
  if (!text.empty() && !parse_number(text, value))
    ADD_FAILURE() << table.file << ":" << row.line << ": \"" << text << "\" in " << column << " is no number";
  return value;
}

const ColumnRange* range_of(const std::string& column) {
  const auto exact = std::find_if(column_ranges().begin(), column_ranges().end(),
                                  [&](const ColumnRange& range) { return range.ending == column; });
  if (exact != column_ranges().end()) return &*exact;
  for (const ColumnRange& range : column_ranges())
    if (range.ending[0] == '_' && column.ends_with(range.ending)) return &range;
  return nullptr;
}

TEST(ReferenceTables, EveryFileIsDescribedAndEveryDescriptionHasItsFile) {
  std::set<std::string> there, described;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".csv") there.insert(entry.path().filename().string());
  for (const TableShape& shape : table_shapes()) described.insert(shape.file);
  EXPECT_EQ(there, described);
}

TEST(ReferenceTables, HaveTheirColumnsAndRows) {
  for (const TableShape& shape : table_shapes()) {
    const CsvTable read = table(shape.file);
    EXPECT_EQ(read.header, shape.header) << shape.file;
    EXPECT_GE(read.rows.size(), 3u) << shape.file;
  }
}

TEST(ReferenceTables, NameNoRowTwice) {
  for (const TableShape& shape : table_shapes()) {
    const CsvTable read = table(shape.file);
    std::map<std::vector<std::string>, std::uint64_t> lines;
    for (const CsvRow& row : read.rows) {
      std::vector<std::string> name;
      for (const std::string& column : shape.identity) name.push_back(cell(read, row, column));
      EXPECT_FALSE(name.front().empty()) << read.file << ":" << row.line;
      const auto [first, fresh] = lines.emplace(name, row.line);
      EXPECT_TRUE(fresh) << read.file << ":" << row.line << " repeats line " << first->second;
    }
  }
}

TEST(ReferenceTables, GiveEachRowASourceThatExistsAndItsBasis) {
  const std::set<std::string> keys = known_sources();
  const std::set<std::string> words = {"read", "part-read", "recalled", "derived", "common-practice"};
  for (const TableShape& shape : table_shapes()) {
    const CsvTable read = table(shape.file);
    for (const CsvRow& row : read.rows) {
      EXPECT_TRUE(words.contains(cell(read, row, "basis"))) << read.file << ":" << row.line;
      for (const std::string& column : shape.header)
        if (column.ends_with("source")) {
          EXPECT_TRUE(keys.contains(cell(read, row, column))) << read.file << ":" << row.line;
        }
    }
  }
}

TEST(ReferenceTables, SourcesAreCitedInFull) {
  const CsvTable sources = table("sources.csv");
  for (const CsvRow& row : sources.rows) {
    const std::string& key = cell(sources, row, "key");
    EXPECT_EQ(key.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos) << key;
    EXPECT_GE(cell(sources, row, "citation").size(), 20u) << key;
  }
}

std::size_t recalled_rows(const CsvTable& read) {
  return static_cast<std::size_t>(std::count_if(read.rows.begin(), read.rows.end(), [&](const CsvRow& row) {
    return cell(read, row, "basis") == "recalled";
  }));
}

// A row is marked read only where its text was read: the two numbers may fall, never rise.
TEST(ReferenceTables, FewerAndFewerAreRecalled) {
  const std::size_t most_sources = 21, most_rows = 233;
  std::size_t sources = 0, rows = 0;
  for (const TableShape& shape : table_shapes())
    (std::string_view(shape.file) == "sources.csv" ? sources : rows) += recalled_rows(table(shape.file));
  std::cout << "recalled: " << sources << " sources, " << rows << " rows of other tables\n";
  EXPECT_LE(sources, most_sources);
  EXPECT_LE(rows, most_rows);
}

TEST(ReferenceTables, HoldOnlySaneNumbers) {
  std::size_t checked = 0;
  for (const TableShape& shape : table_shapes()) {
    const CsvTable read = table(shape.file);
    for (const std::string& column : shape.header) {
      const ColumnRange* range = range_of(column);
      if (!range) continue;
      for (const CsvRow& row : read.rows) {
        if (cell(read, row, column).empty()) continue;
        const double value = number(read, row, column);
        EXPECT_GE(value, range->least) << read.file << ":" << row.line << " " << column;
        EXPECT_LE(value, range->most) << read.file << ":" << row.line << " " << column;
        ++checked;
      }
    }
  }
  EXPECT_GT(checked, 700u);
}

TEST(ReferenceTables, IntervalsRunUpwards) {
  for (const TableShape& shape : table_shapes()) {
    const CsvTable read = table(shape.file);
    for (const std::string& upper : shape.header) {
      const std::size_t at = upper.find("up_to_");
      if (at == std::string::npos) continue;
      const std::string lower = upper.substr(0, at) + "above_" + upper.substr(at + 6);
      for (const CsvRow& row : read.rows)
        EXPECT_LT(number(read, row, lower, 0), number(read, row, upper, INFINITY))
            << read.file << ":" << row.line;
    }
  }
}

TEST(ReferenceWires, DensityIsWithinItsSpan) {
  const CsvTable wires = table("wires.csv");
  for (const CsvRow& row : wires.rows) {
    EXPECT_LE(number(wires, row, "density_low_g_cm3"), number(wires, row, "density_g_cm3")) << row.line;
    EXPECT_LE(number(wires, row, "density_g_cm3"), number(wires, row, "density_high_g_cm3")) << row.line;
  }
}

// alpha is proportional to 1/d^2 and beta to 1/d^4: the printed three digits of a diameter agree with those
// of 1.2 mm.
TEST(ReferenceWires, MeltingCoefficientsFollowTheDiameter) {
  const CsvTable wires = table("wires.csv");
  std::size_t checked = 0;
  for (const CsvRow& row : wires.rows) {
    if (cell(wires, row, "form") != "solid" || cell(wires, row, "material") != "mild-steel") continue;
    const double ratio = 1.2 / number(wires, row, "diameter_mm");
    EXPECT_NEAR(number(wires, row, "alpha_mm_s_A"), 0.30 * ratio * ratio, 0.0005) << row.line;
    EXPECT_NEAR(number(wires, row, "beta_per_s_A2") / (5e-5 * std::pow(ratio, 4)), 1, 0.004) << row.line;
    ++checked;
  }
  EXPECT_EQ(checked, 6u);
}

/// Groups 1 to 3 of ISO/TR 15608: 8.1 is austenitic, 22.4 is aluminium.
bool is_ferritic_group(const std::string& group) {
  return group.size() > 1 && group[0] <= '3' && group[1] == '.';
}

/// IIW's carbon equivalent of a row's maxima.
double carbon_equivalent(const CsvTable& steels, const CsvRow& row) {
  const auto pct = [&](const std::string& element) { return number(steels, row, element + "_max_pct", 0); };
  return pct("C") + pct("Mn") / 6 + (pct("Cr") + pct("Mo") + pct("V")) / 5 + (pct("Ni") + pct("Cu")) / 15;
}

TEST(ReferenceSteels, HaveTheGradesThatPlansNeedAndNoLimitOfCarbonEquivalentThatNeverBinds) {
  const CsvTable steels = table("steels.csv");
  std::set<std::string> ids;
  std::size_t limits = 0;
  for (const CsvRow& row : steels.rows) {
    ids.insert(cell(steels, row, "id"));
    EXPECT_EQ(cell(steels, row, "CEV_max_pct").empty(), cell(steels, row, "CEV_to_mm").empty()) << row.line;
    if (cell(steels, row, "CEV_max_pct").empty()) continue;
    ++limits;
    const double limit = number(steels, row, "CEV_max_pct");
    EXPECT_LT(limit, carbon_equivalent(steels, row)) << row.line;
    EXPECT_GT(limit, number(steels, row, "C_max_pct")) << row.line;
  }
  EXPECT_GE(limits, 12u);
  for (const char* id : {"S420N", "S420M", "S460N", "S460M", "S500MC", "S550MC", "S600MC", "S700MC", "S690QL",
                         "A36", "A572-50", "A500-B", "A500-C", "1.4301", "1.4404", "AW-5083", "AW-6082"})
    EXPECT_TRUE(ids.contains(id)) << id;
}

TEST(ReferenceSteels, BreakAboveTheirYieldAndStateCarbon) {
  const CsvTable steels = table("steels.csv");
  EXPECT_EQ(steels.rows.size(), 29u);
  for (const CsvRow& row : steels.rows) {
    EXPECT_GT(number(steels, row, "tensile_min_MPa"), number(steels, row, "yield_min_MPa")) << row.line;
    if (!is_ferritic_group(cell(steels, row, "group"))) continue;
    EXPECT_GT(number(steels, row, "C_max_pct"), 0.05) << row.line;
    EXPECT_LE(number(steels, row, "C_max_pct"), 0.26) << row.line;
    double sum = 0;
    for (const std::string& column : steels.header)
      if (column.ends_with("_max_pct") && column != "CEV_max_pct") sum += number(steels, row, column, 0);
    EXPECT_LT(sum, 10) << row.line;
  }
}

TEST(ReferenceSteels, StandInAGroupThatIsDescribed) {
  std::set<std::string> described;
  const CsvTable groups = table("material_groups.csv"), steels = table("steels.csv");
  for (const CsvRow& row : groups.rows) described.insert(cell(groups, row, "group"));
  for (const CsvRow& row : steels.rows)
    EXPECT_TRUE(described.contains(cell(steels, row, "group"))) << row.line;
}

TEST(ReferenceGases, MixturesLeaveRoomForTheirBalance) {
  const CsvTable gases = table("gases.csv");
  std::set<std::string> ids;
  for (const CsvRow& row : gases.rows) {
    ids.insert(cell(gases, row, "id"));
    double least = 0;
    for (const char* column :
         {"co2_above_pct", "o2_above_pct", "he_above_pct", "h2_above_pct", "n2_above_pct"})
      least += number(gases, row, column, 0);
    EXPECT_LT(least, 100) << row.line;
  }
  for (const char* id :
       {"I1", "I2", "I3", "M11", "M14", "M20", "M21", "M27", "M31", "M35", "C1", "C2", "R1", "N1"})
    EXPECT_TRUE(ids.contains(id)) << id;
}

TEST(ReferencePreheat, RisesFromGroupToGroupAndWithRestraint) {
  const CsvTable preheat = table("preheat_aws.csv");
  std::map<std::pair<std::string, std::string>, double> low;
  const CsvRow* before = nullptr;
  EXPECT_EQ(preheat.rows.size(), 3u * 5u * 7u);
  for (const CsvRow& row : preheat.rows) {
    const double value = number(preheat, row, "preheat_C");
    if (before && cell(preheat, row, "group") != "A") {
      EXPECT_GE(value, number(preheat, *before, "preheat_C")) << row.line;
    }
    const auto place =
        std::pair(cell(preheat, row, "thickness_above_mm") + cell(preheat, row, "thickness_from_mm"),
                  cell(preheat, row, "group"));
    if (cell(preheat, row, "restraint") == "low") low[place] = value;
    EXPECT_GE(value, low.at(place)) << row.line;
    before = &row;
  }
}

TEST(ReferenceTolerances, GrowWithLengthAndClassAndLeaveNoHole) {
  const CsvTable tolerances = table("iso13920.csv");
  std::map<std::string, double> last, last_up_to, first_class;
  for (const CsvRow& row : tolerances.rows) {
    const std::string kind = cell(tolerances, row, "kind"), series = kind + cell(tolerances, row, "class");
    const double above = number(tolerances, row, "above_mm"),
                 up_to = number(tolerances, row, "up_to_mm", INFINITY);
    if (last_up_to.contains(series)) {
      EXPECT_EQ(above, last_up_to[series]) << row.line;
    }
    last_up_to[series] = up_to;
    if (kind == "angular") continue;
    const double value = number(tolerances, row, "tolerance_mm");
    if (last.contains(series)) {
      EXPECT_GE(value, last[series]) << row.line;
    }
    last[series] = value;
    const std::string place = kind + cell(tolerances, row, "above_mm");
    EXPECT_GE(value, first_class[place]) << row.line;  // the row of the class before
    first_class[place] = value;
  }
  for (const auto& [series, up_to] : last_up_to) EXPECT_EQ(up_to, INFINITY) << series;
}

}  // namespace
}  // namespace seamtakt::rules
