#pragma once

#include <cstdint>
#include <functional>

#include "cell/timeline/cycle_result.hpp"

namespace seamtakt {

struct BestProgress {
  double best_s = 0, bound_s = 0;  ///< of the makespan
  std::uint64_t steps = 0;
};

struct BestOptions {
  std::uint64_t seed = 1;
  std::uint64_t steps = 0;  ///< sequences to try; 0: until `stop`
  /// Called about every hundred steps; true ends the search. A search without steps and stop ends after
  /// 100,000 steps.
  std::function<bool()> stop;
  std::function<void(const BestProgress&)> progress;  ///< called whenever a better order is found
  Sequence start = {};  ///< an order to begin from beside the file's; empty: none
};

struct BestOrder {
  Sequence sequence;
  double makespan_s = 0, bound_s = 0;
  std::uint64_t steps = 0;  ///< sequences tried
  bool proven = false;      ///< the makespan is the bound: no order is faster
};

/// Searches for the order, robots and directions of the least makespan: several constructions (the given
/// order with balance kept; greedy ones by order of orientations; one robot's travel as a routing problem,
/// which is the whole search where nothing but travel counts), then annealing over sequences, evaluated by
/// the scheduler, in increasingly long cycles, each from the best so far, until the steps are used up, `stop`
/// returns true, or the bound is reached. The n-th step depends on model and seed alone: a shorter search is
/// the beginning of a longer one. Never slower than the given order where that keeps balance.
///
/// Source: simulated annealing (kirkpatrick-1983); moves and cycles are our own.
BestOrder best_order(const CellModel& model, const BestOptions& options);

/// `cycle --order best`. Begins from the weldment's own order, too, where it has one.
CycleResult cycle_best(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                       const BestOptions& options);

}  // namespace seamtakt
