#pragma once

#include <span>

#include "base/results/column.hpp"
#include "plan/evaluate/evaluation.hpp"

namespace seamtakt {

/// The derived values of a plan, in the order of their JSON.
std::span<const Column<PassEvaluation>> pass_columns();
std::span<const Column<SeamEvaluation>> seam_columns();
std::span<const Column<WeldmentEvaluation>> weldment_columns();

}  // namespace seamtakt
