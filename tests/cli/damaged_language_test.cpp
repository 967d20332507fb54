// A damaged table of a language is refused in one line; the program's own English reports the error.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class DamagedLanguage : public FolderTest {
 protected:
  DamagedLanguage() {
    std::filesystem::create_directory(folder / "languages");
    setenv("SEAMTAKT_REFERENCE", folder.c_str(), 1);
  }
  ~DamagedLanguage() override { unsetenv("SEAMTAKT_REFERENCE"); }

  void write(const std::string& file, const std::string& text) {
    std::ofstream(folder / "languages" / file) << text;
  }
};

}  // namespace

TEST_F(DamagedLanguage, EnglishIsRefusedInTheProgramsOwnEnglish) {
  write("en.json", "{\n  \"name\": \"English\",\n  \"sentences\": [1,]\n}\n");
  const ProgramRun run = run_program({"evaluate", demo_plan});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("languages/en.json:3:19: found \"]\", expected a JSON value"), std::string::npos)
      << run.errors;
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
}

TEST_F(DamagedLanguage, AnotherLanguageIsRefusedInEnglish) {
  write("de.json", "{\"name\": \"Deutsch\", \"name\": \"\"}");
  const ProgramRun run = run_program({"--language", "de", "evaluate", demo_plan});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("found the key \"name\" a second time"), std::string::npos) << run.errors;
}

TEST_F(DamagedLanguage, AnEnglishThatLacksSentencesIsFilledUp) {
  write("en.json", R"({"name": "English", "sentences": {}, "words": {}})");
  const ProgramRun own = run_program({"evaluate", demo_plan});
  unsetenv("SEAMTAKT_REFERENCE");
  EXPECT_EQ(own.output, run_program({"evaluate", demo_plan}).output) << own.errors;
}
