#pragma once

#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// The order that a plan gives a weldment's passes.
struct PlannedOrder {
  Sequence sequence;
  Balance balance = Balance::ignored;
};

/// The weldment's `order`, as far as it can be done: a step that can't be (a seam that is now manual, a robot
/// that can't weld it, a seam before one that it comes after, a pass too many) is left out, and passes that
/// it doesn't name follow at its end, in the file's order (finding cycle.order.mended, warn). Balance is kept
/// where the order keeps it. Without an `order`: sequence_given, with the note cycle.order.after for each
/// seam that was overtaken. Adds its findings to `compiled`.
PlannedOrder planned_order(const Plan& plan, const Weldment& weldment, CompiledCell& compiled);

}  // namespace seamtakt
