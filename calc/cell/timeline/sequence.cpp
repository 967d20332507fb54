#include "cell/timeline/sequence.hpp"

#include "cell/timeline/pairs.hpp"
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

namespace {

/// Dispatches whole seams, robot by robot in file order.
class GivenOrder {
 public:
  GivenOrder(const CellModel& model, std::vector<int>* overtaken)
      : model_(model),
        overtaken_(overtaken),
        scheduler_(model),
        lists_(model.robots.size()),
        next_(model.robots.size(), 0),
        noted_(model.seams.size(), 0) {
    for (int seam = 0; seam < static_cast<int>(model.seams.size()); ++seam)
      lists_[robot_of(seam)].push_back(seam);
    sequence_.reserve(model.passes.size());
  }

  Sequence order() {
    while (sequence_.size() < model_.passes.size()) {
      int seam = earliest_head();
      if (seam < 0) seam = overtaking_seam();
      if (seam < 0) break;  // unreachable: `after` has no circles
      take(seam);
    }
    return std::move(sequence_);
  }

 private:
  int robot_of(int seam) const { return model_.robots_of[model_.seams[seam].first_robot]; }
  Step first_step(int seam) const { return {seam, static_cast<std::int16_t>(robot_of(seam)), false}; }

  /// A robot's next seam in file order; -1 when it has none left.
  int head(std::size_t robot) {
    const auto& list = lists_[robot];
    while (next_[robot] < list.size() && scheduler_.done(list[next_[robot]])) ++next_[robot];
    return next_[robot] < list.size() ? list[next_[robot]] : -1;
  }

  int earliest_head() {
    int best = -1;
    double best_s = Scheduler::impossible;
    for (std::size_t robot = 0; robot < lists_.size(); ++robot) {
      const int seam = head(robot);
      if (seam < 0) continue;
      const double leave_s = scheduler_.departure_s(first_step(seam));
      if (leave_s < best_s || (leave_s == best_s && best >= 0 && seam < best)) {
        best = seam;
        best_s = leave_s;
      }
    }
    return best;
  }

  /// Every head has to follow a seam that is behind a head: the first seam of the file that may be welded
  /// comes next.
  int overtaking_seam() {
    for (int seam = 0; seam < static_cast<int>(model_.seams.size()); ++seam) {
      if (scheduler_.done(seam) || scheduler_.departure_s(first_step(seam)) == Scheduler::impossible)
        continue;
      const int overtaken = head(static_cast<std::size_t>(robot_of(seam)));
      if (overtaken_ && !noted_[overtaken]) overtaken_->push_back(overtaken);
      noted_[overtaken] = 1;
      return seam;
    }
    return -1;
  }

  void take(int seam) {
    Step step = first_step(seam);
    for (int pass = 0; pass < model_.seams[seam].pass_count; ++pass) {
      step.reversed = pass % 2 == 1 && model_.seams[seam].reversible;
      scheduler_.append(step);
      sequence_.push_back(step);
    }
  }

  const CellModel& model_;
  std::vector<int>* overtaken_;
  Scheduler scheduler_;
  std::vector<std::vector<int>> lists_;
  std::vector<std::size_t> next_;
  std::vector<char> noted_;
  Sequence sequence_;
};

}  // namespace

Sequence sequence_given(const CellModel& model, std::vector<int>* overtaken) {
  if (!model.has_pairs) return GivenOrder(model, overtaken).order();
  return paired_order(model, GivenOrder(without_pairs(model), overtaken).order());
}

}  // namespace seamtakt
