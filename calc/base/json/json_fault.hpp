#pragma once

#include <cstddef>
#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// What keeps a text from being JSON.
struct JsonFault {
  std::size_t byte;  ///< where a person has to look
  Sentence found, expected;
};

/// The first fault of a text that isn't JSON. Scans the text from its beginning: for messages.
/// Numbers may have any size, and keys may repeat. std::logic_error where the text is JSON.
JsonFault find_json_fault(std::string_view text);

/// The token that begins at a byte, long enough for a person to find it: the string "ab", "tru",
/// the end of the text.
Sentence json_piece(std::string_view text, std::size_t byte);

}  // namespace seamtakt
