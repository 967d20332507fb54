#include "exchange/picture/face_tree.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

constexpr double on_plane_mm = 1e-3;
constexpr std::size_t most_exact_faces = 6000;
constexpr std::size_t tried_dividers = 12;
/// A cut costs as much as this many parts more on one side than on the other.
constexpr double weight_of_cut = 6;
/// A face that is all but edge-on isn't drawn.
constexpr double least_facing = 1e-9;

}  // namespace

/// A part that has no place yet.
struct FaceTree::Loose {
  std::uint32_t face = 0;
  Point_mm normal{0, 0, 0};
  double offset_mm = 0;
  std::vector<Point_mm> corners_mm;
  std::vector<int> sides;

  /// Least and greatest distance of its corners from a plane.
  std::pair<double, double> reach(const Loose& plane) const {
    double low = 1e300, high = -1e300;
    for (const Point_mm& corner : corners_mm) {
      const double distance = space::dot(plane.normal, corner) - plane.offset_mm;
      low = std::min(low, distance);
      high = std::max(high, distance);
    }
    return {low, high};
  }

  /// What of it is on the plane's side of `sign`.
  Loose part_on(const Loose& plane, double sign) const {
    Loose part{face, normal, offset_mm, {}, {}};
    const std::size_t n = corners_mm.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Point_mm &a = corners_mm[i], &b = corners_mm[(i + 1) % n];
      const double at_a = sign * (space::dot(plane.normal, a) - plane.offset_mm);
      const double at_b = sign * (space::dot(plane.normal, b) - plane.offset_mm);
      const bool a_in = at_a > -on_plane_mm, b_in = at_b > -on_plane_mm;
      const bool a_on = std::abs(at_a) <= on_plane_mm, b_on = std::abs(at_b) <= on_plane_mm;
      if (a_in) {
        // From a corner on the plane to one beyond it, the new side runs along the plane.
        part.corners_mm.push_back(a);
        part.sides.push_back(a_on && !b_in ? inner_side : sides[i]);
      }
      if (a_in != b_in && !a_on && !b_on) {
        part.corners_mm.push_back(space::between(a, b, at_a / (at_a - at_b)));
        part.sides.push_back(a_in ? inner_side : sides[i]);
      }
    }
    return part;
  }
};

struct FaceTree::Task {
  std::size_t node;
  std::vector<Loose> loose;
};

FaceTree::FaceTree(const SolidFaces& faces) {
  std::vector<Loose> loose;
  loose.reserve(faces.faces.size());
  for (std::size_t i = 0; i < faces.faces.size(); ++i) {
    const SolidFace& face = faces.faces[i];
    const auto corners = faces.corners_of(face);
    const auto sides = std::span(faces.sides).subspan(face.first, face.count);
    loose.push_back({static_cast<std::uint32_t>(i), face.normal, face.offset_mm,
                     std::vector<Point_mm>(corners.begin(), corners.end()),
                     std::vector<int>(sides.begin(), sides.end())});
  }
  is_exact_ = loose.size() <= most_exact_faces;
  if (is_exact_)
    grow(std::move(loose));
  else
    for (const Loose& part : loose) keep(part);
}

void FaceTree::keep(const Loose& part) {
  parts_.push_back({part.face, static_cast<std::uint32_t>(corners_mm_.size()),
                    static_cast<std::uint32_t>(part.corners_mm.size())});
  corners_mm_.insert(corners_mm_.end(), part.corners_mm.begin(), part.corners_mm.end());
  sides_.insert(sides_.end(), part.sides.begin(), part.sides.end());
}

/// Of a few of the parts the one whose plane cuts least and divides most evenly.
std::size_t FaceTree::divider_of(const std::vector<Loose>& loose) {
  std::size_t best = 0;
  double least = 1e300;
  const std::size_t step = std::max<std::size_t>(1, loose.size() / tried_dividers);
  for (std::size_t tried = 0; tried < loose.size(); tried += step) {
    double cuts = 0, before = 0, behind = 0;
    for (const Loose& part : loose) {
      const auto [low, high] = part.reach(loose[tried]);
      const bool is_before = high > on_plane_mm, is_behind = low < -on_plane_mm;
      cuts += is_before && is_behind;
      before += is_before;
      behind += is_behind;
    }
    const double cost = weight_of_cut * cuts + std::abs(before - behind);
    if (cost < least) {
      least = cost;
      best = tried;
    }
  }
  return best;
}

