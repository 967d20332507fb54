// Manual pages and completions: every command and every option that help names is in each of them.
#include <gtest/gtest.h>

#include <cstdlib>
#include <functional>
#include <map>
#include <set>
#include <sstream>

#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

using Words = std::vector<std::string>;

std::string manual(const std::string& file) {
  const ProgramRun run = run_program({"manual", file});
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  return run.output;
}

/// What a command's help names.
struct Helped {
  Words options;  ///< with dashes
  Words commands;
};

/// A line of help that names something begins with two blanks and a name.
Helped helped(Words command) {
  command.push_back("--help");
  const ProgramRun run = run_program(command);
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  Helped found;
  std::istringstream lines(run.output);
  bool in_commands = false;
  for (std::string line; std::getline(lines, line);) {
    if (!line.empty() && line[0] != ' ') in_commands = line == "Subcommands:";
    if (!line.starts_with("  ") || line.size() < 3 || line[2] == ' ') continue;
    const std::string names = line.substr(2, line.find(' ', 2) - 2);
    if (in_commands) {
      found.commands.push_back(names);
    } else if (names[0] == '-') {
      std::istringstream each(names);
      for (std::string name; std::getline(each, name, ',');) found.options.push_back(name);
    }
  }
  return found;
}

/// Every command of the program by its words, {} being the program itself.
const std::map<Words, Helped>& all_commands() {
  static const std::map<Words, Helped> all = [] {
    std::map<Words, Helped> found;
    const std::function<void(const Words&)> look = [&](const Words& words) {
      found[words] = helped(words);
      for (const std::string& below : Helped(found[words]).commands) {
        Words inner = words;
        inner.push_back(below);
        look(inner);
      }
    };
    look({});
    return found;
  }();
  return all;
}

/// What is in `text` from the line that is `begin` to the next line that begins with one of `ends`.
std::string part_of(const std::string& text, const std::string& begin, const Words& ends) {
  std::istringstream lines(text);
  std::string part;
  bool inside = false;
  for (std::string line; std::getline(lines, line);) {
    if (inside)
      for (const std::string& end : ends)
        if (line.starts_with(end)) return part;
    inside = inside || line == begin;
    if (inside) part += line + "\n";
  }
  return part;
}

std::string without_escapes(const std::string& roff) {
  std::string text;
  for (std::size_t i = 0; i < roff.size(); ++i)
    if (roff.compare(i, 2, "\\-") == 0)
      text += '-', ++i;
    else
      text += roff[i];
  return text;
}

std::string path_of(const Words& words) {
  std::string path;
  for (const std::string& word : words) path += "/" + word;
  return path;
}

/// The lines of the fish completion that hold for a command; those without a condition hold for all.
std::string fish_lines(const std::string& fish, const Words& words) {
  std::istringstream lines(fish);
  std::string found;
  for (std::string line; std::getline(lines, line);)
    if (line.find("__seamtakt_at \"" + path_of(words) + "\"") != std::string::npos ||
        line.find(" -n ") == std::string::npos)
      found += line + "\n";
  return found;
}

std::string fish_option(const std::string& name) {
  return name.starts_with("--") ? " -l " + name.substr(2) + " " : " -s " + name.substr(1) + " ";
}

bool installed(const char* program) {
  return std::system(("command -v " + std::string(program) + " >/dev/null").c_str()) == 0;
}

class ManualCommand : public FolderTest {};

}  // namespace

TEST(Manual, HelpNamesAllCommandsThatTheTestsLookFor) {
  EXPECT_GT(all_commands().size(), 60u);
  EXPECT_TRUE(all_commands().contains({"calc", "heat-input"}));
  EXPECT_TRUE(all_commands().contains({"ledger", "verify"}));
  EXPECT_TRUE(all_commands().contains({"serve"}));
  EXPECT_FALSE(all_commands().contains({"manual"}));  // for the installation alone
}

TEST(Manual, EveryCommandAndOptionIsInTheManPages) {
  const std::string main_page = without_escapes(manual("man/man1/seamtakt.1"));
  for (const auto& [words, help] : all_commands()) {
    std::string part = main_page;
    if (!words.empty()) {
      EXPECT_NE(main_page.find("\\fBseamtakt-" + words[0] + "\\fR(1)"), std::string::npos) << words[0];
      part = without_escapes(manual("man/man1/seamtakt-" + words[0] + ".1"));
    }
    if (words.size() > 1) part = part_of(part, ".SS " + words[1], {".SS", ".SH"});
    EXPECT_FALSE(part.empty()) << path_of(words);
    for (const std::string& option : help.options)
      EXPECT_NE(part.find("\\fB" + option + "\\fR"), std::string::npos) << path_of(words) << " " << option;
  }
}

TEST(Manual, EveryCommandAndOptionIsInTheBashCompletion) {
  const std::string bash = manual("bash-completion/completions/seamtakt");
  for (const auto& [words, help] : all_commands()) {
    const std::string begin = (words.empty() ? "    \"\"" : "    " + path_of(words)) + ") words=\"";
    const std::size_t at = bash.find(begin);
    ASSERT_NE(at, std::string::npos) << path_of(words);
    std::istringstream listed(
        bash.substr(at + begin.size(), bash.find('"', at + begin.size()) - at - begin.size()));
    const std::set<std::string> offered{std::istream_iterator<std::string>(listed), {}};
    for (const std::string& name : help.commands)
      EXPECT_TRUE(offered.contains(name)) << path_of(words) << name;
    for (const std::string& name : help.options)
      EXPECT_TRUE(offered.contains(name)) << path_of(words) << name;
  }
}

