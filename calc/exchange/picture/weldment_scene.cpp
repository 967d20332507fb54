#include "exchange/picture/weldment_scene.hpp"

#include <algorithm>
#include <cmath>

#include "exchange/picture/space.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// A weldment with more is drawn with its intermittent seams as if they were whole.
constexpr std::size_t most_strokes = 20000;
constexpr double on_face_mm = 1.5;

}  // namespace

WeldmentScene::WeldmentScene(const Weldment& weldment)
    : solids_(weldment_solids(weldment)), faces_(faces_of(solids_)), tree_(faces_) {
  for (std::size_t i = 0; i < weldment.seams.size(); ++i) {
    add_strokes(weldment.seams[i], static_cast<std::uint32_t>(i));
    find_solids_of(weldment.seams[i]);
  }
}

void WeldmentScene::add_strokes(const Seam& seam, std::uint32_t index) {
  const double whole_mm = path_length_mm(seam);
  std::vector<WeldRun> runs;
  if (seam.intermittent && strokes_.size() < most_strokes) runs = weld_runs(seam);
  if (runs.empty()) runs.push_back({0, whole_mm});
  double at_mm = 0;
  std::size_t run = 0;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
    const Point_mm &a = seam.path_mm[i - 1], &b = seam.path_mm[i];
    const double piece_mm = distance_mm(a, b), end_mm = at_mm + piece_mm;
    if (!(piece_mm > 0)) continue;
    while (run > 0 && runs[run - 1].to_mm > at_mm) --run;
    for (; run < runs.size() && runs[run].from_mm < end_mm; ++run) {
      const double from_mm = std::max(runs[run].from_mm, at_mm), to_mm = std::min(runs[run].to_mm, end_mm);
      if (to_mm > from_mm)
        strokes_.push_back({index, space::between(a, b, (from_mm - at_mm) / piece_mm),
                            space::between(a, b, (to_mm - at_mm) / piece_mm)});
    }
    at_mm = end_mm;
  }
}

void WeldmentScene::find_solids_of(const Seam& seam) {
  std::vector<std::uint32_t>& found = on_solids_.emplace_back();
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i)
    for (const std::uint32_t solid :
         solids_at(faces_, space::between(seam.path_mm[i - 1], seam.path_mm[i], 0.5), on_face_mm))
      if (std::find(found.begin(), found.end(), solid) == found.end()) found.push_back(solid);
}

void WeldmentFrame::look(const WeldmentScene& scene, ViewAngles angles) {
  view_ = ParallelView(angles);
  scene.tree().order(scene.faces(), view_.to_viewer, order_);
  sights_.look(scene.faces(), view_);
  box_ = {};
  box_.add(view_, scene.faces().corners_mm);
  beads_.clear();
  for (const SeamStroke& stroke : scene.strokes()) {
    const ViewPoint a = view_.at(stroke.a), b = view_.at(stroke.b);
    box_.add(a);
    box_.add(b);
    const auto on_way = [&](double t) {
      return ViewPoint{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.depth + t * (b.depth - a.depth)};
    };
    for (const SightPart& part : sights_.of(stroke.a, stroke.b))
      beads_.push_back({stroke.seam, part.sight, on_way(part.from), on_way(part.to)});
  }
}

ViewPoint WeldmentFrame::anchor_of(std::size_t seam) const {
  const BeadPart* best = nullptr;
  double longest = -1;
  for (const BeadPart& bead : beads_) {
    if (bead.seam != seam) continue;
    // Any clear part comes before each that isn't.
    const double long_mm =
        std::hypot(bead.b.x - bead.a.x, bead.b.y - bead.a.y) + (bead.sight == Sight::clear    ? 2e9
                                                                : bead.sight == Sight::veiled ? 1e9
                                                                                              : 0);
    if (long_mm <= longest) continue;
    longest = long_mm;
    best = &bead;
  }
  if (!best) return {};
  return {(best->a.x + best->b.x) / 2, (best->a.y + best->b.y) / 2, (best->a.depth + best->b.depth) / 2};
}

int tone_of(const Point_mm& normal) {
  const double x = std::abs(normal[0]), y = std::abs(normal[1]), z = std::abs(normal[2]);
  if (z >= x && z >= y) return 0;
  return y >= x ? 1 : 2;
}

bool is_side_drawn(const SolidFaces& faces, int side, const Point_mm& to_viewer) {
  if (side == sharp_side) return true;
  if (side == inner_side) return false;
  return space::dot(faces.faces[static_cast<std::size_t>(side)].normal, to_viewer) <= 0;
}

}  // namespace seamtakt
