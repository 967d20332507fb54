#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "exchange/picture/face_tree.hpp"
#include "exchange/picture/hidden_parts.hpp"
#include "exchange/picture/parallel_view.hpp"

namespace seamtakt {

/// A straight piece of weld: of a stitch where the seam is intermittent.
struct SeamStroke {
  std::uint32_t seam = 0;
  Point_mm a{0, 0, 0}, b{0, 0, 0};
};

/// What of a weldment doesn't change while it is turned: its solids' faces, the order in which they are
/// painted, and its seams' strokes.
class WeldmentScene {
 public:
  WeldmentScene() = default;
  explicit WeldmentScene(const Weldment& weldment);

  const std::vector<Prism>& solids() const { return solids_; }
  const SolidFaces& faces() const { return faces_; }
  const FaceTree& tree() const { return tree_; }
  /// In the order of the seams; an intermittent seam has those of each run.
  const std::vector<SeamStroke>& strokes() const { return strokes_; }
  std::size_t seam_count() const { return on_solids_.size(); }
  /// Solids on whose faces the middle of some piece of the seam's path lies (1.5 mm).
  std::span<const std::uint32_t> solids_of(std::size_t seam) const { return on_solids_[seam]; }
  /// Whether the plates are proposed from the seams, as the plan has none.
  bool is_guess() const { return !solids_.empty() && solids_.front().is_guess; }
  bool is_empty() const { return strokes_.empty() && solids_.empty(); }

 private:
  void add_strokes(const Seam& seam, std::uint32_t index);
  void find_solids_of(const Seam& seam);

  std::vector<Prism> solids_;
  SolidFaces faces_;
  FaceTree tree_;
  std::vector<SeamStroke> strokes_;
  std::vector<std::vector<std::uint32_t>> on_solids_;
};

/// A part of a stroke as one direction of view shows it.
struct BeadPart {
  std::uint32_t seam = 0;
  Sight sight = Sight::clear;
  ViewPoint a, b;
};

/// A scene from one direction. Looking again keeps the lists' memory.
class WeldmentFrame {
 public:
  void look(const WeldmentScene& scene, ViewAngles angles);

  const ParallelView& view() const { return view_; }
  /// Indexes of the tree's parts, far ones first.
  const std::vector<std::uint32_t>& order() const { return order_; }
  /// In the order of the strokes.
  const std::vector<BeadPart>& beads() const { return beads_; }
  const FitBox& box() const { return box_; }
  /// Where a seam's label points: the middle of its longest clear part, else of its longest part. The
  /// picture's origin for a seam without strokes.
  ViewPoint anchor_of(std::size_t seam) const;

 private:
  ParallelView view_;
  HiddenParts sights_;
  std::vector<std::uint32_t> order_;
  std::vector<BeadPart> beads_;
  FitBox box_;
};

/// Which of three tones of paper a face has, by the axis that its normal is nearest to: 0 z, 1 y, 2 x.
int tone_of(const Point_mm& normal);

/// Whether a side of a face is drawn as a line: its own, and of something round only the outline.
bool is_side_drawn(const SolidFaces& faces, int side, const Point_mm& to_viewer);

}  // namespace seamtakt
