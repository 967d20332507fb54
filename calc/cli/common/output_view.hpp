#pragma once

#include <string>

#include "base/error.hpp"
#include "base/sentences/sentence_text.hpp"
#include "cli/common/command_line.hpp"

namespace seamtakt::cli {

/// The language and units in which results are shown to people: English and SI as files write them, unless
/// --language or --units says otherwise. JSON, CSV, logs and ledgers never follow it.
const TextView& output_view();
void set_output_view(TextView view);

/// Adds `--language CODE` and `--units si|us`, which set the view. InputError: a language that
/// reference/languages lacks.
void add_view_options(const Command& program);

/// A sentence or a word of the program in that view.
std::string shown_text(const Sentence& sentence);
std::string shown_word(Word word);

/// Why input can't be used, as one line: "WHERE: found FOUND, expected EXPECTED (at POINTER)".
std::string refusal_line(const InputError& error);

}  // namespace seamtakt::cli
