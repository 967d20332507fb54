#pragma once

#include "base/error.hpp"

namespace seamtakt {

/// What an InputError says, as a part of another sentence: "FILE:3: found FOUND, expected EXPECTED".
Sentence refusal_sentence(const InputError& error);

}  // namespace seamtakt
