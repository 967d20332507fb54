#include "records/passes/torch_path.hpp"

#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// Coarser than the noise and rounding of a robot's positions; finer than any weave.
constexpr double fine_step_mm = 1;

double step(std::optional<Point_mm>& corner, const Point_mm& torch, double least_mm) {
  if (!corner) {
    corner = torch;
    return 0;
  }
  const double distance = distance_mm(*corner, torch);
  if (distance < least_mm) return 0;
  corner = torch;
  return distance;
}

}  // namespace

TorchPath::Increment TorchPath::move_to(const Point_mm& torch, bool last) {
  return {step(fine_, torch, last ? 0 : fine_step_mm), step(coarse_, torch, last ? 0 : coarse_step_mm)};
}

bool TorchPath::weaves(double fine_mm, double coarse_mm) {
  // The coarse path cuts a right-angled corner by 3 mm and bends of 8 mm radius by 8 %; a weave lengthens
  // more.
  return fine_mm > 1.08 * coarse_mm + 3;
}

}  // namespace seamtakt