TEST(Manual, EveryCommandAndOptionIsInTheZshCompletion) {
  const std::string zsh = manual("zsh/site-functions/_seamtakt");
  for (const auto& [words, help] : all_commands()) {
    std::string name = "_seamtakt";
    for (const std::string& word : words) name += "_" + word;
    const std::string part = part_of(zsh, name + "() {", {"}"});
    ASSERT_FALSE(part.empty()) << name;
    for (const std::string& command : help.commands)
      EXPECT_NE(part.find("    '" + command + ":"), std::string::npos) << name << " " << command;
    for (const std::string& option : help.options)
      EXPECT_TRUE(part.find("'" + option + "[") != std::string::npos ||
                  part.find("'*" + option + "[") != std::string::npos)
          << name << " " << option;
  }
}

TEST(Manual, EveryCommandAndOptionIsInTheFishCompletion) {
  const std::string fish = manual("fish/vendor_completions.d/seamtakt.fish");
  for (const auto& [words, help] : all_commands()) {
    const std::string lines = fish_lines(fish, words);
    for (const std::string& command : help.commands)
      EXPECT_NE(lines.find(" -f -a " + command + " "), std::string::npos) << path_of(words) << " " << command;
    for (const std::string& option : help.options)
      EXPECT_NE(lines.find(fish_option(option)), std::string::npos) << path_of(words) << " " << option;
  }
}

TEST_F(ManualCommand, BashOffersWhatFits) {
  const std::string file = write("completion", manual("bash-completion/completions/seamtakt"));
  const auto offered = [&](const std::string& typed, int count) {
    const std::string command = ". '" + file + "'; COMP_WORDS=(" + typed +
                                "); COMP_CWORD=" + std::to_string(count) +
                                "; _seamtakt; echo \"${COMPREPLY[*]}\"";
    const std::string answers = path("answer");
    write("ask", command);
    EXPECT_EQ(std::system(("bash '" + path("ask") + "' >'" + answers + "'").c_str()), 0);
    std::ifstream stream(answers);
    std::string line;
    std::getline(stream, line);
    return line;
  };
  EXPECT_EQ(offered("seamtakt eval", 1), "evaluate");
  EXPECT_EQ(offered("seamtakt calc heat-", 2), "heat-input");
  EXPECT_EQ(offered("seamtakt cycle PLAN --order ''", 4), "given best");
  EXPECT_EQ(offered("seamtakt calc fillet --throat", 3), "--throat");
  EXPECT_EQ(offered("seamtakt ledger --store sqlite:x ver", 4), "verify");
  EXPECT_EQ(offered("seamtakt --language en kit --units ''", 5), "si us");
}

TEST_F(ManualCommand, ShellsAndTheManReaderTakeTheFilesWithoutComplaint) {
  const std::vector<std::pair<const char*, std::string>> ways = {
      {"bash", "bash -n '" + write("bash", manual("bash-completion/completions/seamtakt")) + "'"},
      {"zsh", "zsh -n '" + write("zsh", manual("zsh/site-functions/_seamtakt")) + "'"},
      {"fish", "fish -n '" + write("fish", manual("fish/vendor_completions.d/seamtakt.fish")) + "'"}};
  for (const auto& [shell, command] : ways)
    if (installed(shell)) {
      EXPECT_EQ(std::system(command.c_str()), 0) << shell;
    }
  if (!installed("man")) GTEST_SKIP() << "no man: the pages weren't formatted";
  std::istringstream files(run_program({"manual"}).output);
  int pages = 0;
  for (std::string file; std::getline(files, file);) {
    if (!file.starts_with("man/")) continue;
    ++pages;
    const std::string page = write("page.1", manual(file)), said = path("said");
    EXPECT_EQ(std::system(("LC_ALL=C.UTF-8 MANROFFSEQ='' MANWIDTH=80 man --warnings -l '" + page +
                           "' >/dev/null 2>'" + said + "'")
                              .c_str()),
              0);
    std::ifstream stream(said);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(stream), {}), "") << file;
  }
  EXPECT_GT(pages, 15);
}

TEST(Manual, EveryOptionOfTheDeskIsInItsManPage) {
  const auto text_of = [](const std::string& path) {
    std::ifstream stream(source_path(path));
    return std::string(std::istreambuf_iterator<char>(stream), {});
  };
  const std::string code = text_of("/gui/app/desk_options.cpp");
  const std::string page = without_escapes(text_of("/packaging/install/seamtakt-desk.1"));
  std::set<std::string> options;
  // Options are told apart by comparing with their names.
  for (std::size_t at = 0; (at = code.find("argument == \"--", at)) != std::string::npos; ++at) {
    const std::size_t begin = at + std::string("argument == \"").size();
    options.insert(code.substr(begin, code.find('"', begin) - begin));
  }
  EXPECT_GT(options.size(), 8u);
  for (const std::string& option : options)
    EXPECT_NE(page.find(".TP\n\\fB" + option + "\\fR"), std::string::npos) << option;
}

TEST(Manual, AnUnknownFileIsRefused) {
  const ProgramRun run = run_program({"manual", "man/man1/other.1"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("man/man1/other.1"), std::string::npos);
}
