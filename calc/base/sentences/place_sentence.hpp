#pragma once

#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// A finding's place ("BD/S01/pass 2", "schedule F6") for people; the names in it stay as they are.
Sentence place_sentence(std::string_view place);

}  // namespace seamtakt
