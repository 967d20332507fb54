#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// Input that can't be used: what a person or a file got wrong. Thrown by value, one a problem,
/// the first problem only. Its what() is the one line the program prints in English:
/// "WHERE: found FOUND, expected EXPECTED (at POINTER)".
class InputError : public std::runtime_error {
 public:
  /// where: "FILE:LINE:COLUMN", "FILE", or a command option such as "--travel-speed".
  /// found, expected: short phrases without a full stop. pointer: JSON pointer, may be empty.
  InputError(std::string where, Sentence found, Sentence expected, std::string pointer = {});

  const std::string& where() const { return where_; }
  const Sentence& found() const { return found_; }
  const Sentence& expected() const { return expected_; }
  const std::string& pointer() const { return pointer_; }

 private:
  std::string where_;
  Sentence found_, expected_;
  std::string pointer_;
};

/// Text as it may be printed: control bytes and bytes that aren't UTF-8 become \xNN; C1 controls,
/// bidirectional controls and characters that can't be seen become \u{XXXX}; longer than `limit` bytes is cut
/// with "...".
std::string printable(std::string_view text, std::size_t limit = 120);

/// The same for whole lines that a program prints: line ends stay, and nothing is cut.
std::string printable_lines(std::string_view text);

}  // namespace seamtakt
