// README and handbook: what their commands are shown to print is what they print.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

namespace fs = std::filesystem;

const std::string handbook = source_path("/packaging/handbook/");

/// Names of the pages in a language, sorted.
std::vector<std::string> pages(const std::string& language) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(handbook + language))
    names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<std::string> all_pages() {
  std::vector<std::string> all;
  for (const std::string language : {"en", "de"})
    for (const std::string& name : pages(language)) all.push_back(language + "/" + name);
  return all;
}

bool has(const char* program) {
  return std::system(("command -v " + std::string(program) + " >/dev/null").c_str()) == 0;
}

/// Runs the commands of a page; what was wrong, in words.
struct ShownRun {
  int exit_code = -1;
  std::string said;
};

class ShownCommands : public FolderTest {
 protected:
  ShownRun run(const std::string& page, const std::string& environment = "") const {
    const std::string desk = build_path("/gui/seamtakt-desk");
    const bool update = std::getenv("SEAMTAKT_UPDATE_HANDBOOK") != nullptr && page.starts_with(source_path());
    const std::string command = std::string("QT_QPA_PLATFORM=offscreen SEAMTAKT='") + seamtakt_program() +
                                "' SEAMTAKT_SHARE='" + source_path("/reference") + "' " +
                                (fs::exists(desk) ? "SEAMTAKT_DESK='" + desk + "' " : "") + environment +
                                " python3 '" + source_path("/tests/cli/scripting/shown_commands.py") + "' " +
                                (update ? "--update " : "") + "'" + page + "' >'" + path("said") + "' 2>&1";
    const int status = std::system(command.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, bytes_of(path("said"))};
  }

  /// The programs that pages show beside our own.
  static const char* missing_program() {
    for (const char* name : {"python3", "sqlite3", "openssl", "xxd", "pdftotext"})
      if (!has(name)) return name;
    return nullptr;
  }
};

class HandbookPage : public ShownCommands, public ::testing::WithParamInterface<std::string> {};

}  // namespace

TEST_P(HandbookPage, ShowsWhatItsCommandsPrint) {
#ifdef SEAMTAKT_SANITIZED
  GTEST_SKIP() << "the same commands are tested one by one";
#endif
  if (const char* missing = missing_program()) GTEST_SKIP() << "no " << missing;
  const ShownRun shown = run(handbook + GetParam() + ".md");
  EXPECT_EQ(shown.exit_code, 0) << shown.said << "SEAMTAKT_UPDATE_HANDBOOK=1 writes what was printed";
}

INSTANTIATE_TEST_SUITE_P(Handbook, HandbookPage, ::testing::ValuesIn(all_pages()), [](const auto& info) {
  std::string name = info.param;
  for (char& letter : name)
    if (letter == '/' || letter == '-') letter = '_';
  return name;
});

TEST_F(ShownCommands, OfReadmePrintWhatItShows) {
#ifdef SEAMTAKT_SANITIZED
  GTEST_SKIP() << "the same commands are tested one by one";
#endif
  if (const char* missing = missing_program()) GTEST_SKIP() << "no " << missing;
  const ShownRun shown = run(source_path("/README.md"), "SEAMTAKT_TREE='" + source_path() + "'");
  EXPECT_EQ(shown.exit_code, 0) << shown.said;
}

TEST_F(ShownCommands, AWrongOutputAndARefusalAreFound) {
  if (!has("python3")) GTEST_SKIP() << "no python3";
  EXPECT_EQ(run(write("good.md", "```console\n$ echo a; exit 1\na\n```\n")).exit_code, 0);
  EXPECT_EQ(run(write("wrong.md", "```console\n$ echo a\nb\n```\n")).exit_code, 1);
  EXPECT_EQ(run(write("more.md", "```console\n$ printf 'a\\nb\\n'\na\n```\n")).exit_code, 1);
  EXPECT_EQ(run(write("ended.md", "```console\n$ echo a; exit 2\na\n```\n")).exit_code, 1);
  EXPECT_EQ(run(write("refused.md", "```console refused\n$ echo a; exit 2\na\n```\n")).exit_code, 0);
  EXPECT_EQ(run(write("failed.md", "```console refused\n$ echo a; exit 3\na\n```\n")).exit_code, 1);
  EXPECT_NE(run(write("loose.md", "```console\na\n```\n")).exit_code, 0);
  const std::string other = "```sh\n$ false\n```\n```console\n$ cat <<END\n> b\n> END\nb\n```\n";
  EXPECT_EQ(run(write("other.md", other)).exit_code, 0);
}

