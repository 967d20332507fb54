#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <map>

#include "audit_fixture.hpp"
#include "base/csv/csv.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

/// Recorded passes of a robot GMAW cell from a public data set (Intel Robotic Welding Multimodal Dataset,
/// recorded 2022-23, CSV sample) with figures computed independently; the folder is named by
/// SEAMTAKT_OPEN_DATA.
class RecordedPasses : public ::testing::Test {
 protected:
  void SetUp() override {
    const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
    if (folder == nullptr) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA isn't set";
    folder_ = std::filesystem::path(folder) / "arc-logs";
    if (!std::filesystem::exists(folder_ / "expected.csv"))
      GTEST_SKIP() << "no arc-logs/expected.csv in " << folder;
  }

  PassRecord audited(const std::string& config, const std::string& run) {
    AuditOptions options;
    options.columns = load_log_columns(source_path("/reference/arc-log-columns/two-column-time.json"));
    const auto result = audit({{(folder_ / config / (run + ".csv")).string(), nullptr}}, options, nullptr);
    EXPECT_EQ(result.rows.rejected, 0u) << run;
    EXPECT_EQ(result.passes.size(), 1u) << run;
    EXPECT_TRUE(has_finding(result, "record.length.unknown"))
        << "no travel speed is recorded, so no heat input: " << run;
    return result.passes.at(0);
  }

  std::filesystem::path folder_;
};

/// Where a figure differs from the independent one by more than 1 %, and why.
struct Explained {
  const char *run, *figure, *why;
  double most_pct;
};
constexpr Explained explained[] = {
    {"03-22-23-0001-06", "E_kJ",
     "11 s of arc at 9 samples a second: the trapezoid falls to zero within the last interval where the "
     "independent figure is mean "
     "power times arc time",
     1.3},
};

double allowed_pct(const std::string& run, const std::string& figure) {
  for (const auto& each : explained)
    if (run == each.run && figure == each.figure) return each.most_pct;
  return 1;
}

TEST_F(RecordedPasses, AgreeWithIndependentFigures) {
  const CsvTable expected = read_csv((folder_ / "expected.csv").string());
  std::size_t compared = 0;
  for (const auto& row : expected.rows) {
    const std::string run = row.fields[expected.require("run")];
    const PassRecord pass = audited(row.fields[expected.require("config")], run);
    EXPECT_EQ(pass.unit_serial, run);
    EXPECT_FALSE(pass.heat_input_kJ_mm);
    const std::map<std::string, double> got = {{"starts", static_cast<double>(pass.arc_starts)},
                                               {"arc_s", pass.arc_time_s},
                                               {"I", pass.mean_current_A.value()},
                                               {"V", pass.mean_voltage_V.value()},
                                               {"Pavg", pass.mean_power_W.value()},
                                               {"VI", pass.product_power_W.value()},
                                               {"E_kJ", pass.energy_J.value() / 1000},
                                               {"Imax", pass.max_current_A.value()}};
    for (const auto& [figure, value] : got) {
      double want = 0;
      ASSERT_TRUE(parse_number(row.fields[expected.require(figure)], want));
      const double differs_pct = 100 * (value / want - 1);
      EXPECT_LE(std::abs(differs_pct), allowed_pct(run, figure))
          << run << " " << figure << ": " << value << " against " << want;
      ++compared;
    }
  }
  EXPECT_EQ(compared, expected.rows.size() * 8);
  EXPECT_GE(expected.rows.size(), 12u);
}

}  // namespace
}  // namespace seamtakt::test
