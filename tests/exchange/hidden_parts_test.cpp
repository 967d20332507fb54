// What of a line is hidden by faces, against rays cast through the solids.
#include "exchange/picture/hidden_parts.hpp"

#include <gtest/gtest.h>

#include "random_solids.hpp"

namespace seamtakt {
namespace {

using namespace picture_test;

Prism box(const Point_mm& from, const Point_mm& size) {
  Prism solid;
  solid.origin_mm = from;
  solid.outline_mm = {{0, 0}, {size[0], 0}, {size[0], size[1]}, {0, size[1]}};
  solid.height_mm = size[2];
  return solid;
}

double hidden_share(const std::span<const SightPart>& parts) {
  double share = 0;
  for (const SightPart& part : parts)
    if (part.sight == Sight::hidden) share += part.to - part.from;
  return share;
}

TEST(HiddenParts, OfALineBehindABoxIsWhatTheBoxCovers) {
  // From the front, a box over x = 100..300 covers that part of a line along x behind it: a quarter to three
  // quarters, less the rim of 0.05 mm at each end.
  const SolidFaces faces = faces_of({box({100, 0, 0}, {200, 50, 80})});
  HiddenParts sights;
  sights.look(faces, ParallelView(angles_of(SnapView::front)));
  const auto parts = sights.of({0, 200, 40}, {400, 200, 40});
  ASSERT_EQ(parts.size(), 3u);
  EXPECT_EQ(parts[0].sight, Sight::clear);
  EXPECT_EQ(parts[1].sight, Sight::hidden);
  EXPECT_EQ(parts[2].sight, Sight::clear);
  EXPECT_NEAR(parts[1].from, 0.25, 2e-4);
  EXPECT_NEAR(parts[1].to, 0.75, 2e-4);
  EXPECT_EQ(parts[0].from, 0);
  EXPECT_EQ(parts[2].to, 1);
  // In front of it nothing is hidden, nor on its own faces.
  EXPECT_EQ(hidden_share(sights.of({0, -10, 40}, {400, -10, 40})), 0);
  EXPECT_EQ(hidden_share(sights.of({100, 0, 40}, {300, 0, 40})), 0);
  EXPECT_EQ(hidden_share(sights.of({100, 0, 0}, {300, 0, 0})), 0);
  // On its rear face all is.
  EXPECT_NEAR(hidden_share(sights.of({110, 50, 40}, {290, 50, 40})), 1, 1e-9);
}

TEST(HiddenParts, SeeThroughAHoleAndThroughAWallThatIsOuter) {
  // A wall of 400 x 400 with a hole of 100 x 100 in its middle, before a block as high that reaches in front
  // of it nowhere: what is behind the wall is veiled, what is behind the hole is clear.
  Prism wall;
  wall.u = {1, 0, 0};
  wall.v = {0, 0, 1};  // u x v points to the front
  wall.origin_mm = {0, 0, 0};
  wall.outline_mm = {{0, 0}, {400, 0}, {400, 400}, {0, 400}};
  wall.holes_mm = {{{150, 150}, {250, 150}, {250, 250}, {150, 250}}};
  wall.height_mm = 10;
  const SolidFaces faces = faces_of({wall, box({0, 300, 0}, {400, 20, 400})});
  HiddenParts sights;
  sights.look(faces, ParallelView(angles_of(SnapView::front)));
  // The line ends within the wall's picture: its rim is no part of this.
  const auto parts = sights.of({1, 100, 200}, {399, 100, 200});
  ASSERT_EQ(parts.size(), 3u);
  EXPECT_EQ(parts[0].sight, Sight::veiled);
  EXPECT_EQ(parts[1].sight, Sight::clear);
  EXPECT_EQ(parts[2].sight, Sight::veiled);
  EXPECT_NEAR(parts[1].from, 149.0 / 398, 5e-4);
  EXPECT_NEAR(parts[1].to, 249.0 / 398, 5e-4);
}

/// Whether a ray from the point to the viewer goes through a solid, deeper than a line on its face lies.
bool is_hidden_by_ray(const std::vector<Prism>& solids, const Point_mm& p, const Point_mm& to_viewer,
                      double deep_mm) {
  return std::any_of(solids.begin(), solids.end(), [&](const Prism& solid) {
    const auto exit = cast_through(solid, p, to_viewer);
    return exit && exit->way_mm > 0 && exit->below_mm > deep_mm;
  });
}

TEST(HiddenParts, AreThoseFromWhichARayToTheViewerMeetsASolid) {
  std::mt19937 random(20260118);
  int compared = 0, hidden = 0;
  for (int scene = 0; scene < 40; ++scene) {
    const std::vector<Prism> solids = random_plates(random, 15);
    const SolidFaces faces = faces_of(solids);
    HiddenParts sights;
    const ParallelView view({between(random, -180, 180), between(random, -85, 85)});
    sights.look(faces, view);
    for (int line = 0; line < 25; ++line) {
      const Point_mm a = random_point(random, 1000), b = random_point(random, 1000);
      const auto parts = sights.of(a, b);
      ASSERT_FALSE(parts.empty());
      EXPECT_EQ(parts.front().from, 0);
      EXPECT_NEAR(parts.back().to, 1, 1e-9);
      for (const SightPart& part : parts) {
        const double t = between(random, part.from, part.to);
        const Point_mm p = space::between(a, b, t);
        const bool by_ray = is_hidden_by_ray(solids, p, view.to_viewer, surface_mm);
        // Near an edge, or as deep as a line on a face may lie, either is right.
        bool is_edge = is_hidden_by_ray(solids, p, view.to_viewer, surface_mm + 0.1) != by_ray ||
                       is_hidden_by_ray(solids, p, view.to_viewer, surface_mm - 0.1) != by_ray;
        for (const auto& [dx, dy] :
             {std::pair(0.4, 0.0), std::pair(-0.4, 0.0), std::pair(0.0, 0.4), std::pair(0.0, -0.4)}) {
          const Point_mm beside =
              space::plus(p, space::plus(space::times(dx, view.right), space::times(dy, view.up)));
          is_edge = is_edge || is_hidden_by_ray(solids, beside, view.to_viewer, surface_mm) != by_ray;
        }
        if (is_edge) continue;
        ++compared;
        hidden += by_ray;
        // A wall that is drawn translucent hides too: it veils.
        EXPECT_EQ(part.sight != Sight::clear, by_ray)
            << "scene " << scene << ", line " << line << ", at " << t;
      }
    }
  }
  EXPECT_GT(compared, 1000);
  EXPECT_GT(hidden, 200);
}

}  // namespace
}  // namespace seamtakt
