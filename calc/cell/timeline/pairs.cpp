#include "cell/timeline/pairs.hpp"

#include <algorithm>

#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

bool has_to_follow(const CellModel& model, int seam, int before) {
  std::vector<char> seen(model.seams.size(), 0);
  std::vector<int> open;
  const auto add_after = [&](int at) {
    const CellSeam& follows = model.seams[at];
    for (int i = follows.first_after; i < follows.first_after + follows.after_count; ++i)
      if (!seen[model.after[i]]) {
        seen[model.after[i]] = 1;
        open.push_back(model.after[i]);
      }
  };
  add_after(seam);
  while (!open.empty()) {
    const int at = open.back();
    open.pop_back();
    if (at == before) return true;
    add_after(at);
    if (model.seams[at].partner >= 0) add_after(model.seams[at].partner);
  }
  return false;
}

namespace {

/// A robot of the seam other than this one; -1 where there is none.
int another_robot(const CellModel& model, int seam, int robot) {
  const CellSeam& at = model.seams[seam];
  for (int i = at.first_robot; i < at.first_robot + at.robot_count; ++i)
    if (model.robots_of[i] != robot) return model.robots_of[i];
  return -1;
}

void give(Sequence& sequence, int seam, int robot) {
  for (Step& step : sequence)
    if (step.seam == seam) step.robot = static_cast<std::int16_t>(robot);
}

}  // namespace

void join_pairs(const CellModel& model, Sequence& sequence) {
  if (!model.has_pairs) return;
  std::vector<char> seen(model.seams.size(), 0);
  for (std::size_t i = 0; i < sequence.size(); ++i) {
    const int seam = sequence[i].seam, partner = model.seams[seam].partner;
    if (seen[seam]) continue;
    seen[seam] = 1;
    if (partner < 0 || seen[partner]) continue;
    const auto other = std::find_if(sequence.begin() + static_cast<std::ptrdiff_t>(i) + 1, sequence.end(),
                                    [&](const Step& step) { return step.seam == partner; });
    if (other == sequence.end()) continue;
    const int robot = sequence[i].robot;
    if (other->robot == robot) {
      if (const int free = another_robot(model, partner, robot); free >= 0)
        give(sequence, partner, free);
      else if (const int own = another_robot(model, seam, robot); own >= 0)
        give(sequence, seam, own);
    }
    std::rotate(sequence.begin() + static_cast<std::ptrdiff_t>(i) + 1, other, other + 1);
    seen[partner] = 1;
    ++i;
  }
}

CellModel without_pairs(const CellModel& model) {
  CellModel unpaired = model;
  for (CellSeam& seam : unpaired.seams) seam.partner = -1;
  unpaired.has_pairs = false;
  return unpaired;
}

Sequence paired_order(const CellModel& model, const Sequence& wanted) {
  Scheduler scheduler(model);
  Sequence left = wanted, order;
  join_pairs(model, left);
  order.reserve(left.size());
  while (!left.empty()) {
    const auto next =
        std::find_if(left.begin(), left.end(), [&](const Step& step) { return scheduler.append(step); });
    if (next == left.end()) break;  // unreachable: pairs that would block one another aren't made
    order.push_back(*next);
    left.erase(next);
  }
  return order;
}

}  // namespace seamtakt
