// The house as DEVELOPERS.md draws it: which room may include which, how large files and folders may grow.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "rules/source_tree.hpp"
#include "support/file_bytes.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

using Rooms = std::map<std::string, std::set<std::string>>;  ///< room -> rooms that it may include

bool is_code(const fs::path& path) {
  return path.extension() == ".cpp" || path.extension() == ".hpp";
}

std::vector<fs::path> code_below(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file() && is_code(entry.path())) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// Rooms that a CMake call names: "Seamtakt::plan" -> plan.
std::set<std::string> rooms_named(const std::string& call) {
  static const std::regex name("Seamtakt::([a-z_]+)");
  std::set<std::string> named;
  for (std::sregex_iterator at(call.begin(), call.end(), name), end; at != end; ++at) named.insert((*at)[1]);
  return named;
}

/// calc's rooms and what each links, read from their CMakeLists.txt; what those link is linked too.
Rooms calc_rooms() {
  static const std::regex room_call("seamtakt_room\\(([a-z]+)( USES[^)]*)?\\)");
  Rooms rooms;
  for (const auto& entry : fs::directory_iterator(root / "calc")) {
    const fs::path lists = entry.path() / "CMakeLists.txt";
    if (!fs::exists(lists)) continue;
    const std::string text = bytes_of(lists);
    std::smatch call;
    if (std::regex_search(text, call, room_call)) {
      rooms[call[1]] = rooms_named(call[2]);
      rooms[call[1]].insert(call[1]);
    } else {
      rooms[entry.path().filename()] = rooms_named(text);  // the program itself
      rooms[entry.path().filename()].insert(entry.path().filename());
    }
  }
  for (bool grown = true; grown;) {
    grown = false;
    for (auto& [name, uses] : rooms) {
      const std::set<std::string> before = uses;
      for (const std::string& used : before) uses.insert(rooms[used].begin(), rooms[used].end());
      grown = grown || uses.size() != before.size();
    }
  }
  return rooms;
}

/// The desk's rooms from the ground up: each may include those before it, and all of calc but the programs.
Rooms desk_rooms() {
  Rooms rooms;
  std::set<std::string> below;
  for (const auto& [room, uses] : calc_rooms())
    if (room != "cli" && room != "drawing") below.insert(room);
  for (const char* room : {"document", "jobs", "models", "widgets", "plots", "pages", "app"}) {
    below.insert(room);
    rooms[room] = below;
  }
  return rooms;
}

/// "calc/plan/x.cpp includes cell/y.hpp": each include of a room that the file's own room doesn't link.
std::vector<std::string> forbidden_includes(const fs::path& above, const Rooms& rooms,
                                            const std::set<std::string>& all_rooms) {
  static const std::regex include("#include \"([a-z_]+)/([^\"]+)\"");
  std::vector<std::string> forbidden;
  for (const auto& [room, allowed] : rooms)
    for (const fs::path& file : code_below(above / room)) {
      const std::string text = bytes_of(file);
      for (std::sregex_iterator at(text.begin(), text.end(), include), end; at != end; ++at)
        if (all_rooms.contains((*at)[1]) && !allowed.contains((*at)[1]))
          forbidden.push_back(fs::relative(file, root).string() + " includes " + (*at)[1].str() + "/" +
                              (*at)[2].str());
    }
  return forbidden;
}

std::string lines_of(const std::vector<std::string>& texts) {
  std::ostringstream lines;
  for (const std::string& text : texts) lines << "\n  " << text;
  return lines.str();
}

std::set<std::string> names_of(const Rooms& rooms) {
  std::set<std::string> names;
  for (const auto& [name, uses] : rooms) names.insert(name);
  return names;
}

TEST(House, ARoomOfCalcIncludesOnlyWhatItLinks) {
  const Rooms rooms = calc_rooms();
  ASSERT_GE(rooms.size(), 9u);
  EXPECT_FALSE(rooms.at("base").contains("plan"));
  const auto forbidden = forbidden_includes(root / "calc", rooms, names_of(rooms));
  EXPECT_TRUE(forbidden.empty()) << lines_of(forbidden);
}

TEST(House, ARoomOfTheDeskIncludesOnlyRoomsBelowIt) {
  const Rooms rooms = desk_rooms();
  std::set<std::string> all = names_of(rooms);
  all.merge(names_of(calc_rooms()));
  const auto forbidden = forbidden_includes(root / "gui", rooms, all);
  EXPECT_TRUE(forbidden.empty()) << lines_of(forbidden);
}

TEST(House, AForbiddenIncludeIsSeen) {
  // Base may not know the plan: as if it linked nothing, every room above it offends.
  Rooms rooms = {{"plan", {"plan"}}};
  EXPECT_FALSE(forbidden_includes(root / "calc", rooms, {"base", "plan"}).empty());
}

TEST(House, NoFileOfCodeHasMoreThan400Lines) {
  std::vector<std::string> long_files;
  for (const char* folder : {"calc", "gui", "tests"})
    for (const fs::path& file : code_below(root / folder)) {
      const std::string text = bytes_of(file), name = fs::relative(file, root).string();
      const auto lines = std::count(text.begin(), text.end(), '\n');
      if (lines > 400) long_files.push_back(name + ": " + std::to_string(lines) + " lines");
    }
  EXPECT_TRUE(long_files.empty()) << lines_of(long_files);
}

TEST(House, NoFolderOfCodeHasMoreThan30PairsOfFiles) {
  std::map<std::string, std::set<std::string>> pairs;
  for (const char* folder : {"calc", "gui", "tests"})
    for (const fs::path& file : code_below(root / folder))
      pairs[fs::relative(file.parent_path(), root).string()].insert(file.stem());
  ASSERT_GT(pairs.size(), 30u);
  std::vector<std::string> large;
  for (const auto& [folder, files] : pairs)
    if (files.size() > 30) large.push_back(folder + ": " + std::to_string(files.size()));
  EXPECT_TRUE(large.empty()) << lines_of(large);
}

}  // namespace
}  // namespace seamtakt::rules