TEST(Handbook, LanguagesHaveTheSamePagesWithTheSameCommandsAndLinks) {
  EXPECT_EQ(pages("en"), pages("de"));
  EXPECT_GT(pages("en").size(), 12u);
  const std::regex link(R"(\]\(([^)]+)\))");
  for (const std::string& page : all_pages()) {
    const std::string text = bytes_of(handbook + page + ".md");
    EXPECT_TRUE(text.starts_with("# ")) << page;
    const std::string other =
        bytes_of(handbook + (page.starts_with("en") ? "de" : "en") + page.substr(2) + ".md");
    const auto count = [](const std::string& in, const char* what) {
      std::size_t found = 0;
      for (std::size_t at = 0; (at = in.find(what, at)) != std::string::npos; ++at) ++found;
      return found;
    };
    for (const char* what : {"\n$ ", "\n## ", "](", "![", "```"})
      EXPECT_EQ(count(text, what), count(other, what)) << page << " " << what;
    for (std::sregex_iterator at(text.begin(), text.end(), link), end; at != end; ++at) {
      const std::string target = (*at)[1];
      if (target.starts_with("pictures/")) continue;  // made by the desk when it is built
      EXPECT_TRUE(fs::exists(handbook + page.substr(0, 3) + target)) << page << " links " << target;
    }
  }
}

TEST(Handbook, EveryPageIsReachedFromTheFirst) {
  for (const std::string language : {"en", "de"})
    for (const std::string& name : pages(language))
      EXPECT_TRUE(name == "index" ||
                  bytes_of(handbook + language + "/index.md").find("(" + name + ".md)") != std::string::npos)
          << name;
}

TEST(Handbook, EveryQuantityOfCalcHasAnExample) {
  std::istringstream listed(run_program({"calc"}).output);
  std::set<std::string> quantities;
  std::string line;
  std::getline(listed, line);
  while (std::getline(listed, line) && !line.empty()) quantities.insert(line.substr(0, line.find(' ')));
  EXPECT_GT(quantities.size(), 20u);
  for (const std::string language : {"en", "de"}) {
    std::string formulas;
    for (const std::string& name : pages(language))
      if (name.starts_with("formulas-")) formulas += bytes_of(handbook + language + "/" + name + ".md");
    for (const std::string& quantity : quantities) {
      EXPECT_NE(formulas.find("\n## " + quantity + "\n"), std::string::npos) << language << " " << quantity;
      EXPECT_NE(formulas.find(" calc " + quantity + " "), std::string::npos) << language << " " << quantity;
    }
  }
}

TEST_F(ShownCommands, ThePictureOfReadmeIsWhatTheReportDraws) {
  const std::string made = path("weldment.svg");
  const std::string make = source_path("/packaging/pictures/make");
  ASSERT_EQ(
      std::system(
          (std::string("SEAMTAKT='") + seamtakt_program() + "' '" + make + "' >'" + made + "'").c_str()),
      0);
  const std::string shown = source_path("/packaging/pictures/weldment.svg");
  if (std::getenv("SEAMTAKT_UPDATE_HANDBOOK"))
    fs::copy_file(made, shown, fs::copy_options::overwrite_existing);
  EXPECT_TRUE(bytes_of(made) == bytes_of(shown)) << make << " makes another one";
  EXPECT_GT(bytes_of(made).size(), 10000u);
}
