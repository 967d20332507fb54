#include "exchange/picture/leader_labels.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace seamtakt {

namespace {

constexpr double reaches[] = {26, 48, 76, 110, 150};
constexpr int label_directions = 12;

bool labels_meet(const LeaderLabel& a, const LeaderLabel& b) {
  constexpr double apart = 3;
  return a.x < b.x + b.width + apart && b.x < a.x + a.width + apart && a.y < b.y + b.height + apart &&
         b.y < a.y + a.height + apart;
}

void put_label(LeaderLabel& label, std::span<const LeaderLabel> before, const FitRectangle& room) {
  for (const double reach : reaches)
    for (int k = 0; k < label_directions; ++k) {
      // Up and to the right first, then by turns to both sides of it.
      const double turn = (k % 2 ? 1 : -1) * ((k + 1) / 2) * 2 * std::numbers::pi / label_directions;
      const double angle = std::numbers::pi / 4 + turn;
      const double x = label.anchor_x + reach * std::cos(angle), y = label.anchor_y - reach * std::sin(angle);
      label.x = std::cos(angle) >= 0 ? x : x - label.width;
      label.y = y - label.height / 2;
      const bool is_inside = label.x >= room.x && label.y >= room.y &&
                             label.x + label.width <= room.x + room.width &&
                             label.y + label.height <= room.y + room.height;
      if (is_inside && std::none_of(before.begin(), before.end(),
                                    [&](const LeaderLabel& other) { return labels_meet(label, other); }))
        return;
    }
  label.x = std::clamp(label.x, room.x, std::max(room.x, room.x + room.width - label.width));
  label.y = std::clamp(label.y, room.y, std::max(room.y, room.y + room.height - label.height));
}

}  // namespace

void place_labels(std::span<LeaderLabel> labels, const FitRectangle& rectangle) {
  for (std::size_t i = 0; i < labels.size(); ++i) put_label(labels[i], labels.first(i), rectangle);
}

}  // namespace seamtakt
