#include "cell/search/best_order.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "cell/bound/lower_bound.hpp"
#include "cell/search/greedy_order.hpp"
#include "cell/search/routing_search.hpp"
#include "cell/search/sequence_moves.hpp"
#include "cell/timeline/balance.hpp"
#include "cell/timeline/pairs.hpp"
#include "cell/timeline/planned_order.hpp"
#include "cell/timeline/robot_travel.hpp"

namespace seamtakt {

namespace {

constexpr std::uint64_t steps_without_limit = 100'000;
constexpr std::uint64_t steps_between_questions = 128;
/// Greedy constructions over all orders of up to this many orientations; above, over random ones.
constexpr int permuted_orientations = 4;
constexpr int random_constructions = 8;
/// Building greedily is quadratic in the seams.
constexpr std::size_t greedy_seams = 1500;
/// The first annealing cycle; each next one is half as long again.
constexpr std::uint64_t least_cycle_steps = 1000, cycle_steps_per_pass = 100;
/// A routing problem holds a cost for every pair of directions of seams.
constexpr std::size_t routed_seams = 1500;
constexpr std::uint64_t travel_trials = 200;

class Search {
 public:
  Search(const CellModel& model, const BestOptions& options)
      : model_(model),
        options_(options),
        scheduler_(model, Balance::kept),
        moves_(model),
        draws_(options.seed) {
    best_.bound_s = makespan_bound_s(model);
    limit_ = options.steps;
    if (limit_ == 0 && !options.stop) limit_ = steps_without_limit;
    best_.makespan_s = Scheduler::impossible;
  }

  BestOrder run() {
    const Sequence given = sequence_given(model_);
    offer(given);
    if (!options_.start.empty()) offer(options_.start);
    offer(in_time_order(given));
    offer(repaired_order(model_, given));
    if (model_.seams.size() <= greedy_seams) construct();
    if (model_.robot_count() == 1 && model_.seams.size() > 1 && model_.seams.size() <= routed_seams) travel();
    if (model_.passes.size() > 0)
      for (std::uint64_t length = std::max<std::uint64_t>(least_cycle_steps,
                                                          cycle_steps_per_pass * model_.passes.size()),
                         cycle = 0;
           !ended(); length += length / 2, ++cycle)
        anneal(length, cycle);
    return std::move(best_);
  }

 private:
  bool ended() {
    if (best_.proven || (limit_ > 0 && best_.steps >= limit_)) return true;
    if (stopped_) return true;
    if (best_.steps < next_question_) return false;
    next_question_ = best_.steps + steps_between_questions;
    stopped_ = options_.stop && options_.stop();
    return stopped_;
  }

  void offer(const Sequence& sequence) {
    if (sequence.size() != model_.passes.size()) return;
    ++best_.steps;
    take(sequence);
  }

  /// The steps sorted by their start: for orders that keep balance in time, but not in the sequence.
  Sequence in_time_order(const Sequence& sequence) {
    std::vector<BareMove> moves;
    Scheduler(model_).makespan_s(sequence, moves);
    std::stable_sort(moves.begin(), moves.end(),
                     [](const BareMove& a, const BareMove& b) { return a.start_s < b.start_s; });
    Sequence ordered;
    std::vector<int> passes(model_.seams.size(), 0);
    for (const BareMove& move : moves)
      if (move.run >= 0 && move.pass > passes[move.seam]) {
        passes[move.seam] = move.pass;
        ordered.push_back({move.seam, static_cast<std::int16_t>(move.robot), move.reversed});
      }
    for (const CellGroup& group : model_.groups) put_by_turns(begun_by_turns(model_, group, moves), ordered);
    join_pairs(model_, ordered);
    return ordered;
  }

  /// Sorts the seams' first steps, within their places, into this order: it differs only where seams begin
  /// together.
  static void put_by_turns(const std::vector<int>& seams, Sequence& sequence) {
    const auto first_step = [&](int seam) {
      return std::find_if(sequence.begin(), sequence.end(),
                          [&](const Step& step) { return step.seam == seam; });
    };
    std::vector<Sequence::iterator> places;
    Sequence steps;
    for (const int seam : seams) {
      places.push_back(first_step(seam));
      steps.push_back(*places.back());
    }
    std::sort(places.begin(), places.end());
    for (std::size_t i = 0; i < steps.size(); ++i) *places[i] = steps[i];
  }

  void take_if_better(const Sequence& sequence, double makespan_s) {
    if (!(makespan_s < best_.makespan_s)) return;
    best_.sequence = sequence;
    best_.makespan_s = makespan_s;
    best_.proven = best_.bound_s >= makespan_s * (1 - 1e-12);
    if (options_.progress) options_.progress({best_.makespan_s, best_.bound_s, best_.steps});
  }

