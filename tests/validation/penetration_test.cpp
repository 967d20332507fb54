// Penetration against cross-sections of beads on plate.
#include <gtest/gtest.h>

#include <filesystem>

#include "base/csv/csv.hpp"
#include "formula/size/penetration.hpp"
#include "support/source_path.hpp"
#include "validation/agreement.hpp"

namespace seamtakt::validation {
namespace {

double number_of_column(const CsvTable& table, const CsvRow& row, const char* column) {
  double value = 0;
  EXPECT_TRUE(parse_number(row.fields[table.require(column)], value)) << row.line << " " << column;
  return value;
}

double computed_mm(const CsvTable& table, const CsvRow& row) {
  return penetration_mm(number_of_column(table, row, "current_A"), number_of_column(table, row, "voltage_V"),
                        number_of_column(table, row, "travel_speed_mm_s"), penetration_coefficient);
}

CsvTable sections() {
  return read_csv(
      (std::filesystem::path(source_path()) / "tests/validation/data/bead_sections.csv").string());
}

TEST(PenetrationValidation, AgainstCrossSectionsOfBeadsOnPlate) {
  const CsvTable table = sections();
  Agreement agreement;
  for (const CsvRow& row : table.rows)
    agreement.add(computed_mm(table, row), number_of_column(table, row, "measured_penetration_mm"));
  expect_as_stated("penetration.bead-on-plate", agreement);
}

TEST(PenetrationValidation, IsShallowerThanEachSectionAndSoNoProofAgainstBurnThrough) {
  const CsvTable table = sections();
  for (const CsvRow& row : table.rows)
    EXPECT_LT(computed_mm(table, row), number_of_column(table, row, "measured_penetration_mm")) << row.line;
}

}  // namespace
}  // namespace seamtakt::validation
