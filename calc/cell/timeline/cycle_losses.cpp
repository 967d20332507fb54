#include "cell/timeline/cycle_losses.hpp"

#include <algorithm>

namespace seamtakt {

std::vector<CycleLoss> cycle_losses(const CycleResult& cycle) {
  std::vector<CycleLoss> losses{
      {"air moves", cycle.air_s},           {"arc starts and ends", cycle.start_end_s},
      {"sensing", cycle.sense_s},           {"waiting", cycle.wait_s},
      {"positioner", cycle.orientation_s},  {"torch service", cycle.service_s},
      {"wire changes", cycle.wire_change_s}};
  std::erase_if(losses, [](const CycleLoss& loss) { return loss.time_s <= 0; });
  std::stable_sort(losses.begin(), losses.end(),
                   [](const CycleLoss& a, const CycleLoss& b) { return a.time_s > b.time_s; });
  return losses;
}

}  // namespace seamtakt
