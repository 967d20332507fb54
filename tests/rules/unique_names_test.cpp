// A room of tests, and half of the desk, is compiled many files in one (CMAKE_UNITY_BUILD): a name of one
// file is seen by the next one.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "rules/scope_names.hpp"
#include "rules/source_tree.hpp"
#include "support/file_bytes.hpp"

namespace seamtakt::rules {
namespace {

using NamedFiles = std::map<std::string, std::set<std::string>>;  ///< name -> files that define it

/// Folders of each room, as tests/CMakeLists.txt names them.
std::map<std::string, std::vector<std::string>> test_rooms() {
  static const std::regex call(R"(\nseamtakt_test\((\w+)(?: FOLDERS ([a-z_ ]+?))?(?: SHARDS \d+)? USES)");
  const std::string lists = bytes_of(root / "tests/CMakeLists.txt");
  std::map<std::string, std::vector<std::string>> rooms;
  for (std::sregex_iterator at(lists.begin(), lists.end(), call), end; at != end; ++at) {
    std::vector<std::string>& folders = rooms[(*at)[1]];
    folders.push_back("tests/" + (*at)[1].str());
    std::istringstream words((*at)[2]);
    for (std::string word; words >> word;) folders.push_back("tests/" + (*at)[1].str() + "/" + word);
  }
  return rooms;
}

NamedFiles names_in(const std::vector<std::string>& folders) {
  NamedFiles files_of;
  for (const std::string& folder : folders)
    for (const auto& entry : std::filesystem::directory_iterator(root / folder)) {
      const std::string kind = entry.path().extension();
      if (kind != ".cpp" && kind != ".hpp") continue;
      for (const std::string& name : scope_names(bytes_of(entry.path())))
        files_of[name].insert(folder + "/" + entry.path().filename().string());
    }
  return files_of;
}

/// "demo: cli/fit_test.cpp, cli/kit_test.cpp", a line each.
std::string clashes(const NamedFiles& files_of) {
  std::string text;
  for (const auto& [name, files] : files_of) {
    if (files.size() < 2) continue;
    text += "\n  " + name + ":";
    for (const std::string& file : files) text += " " + file;
  }
  return text;
}

/// Types that a file defines in `namespace seamtakt` itself: two of one name make a program without meaning,
/// and the linker says nothing.
std::set<std::string> shared_types(const std::string& text) {
  static const std::regex opens(R"(^namespace seamtakt \{)"), closes(R"(^\}  // namespace seamtakt$)"),
      other(R"(^namespace( \w+)? ?(\w|:)*\{)"), other_closes(R"(^\}  // namespace)"),
      type(R"(^(?:struct|class|union|enum class|enum) (\w+)(?: [^;]*)?\{.*)");
  std::set<std::string> types;
  std::istringstream lines(text);
  bool is_inside = false;
  int other_spaces = 0;
  std::smatch found;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(line, opens))
      is_inside = true;
    else if (std::regex_search(line, closes))
      is_inside = false;
    else if (std::regex_search(line, other))
      ++other_spaces;
    else if (std::regex_search(line, other_closes))
      --other_spaces;
    else if (is_inside && other_spaces == 0 && std::regex_match(line, found, type))
      types.insert(found[1]);
  }
  return types;
}

TEST(UniqueNames, ATypeOfCalcIsDefinedInOneHeader) {
  const std::string shape = "namespace seamtakt {\n\nstruct Shape {\n", end = "}  // namespace seamtakt\n";
  EXPECT_EQ(shared_types(shape + end), std::set<std::string>{"Shape"});
  EXPECT_TRUE(
      shared_types("namespace seamtakt {\nnamespace {\nstruct Shape {\n}  // namespace\n" + end).empty());
  EXPECT_TRUE(shared_types("namespace seamtakt::cli {\nstruct Shape {\n").empty());
  EXPECT_TRUE(shared_types("namespace seamtakt {\nstruct Shape;\n" + end).empty());
  NamedFiles files_of;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root / "calc"))
    if (entry.path().extension() == ".hpp")
      for (const std::string& name : shared_types(bytes_of(entry.path())))
        files_of[name].insert(entry.path().lexically_relative(root).string());
  EXPECT_GT(files_of.size(), 300u);
  EXPECT_EQ(clashes(files_of), "") << "\nin namespace seamtakt: two types of one name";
}

