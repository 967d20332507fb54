// Options of the command line, a word a line: those of `calc` and of a command that has one of each sort.
#include <algorithm>
#include <iostream>
#include <streambuf>
#include <string>
#include <vector>

#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output_view.hpp"
#include "fuzz/fuzz_target.hpp"

namespace seamtakt::fuzz {

namespace {

/// Help is printed by the library that parses options; nobody wants to read it here.
class QuietOutput {
 public:
  QuietOutput() : output_(std::cout.rdbuf(&nothing_)) {}
  ~QuietOutput() { std::cout.rdbuf(output_); }

 private:
  struct Nothing : std::streambuf {
    int overflow(int c) override { return traits_type::not_eof(c); }
  } nothing_;
  std::streambuf* output_;
};

struct Given {
  std::string plan, word, choice;
  std::vector<std::string> list, each;
  bool flag = false, other = false;
  unsigned threads = 0;
  std::uint64_t seed = 0;
  double time_s = 0;
};

void add_each_sort(const cli::Command& program, Given& given) {
  const cli::Command command = program.command("each", "one option of each sort");
  command.option("PLAN", given.plan, "a file").required();
  command.option("--word", given.word, "a word").with_default_shown();
  command.option("--choice", given.choice, "one of two").one_of({"one", "two"});
  command.option("--list", given.list, "several").separated_by(',');
  command.option("--each", given.each, "one each time").one_value_each();
  const cli::Option flag = command.flag("--flag", given.flag, "a flag");
  command.flag("--other", given.other, "another").excludes(flag);
  cli::add_whole_number(command, "--threads", given.threads, 0, cli::most_threads, "threads");
  cli::add_seed(command, given.seed, "a seed");
  command
      .option(
          "--time",
          [&given](const std::string& text) {
            given.time_s = cli::quantity(text, "s", {0, cli::longest_s}, "--time");
          },
          "a time")
      .takes("TIME");
  command.run([&given] {
    promise(given.threads <= cli::most_threads, "threads are in their range");
    promise(given.time_s >= 0 && given.time_s <= cli::longest_s, "a time is in its range");
    promise(given.choice.empty() || given.choice == "one" || given.choice == "two",
            "the choice is one of two");
    promise(!given.flag || !given.other, "flags that exclude each other aren't both given");
  });
}

std::vector<std::string> words_of(std::string_view input) {
  std::vector<std::string> words = {"seamtakt"};
  while (!input.empty()) {
    const std::size_t end = std::min(input.find('\n'), input.size());
    words.emplace_back(input.substr(0, input.find('\0') < end ? input.find('\0') : end));
    input.remove_prefix(std::min(end + 1, input.size()));
  }
  return words;
}

}  // namespace

bool take_options(std::string_view input) {
  // Samples by the million take time and show nothing of options.
  if (input.find("--monte-carlo") != std::string_view::npos) return false;
  const QuietOutput quiet;
  cli::set_output_view(TextView::plain_english());
  cli::Program program("Options", "", "1");
  cli::Result result;
  Given given;
  cli::add_view_options(program.commands());
  // It has a thousand options: made where they are asked for, since that takes most of the time.
  if (input.find("calc") != std::string_view::npos) cli::add_calc(program.commands(), result);
  add_each_sort(program.commands(), given);
  std::vector<std::string> words = words_of(input);
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  bool understood = true;
  const bool taken = is_taken([&] {
    try {
      program.run(static_cast<int>(words.size()), arguments.data());
    } catch (const cli::UsageError& usage) {
      promise(*usage.what() != '\0', "bad usage says why");
      understood = false;
    }
  });
  return taken && understood;
}

}  // namespace seamtakt::fuzz
