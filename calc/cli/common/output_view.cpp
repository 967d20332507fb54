#include "cli/common/output_view.hpp"

#include "base/text/comma_list.hpp"

namespace seamtakt::cli {

namespace {

/// As long as the line of an InputError.
constexpr std::size_t longest_refusal = 2000;

TextView& own_view() {
  static TextView view = TextView::plain_english();
  return view;
}

const Language& language_of(const std::string& code) {
  if (const Language* language = find_language(code)) return *language;
  throw InputError("--language", "\"" + printable(code) + "\"",
                   Sentence("cli.one-of"_key, {{"choices", comma_list(language_codes())}}));
}

}  // namespace

const TextView& output_view() {
  return own_view();
}

void set_output_view(TextView view) {
  own_view() = view;
}

void add_view_options(const Command& program) {
  program
      .option(
          "--language",
          [](const std::string& code) {
            set_output_view(TextView(language_of(code), output_view().units()));
          },
          "language of what is printed for people (" + comma_list(language_codes()) + "; JSON stays English)")
      .takes("CODE");
  program
      .option(
          "--units",
          [](const std::string& system) {
            set_output_view(
                TextView(output_view().language(), system == "us" ? UnitSystem::us : UnitSystem::si));
          },
          "units of what is printed for people (JSON stays in SI)")
      .one_of({"si", "us"});
}

std::string shown_text(const Sentence& sentence) {
  return sentence_text(sentence, output_view());
}

std::string shown_word(Word word) {
  return output_view().word(word);
}

std::string refusal_line(const InputError& error) {
  Sentence refusal =
      error.expected().english().empty()
          ? Sentence("refusal.found"_key, {{"found", error.found()}})
          : Sentence("refusal"_key, {{"found", error.found()}, {"expected", error.expected()}});
  if (!error.pointer().empty())
    refusal = Sentence("refusal.at"_key, {{"refusal", refusal}, {"pointer", error.pointer()}});
  const std::string where = error.where().empty() ? "" : error.where() + ": ";
  // Refused input was given in the units of files and options, which don't follow the view.
  return printable(where + sentence_text(refusal, output_view().in_si()), longest_refusal);
}

}  // namespace seamtakt::cli
