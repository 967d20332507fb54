#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// A finding's place ("BD/S01/pass 2", "schedule F6") for people; the names in it stay as they are.
Sentence place_sentence(std::string_view place);
/// Several of them: "BD/S01/pass 2, BD/S02/pass 1".
Sentence place_list(const std::vector<std::string>& places);

}  // namespace seamtakt
