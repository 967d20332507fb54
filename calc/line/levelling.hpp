#pragma once

#include <optional>
#include <vector>

#include "line/line_figures.hpp"
#include "line/line_times.hpp"
#include "line/orders.hpp"

namespace seamtakt {

struct LevelRequest {
  std::optional<TaktGoal> goal;
  std::uint64_t seed = 1;
  int runs = 10;              ///< by whose mean a sequence is judged, where chance is in the line
  long evaluations = 20'000;  ///< sequences tried at most; less for large days, so that it takes seconds
  ConsumableChanges changes;
};

/// Re-sequences a day's orders: goal chasing, then local search on takt misses. Due dates are kept: an order
/// is never placed behind one that is due later (a given order that violates this is corrected first).
///
/// Goal chasing takes as the next unit the weldment that keeps the use so far nearest to an even use:
///   least sum over the goals of (k*T_g/Q - (X_g + b_wg))^2,
/// k the position, Q the units, T_g the goal's total, X_g used so far, b_wg what weldment w uses of it; goals
/// are the weldments' own counts and each stage's work, as multiples of the mean unit's. Source: monden-1983,
/// goal chasing; the term of the products' counts: miltenburg-1989. Deviation: workloads of the stages are
/// goals as the counts are, and each due date's orders are chased separately. The search swaps and moves
/// units, accepts what isn't worse in (late orders, misses, time lost, makespan) of the runs, and gives the
/// same result for the same seed. Returned: the sequence as positions in `orders`.
std::vector<int> level_orders(const std::vector<Order>& orders, const std::vector<int>& weldment_of_order,
                              const LineTimes& times, const LevelRequest& request);

}  // namespace seamtakt
