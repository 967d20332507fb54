#pragma once

#include "base/json/json_node.hpp"
#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// What a finding of a stored body says: its sentence, or its text as it is where the body holds no sentence
/// that this program knows. Never throws for what a body may hold.
Sentence stored_sentence(const JsonNode& finding);

}  // namespace seamtakt
