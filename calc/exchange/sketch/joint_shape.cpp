#include "exchange/sketch/joint_shape.hpp"

#include <algorithm>

namespace seamtakt {

std::optional<SketchedJoint> joint_shape(const Seam& seam) {
  if (seam.thickness_mm.size() != 2) return std::nullopt;
  return seam.groove ? groove_shape(seam) : fillet_shape(seam);
}

std::vector<int> runs_in_layers(std::size_t count, std::size_t one_each_up_to) {
  std::vector<int> layers;
  std::size_t left = count;
  for (std::size_t next = 1; left > 0; ++next) {
    const std::size_t here = count <= one_each_up_to ? 1 : std::min(next, left);
    layers.push_back(static_cast<int>(here));
    left -= here;
  }
  return layers;
}

}  // namespace seamtakt
