#pragma once

#include "plan/evaluation.hpp"
#include "plan/explanation_sink.hpp"
#include "plan/pass_facts.hpp"

namespace seamtakt {

/// Carbon equivalents, preheat, hardness, penetration and transfer of a pass whose heat input and cooling
/// times are known already.
void add_metallurgy(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink);

}  // namespace seamtakt
