// The spreadsheet's macro of packaging/examples, run in soffice without a window.
#include <gtest/gtest.h>

#include <cstdlib>
#include <sstream>

#include "support/folder_test.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace {

class SpreadsheetMacro : public FolderTest {};

}  // namespace

TEST_F(SpreadsheetMacro, FillsASheetAndSaysWhatIsWrongWithARow) {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  if (!length || std::string(length) != "long") GTEST_SKIP() << "soffice takes long to start";
  if (std::system("command -v soffice >/dev/null && command -v python3 >/dev/null") != 0)
    GTEST_SKIP() << "no soffice or no python3";
  std::filesystem::create_directory(folder / "sheet");
  const std::string said = path("said");
  const std::string command = std::string("SEAMTAKT='") + seamtakt_program() + "' python3 '" +
                              source_path("/tests/cli/scripting/macro_check.py") + "' '" +
                              source_path("/packaging/examples/heat_inputs.bas") + "' '" + path("sheet") +
                              "' >'" + said + "'";
  ASSERT_EQ(std::system(command.c_str()), 0);
  std::ifstream rows(said);
  std::string row;
  std::getline(rows, row);
  EXPECT_NEAR(std::strtod(row.c_str(), nullptr), 0.8 * 24.8 * 205 / 5 / 1000, 1e-9) << row;
  std::getline(rows, row);
  EXPECT_NEAR(std::strtod(row.c_str(), nullptr), 0.8 * 29.5 * 300 / 8.25 / 1000, 1e-9) << row;
  std::getline(rows, row);
  EXPECT_TRUE(row.starts_with("found ")) << row;
  EXPECT_NE(row.find("parrots"), std::string::npos) << row;
  std::getline(rows, row);
  EXPECT_NEAR(std::strtod(row.c_str(), nullptr), 0.8 * 24.8 * 205 / 5 / 1000, 1e-9) << "30cm/min: " << row;
}
