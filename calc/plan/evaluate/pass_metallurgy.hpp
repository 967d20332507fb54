#pragma once

#include "plan/evaluate/explanation_sink.hpp"
#include "plan/evaluate/joint_metals.hpp"

namespace seamtakt {

/// Adds carbon equivalents, preheat, hardness, penetration and transfer mode to a pass whose heat and cooling
/// are known.
void add_metallurgy(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                    ExplanationSink* sink);

}  // namespace seamtakt