void FaceTree::grow(std::vector<Loose> loose) {
  if (loose.empty()) return;
  nodes_.emplace_back();
  std::vector<Task> tasks;
  tasks.push_back({0, std::move(loose)});
  while (!tasks.empty()) {
    Task task = std::move(tasks.back());
    tasks.pop_back();
    const std::size_t at = divider_of(task.loose);
    Loose plane{0, task.loose[at].normal, task.loose[at].offset_mm, {}, {}};
    nodes_[task.node].normal = plane.normal;
    nodes_[task.node].offset_mm = plane.offset_mm;
    nodes_[task.node].first = static_cast<std::uint32_t>(parts_.size());
    std::vector<Loose> before, behind;
    for (std::size_t i = 0; i < task.loose.size(); ++i) {
      Loose& part = task.loose[i];
      const auto [low, high] = part.reach(plane);
      const bool is_before = high > on_plane_mm, is_behind = low < -on_plane_mm;
      if (i == at || (!is_before && !is_behind)) {
        keep(part);
      } else if (is_before && is_behind) {
        before.push_back(part.part_on(plane, 1));
        behind.push_back(part.part_on(plane, -1));
      } else {
        (is_before ? before : behind).push_back(std::move(part));
      }
    }
    nodes_[task.node].count = static_cast<std::uint32_t>(parts_.size()) - nodes_[task.node].first;
    const auto branch = [&](std::vector<Loose>& parts) {
      if (parts.empty()) return -1;
      nodes_.emplace_back();
      tasks.push_back({nodes_.size() - 1, std::move(parts)});
      return static_cast<int>(nodes_.size() - 1);
    };
    const int before_node = branch(before), behind_node = branch(behind);
    nodes_[task.node].before = before_node;
    nodes_[task.node].behind = behind_node;
  }
}

void FaceTree::order(const SolidFaces& faces, const Point_mm& to_viewer,
                     std::vector<std::uint32_t>& order) const {
  order.clear();
  if (!is_exact_) return order_by_depth(faces, to_viewer, order);
  if (nodes_.empty()) return;
  // A node stands for itself with its branches, or, complemented, for its own parts alone.
  std::vector<int> open;
  open.reserve(64);
  open.push_back(0);
  while (!open.empty()) {
    const int top = open.back();
    open.pop_back();
    if (top < 0) {
      const Node& node = nodes_[static_cast<std::size_t>(~top)];
      for (std::uint32_t i = node.first; i < node.first + node.count; ++i)
        if (space::dot(faces.faces[parts_[i].face].normal, to_viewer) > least_facing) order.push_back(i);
      continue;
    }
    const Node& node = nodes_[static_cast<std::size_t>(top)];
    const bool faces_viewer = space::dot(node.normal, to_viewer) > 0;
    const int near = faces_viewer ? node.before : node.behind, far = faces_viewer ? node.behind : node.before;
    if (near >= 0) open.push_back(near);
    open.push_back(~top);
    if (far >= 0) open.push_back(far);
  }
}

void FaceTree::order_by_depth(const SolidFaces& faces, const Point_mm& to_viewer,
                              std::vector<std::uint32_t>& order) const {
  std::vector<double> depth(parts_.size());
  for (std::uint32_t i = 0; i < parts_.size(); ++i) {
    if (!(space::dot(faces.faces[parts_[i].face].normal, to_viewer) > least_facing)) continue;
    for (const Point_mm& corner : corners_of(parts_[i]))
      depth[i] += space::dot(corner, to_viewer) / parts_[i].count;
    order.push_back(i);
  }
  std::sort(order.begin(), order.end(),
            [&](std::uint32_t a, std::uint32_t b) { return depth[a] < depth[b]; });
}

}  // namespace seamtakt
