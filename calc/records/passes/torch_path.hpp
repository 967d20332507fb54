#pragma once

#include <optional>

#include "plan/plan.hpp"

namespace seamtakt {

/// Length of the torch's own path at two resolutions. On a seam the two agree; a weaving torch's fine path is
/// much longer than its coarse one.
class TorchPath {
 public:
  /// Of the coarse path: several pitches of a weave.
  static constexpr double coarse_step_mm = 10;

  struct Increment {
    double fine_mm = 0, coarse_mm = 0;
  };
  /// `last`: the arc ends here, the remainder of both paths is added.
  Increment move_to(const Point_mm& torch, bool last);
  void lift() { fine_.reset(), coarse_.reset(); }

  /// Whether paths of these lengths are those of a weaving torch. Bends and a few corners aren't.
  static bool weaves(double fine_mm, double coarse_mm);

 private:
  std::optional<Point_mm> fine_, coarse_;  ///< last corner of each path
};

}  // namespace seamtakt
