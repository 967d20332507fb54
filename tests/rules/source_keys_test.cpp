// Every source named in code is in reference/sources.csv, and every source there is named somewhere.
#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "base/csv/csv.hpp"
#include "rules/reference_catalogue.hpp"
#include "rules/source_tree.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

struct SourceFile {
  std::string name, text;
};

std::vector<SourceFile> files_below(const std::filesystem::path& folder,
                                    const std::set<std::string>& extensions) {
  std::vector<SourceFile> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file() || !extensions.contains(entry.path().extension().string())) continue;
    std::ifstream stream(entry.path(), std::ios::binary);
    files.push_back({std::filesystem::relative(entry.path(), root).string(),
                     {std::istreambuf_iterator<char>(stream), {}}});
  }
  return files;
}

bool is_key_letter(char c) {
  return std::islower(static_cast<unsigned char>(c)) || std::isdigit(static_cast<unsigned char>(c)) ||
         c == '-';
}

/// Elements of the braced list that begins at `at`, each as the text of its string literals joined.
std::vector<std::string> literals_of_list(const std::string& text, std::size_t at) {
  std::vector<std::string> elements(1);
  int depth = 0;
  bool quoted = false;
  for (; at < text.size(); ++at) {
    const char c = text[at];
    if (quoted && c == '\\' && at + 1 < text.size()) {
      elements.back() += text[++at];
    } else if (c == '"') {
      quoted = !quoted;
    } else if (quoted) {
      elements.back() += c;
    } else if (c == '{') {
      ++depth;
    } else if (c == '}') {
      if (--depth == 0) break;
    } else if (c == ',' && depth == 1) {
      elements.emplace_back();
    }
  }
  return elements;
}

struct NoteSource {
  std::string where, key;
};

/// "FormulaNote name{id, result, symbols, source key, ...}": the fourth literal is the key.
std::vector<NoteSource> note_sources() {
  std::vector<NoteSource> found;
  const std::string word = "FormulaNote ";
  for (const SourceFile& file : files_below(root / "calc", {".hpp", ".cpp"}))
    for (std::size_t at = file.text.find(word); at != std::string::npos; at = file.text.find(word, at + 1)) {
      std::size_t brace = at + word.size();
      while (brace < file.text.size() &&
             (std::isalnum(static_cast<unsigned char>(file.text[brace])) || file.text[brace] == '_'))
        ++brace;
      if (brace == at + word.size() || file.text[brace] != '{')
        continue;  // a reference, an array, a function
      const std::vector<std::string> elements = literals_of_list(file.text, brace);
      found.push_back({file.name + ": " + elements.front(), elements.size() > 3 ? elements[3] : ""});
    }
  return found;
}

/// Words after "Source: " in comments that look like keys.
std::vector<NoteSource> commented_sources() {
  std::vector<NoteSource> found;
  const std::string mark = "Source: ";
  std::vector<SourceFile> files = files_below(root / "calc", {".hpp", ".cpp"});
  for (SourceFile& file : files_below(root / "tests/second_route", {".py"})) files.push_back(std::move(file));
  for (const SourceFile& file : files)
    for (std::size_t at = file.text.find(mark); at != std::string::npos; at = file.text.find(mark, at + 1)) {
      std::size_t end = at + mark.size();
      while (end < file.text.size() && is_key_letter(file.text[end])) ++end;
      const std::string key = file.text.substr(at + mark.size(), end - at - mark.size());
      if (key.find('-') != std::string::npos || key == "derived") found.push_back({file.name, key});
    }
  return found;
}

bool has_word(const std::string& text, const std::string& key) {
  for (std::size_t at = text.find(key); at != std::string::npos; at = text.find(key, at + 1)) {
    const std::size_t end = at + key.size();
    if ((at == 0 || !is_key_letter(text[at - 1])) && (end == text.size() || !is_key_letter(text[end])))
      return true;
  }
  return false;
}

TEST(SourceKeys, OfEveryFormulaNoteExist) {
  const std::set<std::string> keys = known_sources();
  const std::vector<NoteSource> notes = note_sources();
  EXPECT_GE(notes.size(), 40u) << "the notes weren't found";
  for (const NoteSource& note : notes)
    EXPECT_TRUE(keys.contains(note.key)) << note.where << ": \"" << note.key << "\"";
}

TEST(SourceKeys, NamedInCommentsExist) {
  const std::set<std::string> keys = known_sources();
  const std::vector<NoteSource> comments = commented_sources();
  EXPECT_GE(comments.size(), 15u) << "the comments weren't found";
  for (const NoteSource& comment : comments)
    EXPECT_TRUE(keys.contains(comment.key)) << comment.where << ": \"" << comment.key << "\"";
}

TEST(SourceKeys, AreAllUsed) {
  std::vector<SourceFile> users = files_below(root / "calc", {".hpp", ".cpp"});
  for (SourceFile& file : files_below(root / "reference", {".csv"}))
    if (!file.name.ends_with("sources.csv")) users.push_back(std::move(file));
  for (const char* folder : {"tests/published", "tests/second_route"})
    for (SourceFile& file : files_below(root / folder, {".csv"})) users.push_back(std::move(file));
  for (const std::string& key : known_sources()) {
    bool used = false;
    for (const SourceFile& file : users) used = used || has_word(file.text, key);
    EXPECT_TRUE(used) << "no table and no code names " << key;
  }
}

}  // namespace
}  // namespace seamtakt::rules
