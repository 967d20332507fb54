#include "exchange/picture/torch_place.hpp"

#include <algorithm>

#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

/// The point at a share of a polyline's length.
Point_mm at_share(const std::vector<Point_mm>& points, double share) {
  double whole_mm = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    whole_mm += space::length(space::minus(points[i], points[i - 1]));
  double left_mm = share * whole_mm;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const double piece_mm = space::length(space::minus(points[i], points[i - 1]));
    if (left_mm <= piece_mm && piece_mm > 0)
      return space::between(points[i - 1], points[i], left_mm / piece_mm);
    left_mm -= piece_mm;
  }
  return points.back();
}

}  // namespace

std::vector<TorchPlace> torch_places(const CycleResult& cycle, double at_s) {
  std::vector<TorchPlace> places;
  std::vector<const Move*> last;
  for (const Move& move : cycle.moves) {
    if (move.robot.empty() || move.points.empty() || move.start_s > at_s) continue;
    const auto known = std::find_if(places.begin(), places.end(),
                                    [&](const TorchPlace& place) { return place.robot == move.robot; });
    const auto index = static_cast<std::size_t>(known - places.begin());
    if (known == places.end()) {
      places.push_back({move.robot, {}, false});
      last.push_back(&move);
    } else if (move.start_s >= last[index]->start_s) {
      last[index] = &move;
    }
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Move& move = *last[i];
    const double took_s = move.end_s - move.start_s;
    const double share = took_s > 0 ? std::min(1.0, (at_s - move.start_s) / took_s) : 1;
    places[i].at_mm = at_share(move.points, share);
    places[i].is_welding = move.kind == MoveKind::arc && at_s < move.end_s;
  }
  return places;
}

}  // namespace seamtakt
