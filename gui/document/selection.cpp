#include "document/selection.hpp"

#include <algorithm>

namespace seamtakt::desk {

namespace {

std::size_t kept_within(std::size_t index, std::size_t size) {
  return size == 0 ? 0 : std::min(index, size - 1);
}

/// The present index of the item with the same id; if it is gone or was renamed, the one at its place.
template <class List>
std::size_t followed_index(std::size_t index, const List& before, const List& after) {
  if (index >= before.size()) return kept_within(index, after.size());
  const auto& id = before[index].id;
  if (index < after.size() && after[index].id == id) return index;
  const auto same = std::find_if(after.begin(), after.end(), [&](const auto& each) { return each.id == id; });
  return same != after.end() ? static_cast<std::size_t>(same - after.begin())
                             : kept_within(index, after.size());
}

}  // namespace

void Selection::follow(const Plan& before, const Plan& after) {
  SeamPlace place{followed_index(seam_.weldment, before.weldments, after.weldments), 0};
  if (place.weldment < after.weldments.size()) {
    static const std::vector<Seam> none;
    const auto& were =
        seam_.weldment < before.weldments.size() ? before.weldments[seam_.weldment].seams : none;
    place.seam = followed_index(seam_.seam, were, after.weldments[place.weldment].seams);
  }
  setSeam(place);
  setSchedule(followed_index(schedule_, before.schedules, after.schedules));
}

}  // namespace seamtakt::desk
