#include "cell/search/greedy_order.hpp"

#include <algorithm>

namespace seamtakt {

Sequence repaired_order(const CellModel& model, const Sequence& wanted) {
  Scheduler scheduler(model, Balance::kept);
  Sequence left = wanted, order;
  order.reserve(wanted.size());
  while (!left.empty()) {
    const auto next =
        std::find_if(left.begin(), left.end(), [&](const Step& step) { return scheduler.append(step); });
    if (next == left.end()) return {};  // unreachable: neither `after` nor balance can block everything
    order.push_back(*next);
    left.erase(next);
  }
  return order;
}

namespace {

class Greedy {
 public:
  Greedy(const CellModel& model, const std::vector<int>& orientations, double noise, SeededDraws& draws)
      : model_(model),
        orientations_(orientations),
        noise_(noise),
        draws_(draws),
        scheduler_(model, Balance::kept),
        done_(model.seams.size(), 0),
        robot_(model.seams.size(), -1) {
    for (int i = 0; i < static_cast<int>(model.seams.size()); ++i) open_.push_back(i);
  }

  Sequence order() {
    Sequence order;
    while (!open_.empty()) {
      const Step step = next();
      if (step.seam < 0 || !scheduler_.append(step)) return {};
      order.push_back(step);
      robot_[step.seam] = step.robot;
      turned_ = turned_ || model_.seams[step.seam].orientation >= 0;
      if (++done_[step.seam] == model_.seams[step.seam].pass_count)
        open_.erase(std::find(open_.begin(), open_.end(), step.seam));
    }
    return order;
  }

 private:
  /// How soon the step could be begun, the wait for cooling included; a turn of the positioner counts by its
  /// rank in the requested orientations.
  double cost(const Step& step) const {
    const auto preview = scheduler_.preview(step);
    if (!preview.possible) return Scheduler::impossible;
    const double cost = preview.arrive_s * (1 + noise_ * draws_.unit());
    const int orientation = model_.seams[step.seam].orientation;
    if (orientation < 0 || (turned_ && !preview.turns)) return cost;
    const auto rank =
        std::find(orientations_.begin(), orientations_.end(), orientation) - orientations_.begin();
    return cost + 1e7 * static_cast<double>(turned_ ? 1 + rank : rank);
  }

  Step next() const {
    Step best{-1, 0, false};
    double best_cost = Scheduler::impossible;
    for (const int i : open_) {
      const CellSeam& seam = model_.seams[i];
      for (int k = 0; k < seam.robot_count; ++k) {
        const int robot = model_.robots_of[seam.first_robot + k];
        if (robot_[i] >= 0 && robot_[i] != robot) continue;
        for (const bool reversed : {false, true}) {
          if (reversed && !seam.reversible) continue;
          const Step step{i, static_cast<std::int16_t>(robot), reversed};
          const double step_cost = cost(step);
          if (step_cost < best_cost) best = step;
          best_cost = std::min(best_cost, step_cost);
        }
      }
    }
    return best;
  }

  const CellModel& model_;
  const std::vector<int>& orientations_;
  double noise_;
  SeededDraws& draws_;
  Scheduler scheduler_;
  std::vector<int> open_, done_, robot_;
  bool turned_ = false;  ///< whether an orientation was chosen; before, the weldment's orientation is free
};

}  // namespace

Sequence greedy_order(const CellModel& model, const std::vector<int>& orientations, double noise,
                      SeededDraws& draws) {
  return Greedy(model, orientations, noise, draws).order();
}

}  // namespace seamtakt
