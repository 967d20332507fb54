#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "exchange/picture/solid_faces.hpp"

namespace seamtakt {

/// A part of a face that no other face's plane of the tree cuts.
struct FacePart {
  std::uint32_t face = 0, first = 0, count = 0;
};

/// The order in which faces are painted, far ones first, for any direction of view: a binary tree of planes,
/// made once. Faces that lie on both sides of a plane are cut along it.
///
/// Guarantee: for parallel projection in any direction, each part is visited before every part that hides
/// some of it, also where solids interpenetrate, for gaps above 0.001 mm. Not so for more than 6000 faces:
/// these are only ordered by the depth of their middles.
/// Recalled: binary space partitioning (Fuchs, Kedem and Naylor 1980).
class FaceTree {
 public:
  FaceTree() = default;
  explicit FaceTree(const SolidFaces& faces);

  /// Whether the guarantee holds.
  bool is_exact() const { return is_exact_; }
  const std::vector<FacePart>& parts() const { return parts_; }
  std::span<const Point_mm> corners_of(const FacePart& part) const {
    return std::span(corners_mm_).subspan(part.first, part.count);
  }
  /// Of the side from each corner to the next, as SolidFaces has it.
  std::span<const int> sides_of(const FacePart& part) const {
    return std::span(sides_).subspan(part.first, part.count);
  }

  /// Indexes of `parts()` that face the viewer, far ones first. `to_viewer`: unit vector. `order` is filled
  /// anew; it keeps its memory.
  void order(const SolidFaces& faces, const Point_mm& to_viewer, std::vector<std::uint32_t>& order) const;

 private:
  struct Node {
    Point_mm normal{0, 0, 0};
    double offset_mm = 0;
    std::uint32_t first = 0, count = 0;  ///< its parts, all in its plane
    int behind = -1, before = -1;
  };
  struct Loose;
  struct Task;
  void grow(std::vector<Loose> loose);
  void keep(const Loose& part);
  static std::size_t divider_of(const std::vector<Loose>& loose);
  void order_by_depth(const SolidFaces& faces, const Point_mm& to_viewer,
                      std::vector<std::uint32_t>& order) const;

  std::vector<Node> nodes_;
  std::vector<FacePart> parts_;
  std::vector<Point_mm> corners_mm_;
  std::vector<int> sides_;
  bool is_exact_ = true;
};

}  // namespace seamtakt
