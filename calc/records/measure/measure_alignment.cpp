#include <Eigen/Core>
#include <Eigen/Geometry>
#include <algorithm>

#include "records/measure/measure.hpp"

namespace seamtakt {

namespace {

Eigen::Vector3d vector(const Point_mm& point) {
  return {point[0], point[1], point[2]};
}

/// Middle of the box around points.
template <class List, class At>
Eigen::Vector3d middle_of(const List& list, const At& at) {
  Eigen::Vector3d low = at(list.front()), high = low;
  for (const auto& item : list) {
    low = low.cwiseMin(at(item));
    high = high.cwiseMax(at(item));
  }
  return (low + high) / 2;
}

const MeasuredPoint* find(const std::vector<MeasuredPoint>& points, const std::string& id) {
  const auto at =
      std::find_if(points.begin(), points.end(), [&](const MeasuredPoint& p) { return p.id == id; });
  return at == points.end() ? nullptr : &*at;
}

}  // namespace

std::vector<MeasuredPoint> aligned_with_seams(const std::vector<MeasuredPoint>& points,
                                              const Weldment& weldment) {
  std::vector<Eigen::Vector3d> datum;
  for (const Feature& feature : weldment.features)
    for (const std::string& id : feature.points) {
      const MeasuredPoint* point = find(points, id);
      if (point == nullptr || datum.size() >= 3) continue;
      const Eigen::Vector3d at = vector(point->at_mm);
      const bool apart = datum.size() < 2
                             ? datum.empty() || (at - datum[0]).norm() > 1
                             : (datum[1] - datum[0]).normalized().cross(at - datum[0]).norm() > 1;
      if (apart) datum.push_back(at);
    }
  if (datum.size() < 3 || weldment.seams.empty()) return points;
  Eigen::Matrix3d to_drawing;
  to_drawing.row(0) = (datum[1] - datum[0]).normalized().transpose();
  to_drawing.row(2) = (datum[1] - datum[0]).cross(datum[2] - datum[0]).normalized().transpose();
  to_drawing.row(1) =
      Eigen::Vector3d(to_drawing.row(2)).cross(Eigen::Vector3d(to_drawing.row(0))).transpose();
  std::vector<Point_mm> path;
  for (const Seam& seam : weldment.seams) path.insert(path.end(), seam.path_mm.begin(), seam.path_mm.end());
  const Eigen::Vector3d shift = middle_of(path, [](const Point_mm& p) { return vector(p); }) -
                                middle_of(points, [&](const MeasuredPoint& p) {
                                  return Eigen::Vector3d(to_drawing * vector(p.at_mm));
                                });
  std::vector<MeasuredPoint> aligned = points;
  for (MeasuredPoint& point : aligned) {
    const Eigen::Vector3d at = to_drawing * vector(point.at_mm) + shift;
    point.at_mm = {at[0], at[1], at[2]};
  }
  return aligned;
}

}  // namespace seamtakt