  void construct() {
    std::vector<int> orientations(static_cast<std::size_t>(model_.orientation_count));
    std::iota(orientations.begin(), orientations.end(), 0);
    const bool all = model_.orientation_count <= permuted_orientations;
    int built = 0;
    do {
      if (ended()) return;
      if (!all)
        for (std::size_t i = orientations.size(); i > 1; --i)
          std::swap(orientations[i - 1],
                    orientations[static_cast<std::size_t>(draws_.below(static_cast<int>(i)))]);
      offer(greedy_order(model_, orientations, 0, draws_));
      offer(greedy_order(model_, orientations, 0.02, draws_));
    } while (all ? std::next_permutation(orientations.begin(), orientations.end())
                 : ++built < random_constructions);
  }

  /// The only robot's travel as a routing problem: for a limited time, or to the end where only travel
  /// counts.
  void travel() {
    std::vector<int> seams(model_.seams.size());
    std::iota(seams.begin(), seams.end(), 0);
    const RoutingProblem problem = travel_of(model_, 0, seams);
    RoutingSearch search(problem, options_.seed);
    const bool decides = travel_decides(model_);
    const std::uint64_t enough = best_.steps + travel_trials * search.batch();
    while (!ended() && (decides || best_.steps < enough)) {
      const bool better = search.advance(search.batch());
      best_.steps += search.batch();
      if (better) take(steps_of(model_, 0, seams, search.best()));
    }
  }

  void take(const Sequence& sequence) { take_if_better(sequence, scheduler_.makespan_s(sequence)); }

  /// What is minimised: the makespan, plus a small weight on all end times, so that the search sees progress
  /// off the critical path.
  double cost(double makespan_s) const {
    return makespan_s + 0.01 * scheduler_.flow_s() / static_cast<double>(model_.passes.size());
  }

  void anneal(std::uint64_t length, std::uint64_t cycle) {
    Sequence current = best_.sequence, tried;
    double current_cost = cost(scheduler_.makespan_s(current));
    const double mean_s = best_.makespan_s / static_cast<double>(model_.passes.size());
    const double hot_s = mean_s * (cycle % 3 == 0 ? 0.4 : cycle % 3 == 1 ? 0.1 : 0.03);
    const double cold_s = hot_s / 200, ratio = std::log(cold_s / hot_s);
    double temperature_s = hot_s;
    for (std::uint64_t i = 0; i < length && !ended(); ++i) {
      if (i % 64 == 0)
        temperature_s = hot_s * std::exp(ratio * static_cast<double>(i) / static_cast<double>(length));
      tried = current;
      moves_.change(tried, draws_);
      ++best_.steps;
      const double makespan_s = scheduler_.makespan_s(tried);
      if (makespan_s == Scheduler::impossible) continue;
      take_if_better(tried, makespan_s);
      const double tried_cost = cost(makespan_s);
      if (tried_cost > current_cost - temperature_s * std::log(1 - draws_.unit())) continue;
      std::swap(current, tried);
      current_cost = tried_cost;
    }
  }

  const CellModel& model_;
  const BestOptions& options_;
  Scheduler scheduler_;
  SequenceMoves moves_;
  SeededDraws draws_;
  BestOrder best_;
  std::uint64_t limit_ = 0, next_question_ = 0;
  bool stopped_ = false;
};

/// Whether the order that the search began from keeps balance and has a shorter cycle than the one found.
bool is_start_faster(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                     const Sequence& start, const CycleResult& found) {
  if (start.empty() || Scheduler(compiled.model, Balance::kept).makespan_s(start) == Scheduler::impossible)
    return false;
  const double start_s = timeline_of(plan, weldment, compiled, start, Balance::kept).cycle_time_s;
  return start_s < found.cycle_time_s;
}

}  // namespace

BestOrder best_order(const CellModel& model, const BestOptions& options) {
  return Search(model, options).run();
}

CycleResult cycle_best(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                       const BestOptions& options) {
  const CompiledCell compiled = compile_cell(plan, weldment, evaluation);
  BestOptions from_plan = options;
  if (!weldment.order.empty()) {
    // Findings about the plan's order don't apply to the order found here.
    CompiledCell scratch = compiled;
    from_plan.start = planned_order(plan, weldment, scratch).sequence;
  }
  const BestOrder best = best_order(compiled.model, from_plan);
  CycleResult cycle = cycle_of(plan, weldment, compiled, best.sequence, Balance::kept);
  // On plates that warm up the search's fixed waits are only an estimate: the timeline decides.
  if (is_start_faster(plan, weldment, compiled, from_plan.start, cycle))
    cycle = cycle_of(plan, weldment, compiled, from_plan.start, Balance::kept);
  cycle.orders_tried = best.steps;
  judge_cycle(plan, weldment, evaluation, cycle);
  return cycle;
}

}  // namespace seamtakt
