#include "cell/search/sequence_moves.hpp"

#include <algorithm>

#include "cell/timeline/pairs.hpp"

namespace seamtakt {

SequenceMoves::SequenceMoves(const CellModel& model) : model_(&model) {
  for (const CellSeam& seam : model.seams) several_robots_ = several_robots_ || seam.robot_count > 1;
}

/// A place to put a step: near its own, or beside one that is in the same orientation, or anywhere.
int SequenceMoves::place_near(const Sequence& sequence, int step, SeededDraws& draws) const {
  const int count = static_cast<int>(sequence.size());
  const int kind = draws.below(10);
  if (kind < 5) return std::clamp(step + draws.below(21) - 10, 0, count - 1);
  int place = draws.below(count);
  if (kind < 9)
    for (int tries = 0; tries < 8; ++tries) {
      if (seam_of(sequence[place]).orientation == seam_of(sequence[step]).orientation) break;
      place = draws.below(count);
    }
  return place;
}

void SequenceMoves::move_step(Sequence& sequence, int from, int to) const {
  if (from < to)
    std::rotate(sequence.begin() + from, sequence.begin() + from + 1, sequence.begin() + to + 1);
  else
    std::rotate(sequence.begin() + to, sequence.begin() + from, sequence.begin() + from + 1);
}

/// Takes a seam's steps out, into taken_.
void SequenceMoves::take_out(Sequence& sequence, int seam) {
  taken_.clear();
  std::size_t kept = 0;
  for (const Step& step : sequence)
    if (step.seam == seam)
      taken_.push_back(step);
    else
      sequence[kept++] = step;
  sequence.resize(kept);
}

void SequenceMoves::move_seam(Sequence& sequence, int from, SeededDraws& draws) {
  const int to = place_near(sequence, from, draws);
  take_out(sequence, sequence[from].seam);
  if (draws.chance(0.3)) {
    const bool reversible = seam_of(taken_.front()).reversible;
    for (Step& step : taken_) step.reversed = reversible && !step.reversed;
  }
  const auto place = std::min<std::size_t>(static_cast<std::size_t>(to), sequence.size());
  sequence.insert(sequence.begin() + static_cast<std::ptrdiff_t>(place), taken_.begin(), taken_.end());
}

/// Two seams change places; where each could be welded by the other's robot, the robots too.
void SequenceMoves::exchange_seams(Sequence& sequence, int first, SeededDraws& draws) {
  const int second = place_near(sequence, first, draws);
  const Step a = sequence[first], b = sequence[second];
  if (a.seam == b.seam) return;
  const bool crosswise = a.robot != b.robot && (seam_of(a).robot_mask >> b.robot & 1) &&
                         (seam_of(b).robot_mask >> a.robot & 1) && draws.chance(0.5);
  std::swap(sequence[first], sequence[second]);
  if (!crosswise) return;
  for (Step& step : sequence) {
    if (step.seam == a.seam)
      step.robot = b.robot;
    else if (step.seam == b.seam)
      step.robot = a.robot;
  }
}

void SequenceMoves::turn_round(Sequence& sequence, int at, SeededDraws& draws) const {
  if (!seam_of(sequence[at]).reversible) return;
  if (seam_of(sequence[at]).pass_count == 1 || draws.chance(0.5)) {
    sequence[at].reversed = !sequence[at].reversed;
    return;
  }
  const int seam = sequence[at].seam;
  for (Step& step : sequence)
    if (step.seam == seam) step.reversed = !step.reversed;
}

void SequenceMoves::give_to_another(Sequence& sequence, int at, SeededDraws& draws) {
  const CellSeam& seam = seam_of(sequence[at]);
  if (seam.robot_count < 2) return move_seam(sequence, at, draws);
  int robot = sequence[at].robot;
  while (robot == sequence[at].robot)
    robot = model_->robots_of[seam.first_robot + draws.below(seam.robot_count)];
  const int given = sequence[at].seam;
  for (Step& step : sequence)
    if (step.seam == given) step.robot = static_cast<std::int16_t>(robot);
  if (draws.chance(0.7)) move_seam(sequence, at, draws);
}

void SequenceMoves::move_stretch(Sequence& sequence, int from, SeededDraws& draws) const {
  const int count = static_cast<int>(sequence.size());
  const int length = std::min(2 + draws.below(6), count - from);
  const int to = std::min(place_near(sequence, from, draws), count - length);
  const auto at = sequence.begin();
  if (to < from)
    std::rotate(at + to, at + from, at + from + length);
  else
    std::rotate(at + from, at + from + length, at + to + length);
}

/// The steps of one robot within a stretch, reversed in order and direction.
void SequenceMoves::reverse_stretch(Sequence& sequence, int from, SeededDraws& draws) {
  const int last = std::min(static_cast<int>(sequence.size()) - 1, from + 2 + draws.below(14));
  places_.clear();
  for (int i = from; i <= last; ++i)
    if (sequence[i].robot == sequence[from].robot) places_.push_back(i);
  for (std::size_t i = 0, k = places_.size(); i + 1 < k; ++i)
    std::swap(sequence[places_[i]], sequence[places_[--k]]);
  for (const int place : places_)
    if (seam_of(sequence[place]).reversible) sequence[place].reversed = !sequence[place].reversed;
}

void SequenceMoves::change(Sequence& sequence, SeededDraws& draws) {
  if (sequence.empty()) return;
  change_somewhere(sequence, draws);
  if (model_->has_pairs) join_pairs(*model_, sequence);
}

void SequenceMoves::change_somewhere(Sequence& sequence, SeededDraws& draws) {
  const int at = draws.below(static_cast<int>(sequence.size()));
  const int kind = draws.below(100);
  if (several_robots_ && kind < 20) return give_to_another(sequence, at, draws);
  if (kind < 40) return move_step(sequence, at, place_near(sequence, at, draws));
  if (kind < 60) return move_seam(sequence, at, draws);
  if (kind < 74) return exchange_seams(sequence, at, draws);
  if (kind < 84) return turn_round(sequence, at, draws);
  if (kind < 92) return move_stretch(sequence, at, draws);
  reverse_stretch(sequence, at, draws);
}

}  // namespace seamtakt
