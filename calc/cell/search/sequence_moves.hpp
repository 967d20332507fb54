#pragma once

#include <vector>

#include "cell/search/seeded_draws.hpp"
#include "cell/timeline/sequence.hpp"

namespace seamtakt {

/// Small changes of a sequence, drawn at random: a pass or a seam moved elsewhere, two seams exchanged, a
/// direction reversed, a seam given to another robot, a stretch moved, or a robot's stretch reversed. The
/// result has every pass once, by a robot that can weld it and in a direction that the seam allows; the
/// scheduler checks whether its order can be welded.
class SequenceMoves {
 public:
  explicit SequenceMoves(const CellModel& model);

  void change(Sequence& sequence, SeededDraws& draws);

 private:
  void change_somewhere(Sequence& sequence, SeededDraws& draws);
  const CellSeam& seam_of(const Step& step) const { return model_->seams[step.seam]; }
  int place_near(const Sequence& sequence, int step, SeededDraws& draws) const;
  void move_step(Sequence& sequence, int from, int to) const;
  void move_seam(Sequence& sequence, int from, SeededDraws& draws);
  void exchange_seams(Sequence& sequence, int first, SeededDraws& draws);
  void turn_round(Sequence& sequence, int at, SeededDraws& draws) const;
  void give_to_another(Sequence& sequence, int at, SeededDraws& draws);
  void move_stretch(Sequence& sequence, int from, SeededDraws& draws) const;
  void reverse_stretch(Sequence& sequence, int from, SeededDraws& draws);
  void take_out(Sequence& sequence, int seam);

  const CellModel* model_;
  bool several_robots_ = false;
  std::vector<Step> taken_;
  std::vector<int> places_;
};

}  // namespace seamtakt
