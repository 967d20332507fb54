#pragma once

#include <span>
#include <vector>

#include "base/results/column.hpp"
#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// What robots do in a cycle, as a column's group tells it.
enum class CyclePart { none, arc, loss, handling };

/// The members of a cycle, in the order of their JSON.
std::span<const Column<CycleResult>> cycle_columns();
std::span<const Column<Move>> move_columns();

/// The columns of this part, in their order; without a part: of all parts, the arc first.
std::vector<const Column<CycleResult>*> cycle_parts(std::optional<CyclePart> part = {});

/// One part's robot-seconds: summed over the robots.
struct CycleLoss {
  const Column<CycleResult>* part = nullptr;
  double time_s = 0;
};

/// Robot-seconds waited for one cause.
struct WaitSum {
  WaitCause cause = WaitCause::none;
  double time_s = 0;
};
/// The cause as JSON names it ("cooling") and as people read it.
const char* to_string(WaitCause cause);
Word name_of(WaitCause cause);
/// All waits of the robots by their causes, largest first; they add up to wait_s.
std::vector<WaitSum> wait_sums(const CycleResult& cycle);

/// What robots do beside the arc, largest first; moves that take no time are left out.
std::vector<CycleLoss> cycle_losses(const CycleResult& cycle);

}  // namespace seamtakt