TEST(UniqueNames, ARoomOfTestsDefinesEachNameInOneFile) {
  const auto rooms = test_rooms();
  ASSERT_GE(rooms.size(), 15u);
  for (const auto& [room, folders] : rooms) {
    const NamedFiles names = names_in(folders);
    EXPECT_FALSE(names.empty()) << room;
    EXPECT_EQ(clashes(names), "") << "in " << room
                                  << ": move what is the same to a header of the room, else tell it apart";
  }
}

/// The desk's libraries and its tests, by the folders that gui/ and tests/CMakeLists.txt give them.
const std::map<std::string, std::vector<std::string>> desk_targets = {
    {"seamtakt_desk_core",
     {"gui/document", "gui/jobs", "gui/models/pictures", "gui/models/tables", "gui/models/words"}},
    {"seamtakt_desk_window", {"gui/widgets", "gui/plots", "gui/pages", "gui/app"}},
    {"gui_tests", {"tests/gui", "tests/gui/editing", "tests/gui/looks"}}};

TEST(UniqueNames, AreInEachHalfOfTheDeskAndInItsTests) {
  std::set<std::string> folders;
  for (const auto& [target, parts] : desk_targets) {
    const NamedFiles names = names_in(parts);
    EXPECT_GT(names.size(), 100u) << target;
    EXPECT_EQ(clashes(names), "") << "in " << target
                                  << ": move what is the same to a header below, else tell it apart";
    folders.insert(parts.begin(), parts.end());
  }
  for (const char* above : {"gui", "tests/gui"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root / above)) {
      const std::string folder = std::filesystem::relative(entry.path().parent_path(), root);
      EXPECT_TRUE(folders.contains(folder) || entry.path().extension() != ".cpp") << folder;
    }
}

using Names = std::vector<std::string>;

TEST(UniqueNames, AreThoseOfFunctionsTypesConstantsAliasesAndTests) {
  EXPECT_EQ(scope_names(
                "namespace a {\nnamespace {\ndouble sum_of(const X& x, int n = 2) {\n  int y = 1;\n}\n}\n}"),
            Names{"sum_of"});
  EXPECT_EQ(
      scope_names("struct Case {\n int at = 0;\n};\nclass Fit : public F {};\nenum class Kind { a, b };"),
      (Names{"Case", "Fit", "Kind"}));
  EXPECT_EQ(
      scope_names("const int a = f({1}), b[] = {2};\nconstexpr double limit = 3;\nconst Arc arc{1, 2};"),
      (Names{"a", "b", "limit", "arc"}));
  EXPECT_EQ(scope_names("using Rows = std::vector<int>;\nusing namespace b;\nusing b::c;"), Names{"Rows"});
  EXPECT_EQ(scope_names("TEST_F(Fit, stays) {\n  EXPECT_EQ(a, b);\n}\nRC_GTEST_PROP(Fit, holds, (int a)) {}"),
            (Names{"Fit.stays", "Fit.holds"}));
  EXPECT_EQ(scope_names("#define TWICE(x) \\\n  (x + x)\n#define LEFT 1\nint a = TWICE(1);\n#undef TWICE\n"),
            (Names{"LEFT", "a"}));
}

TEST(UniqueNames, AreNotThoseWithinBodiesTextsAndCommentsNorDeclarationsAndMembers) {
  EXPECT_EQ(
      scope_names(
          "std::string text_of(int n);\nvoid PrintTo(const A& a, std::ostream* out) {}\n"
          "A::A(int n) : n_(n) {}\nclass A::B : public C {};\nbool operator==(A, A) {\n return true;\n}"),
      Names{});
  EXPECT_EQ(
      scope_names("// int a = 1;\n/* int b = 1; */ const char* c = \"int d = 1; {\";\nconst char e = '{';\n"
                  "const char* f = R\"(int g = 1; \" {)\";\nconst int h = 1'000;"),
      (Names{"c", "e", "f", "h"}));
}

TEST(UniqueNames, ANameOfTwoFilesIsSeen) {
  EXPECT_EQ(clashes({{"demo", {"a.cpp", "b.cpp"}}, {"other", {"b.cpp"}}}), "\n  demo: a.cpp b.cpp");
}

}  // namespace
}  // namespace seamtakt::rules
