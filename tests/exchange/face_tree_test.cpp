// The order in which faces are painted, and the parts they are made of.
#include "exchange/picture/face_tree.hpp"

#include <gtest/gtest.h>

#include "exchange/picture/convex_pieces.hpp"
#include "random_solids.hpp"

namespace seamtakt {
namespace {

using namespace picture_test;

double area_of(const std::vector<NumberPair>& corners) {
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const NumberPair &a = corners[i], &b = corners[(i + 1) % corners.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return twice / 2;
}

bool is_convex(const std::vector<NumberPair>& corners) {
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const NumberPair &a = corners[i], &b = corners[(i + 1) % n], &c = corners[(i + 2) % n];
    if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < -1e-9) return false;
  }
  return true;
}

TEST(ConvexPieces, OfAConvexOutlineIsTheOutline) {
  const auto pieces = convex_pieces({{0, 0}, {4, 0}, {4, 3}, {0, 3}}, {});
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_EQ(pieces[0].corners_mm.size(), 4u);
  for (const char is_edge : pieces[0].is_edge) EXPECT_TRUE(is_edge);
}

TEST(ConvexPieces, KeepTheAreaOfAnAngleAndOfAPlateWithTwoHoles) {
  // An angle of 10 x 10 with legs 2 wide: 10*2 + 8*2 = 36.
  const std::vector<NumberPair> angle{{0, 0}, {10, 0}, {10, 2}, {2, 2}, {2, 10}, {0, 10}};
  // 100 x 60 less 20 x 20 and less a triangle of 10 x 10: 6000 - 400 - 50 = 5550.
  const std::vector<NumberPair> plate{{0, 0}, {100, 0}, {100, 60}, {0, 60}};
  const std::vector<std::vector<NumberPair>> holes{{{10, 10}, {30, 10}, {30, 30}, {10, 30}},
                                                   {{60, 40}, {70, 40}, {60, 50}}};
  for (const auto& [pieces, area, sides] :
       {std::tuple(convex_pieces(angle, {}), 36.0, 6), std::tuple(convex_pieces(plate, holes), 5550.0, 11)}) {
    double sum = 0;
    int own = 0;
    for (const ConvexPiece& piece : pieces) {
      EXPECT_TRUE(is_convex(piece.corners_mm));
      EXPECT_GT(area_of(piece.corners_mm), 0);
      sum += area_of(piece.corners_mm);
      for (const char is_edge : piece.is_edge) own += is_edge;
    }
    EXPECT_NEAR(sum, area, 1e-9);
    EXPECT_EQ(own, sides) << "each side of the outline and the holes is drawn once";
  }
}

/// Which solid a painter leaves on top at a point of the picture; -1 for none.
int painted_at(const SolidFaces& faces, const FaceTree& tree, const std::vector<std::uint32_t>& order,
               const ParallelView& view, double x, double y) {
  int top = -1;
  for (const std::uint32_t index : order) {
    const FacePart& part = tree.parts()[index];
    const auto corners = tree.corners_of(part);
    bool is_inside = true;
    for (std::size_t i = 0; i < corners.size() && is_inside; ++i) {
      const ViewPoint a = view.at(corners[i]), b = view.at(corners[(i + 1) % corners.size()]);
      is_inside = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) >= 0;
    }
    if (is_inside) top = static_cast<int>(faces.faces[part.face].solid);
  }
  return top;
}

/// Which solid a ray from the viewer meets first, and by how much before the next one.
std::pair<int, double> met_at(const std::vector<Prism>& solids, const ParallelView& view, double x,
                              double y) {
  const Point_mm p = space::plus(space::times(x, view.right), space::times(y, view.up));
  int first = -1;
  double nearest = -1e300, next = -1e300;
  for (std::size_t i = 0; i < solids.size(); ++i) {
    const auto exit = cast_through(solids[i], p, view.to_viewer);
    if (!exit) continue;
    if (exit->way_mm > nearest) {
      next = nearest;
      nearest = exit->way_mm;
      first = static_cast<int>(i);
    } else {
      next = std::max(next, exit->way_mm);
    }
  }
  return {first, nearest - next};
}

TEST(FaceTree, PaintsOnTopWhatARayFromTheViewerMeetsFirst) {
  std::mt19937 random(20260117);
  int compared = 0, hits = 0;
  for (int scene = 0; scene < 30; ++scene) {
    // Thirty plates of this size in a cube of a metre interpenetrate in many places.
    const std::vector<Prism> solids = random_plates(random, 30);
    const SolidFaces faces = faces_of(solids);
    const FaceTree tree(faces);
    ASSERT_TRUE(tree.is_exact());
    std::vector<std::uint32_t> order;
    for (int look = 0; look < 4; ++look) {
      const ParallelView view({between(random, -180, 180), between(random, -90, 90)});
      tree.order(faces, view.to_viewer, order);
      const ViewPoint middle = view.at({500, 500, 500});
      for (int sample = 0; sample < 60; ++sample) {
        const double x = middle.x + between(random, -600, 600), y = middle.y + between(random, -600, 600);
        const auto [first, before_next] = met_at(solids, view, x, y);
        // At an edge of a solid, or where two are as near, either is right.
        bool is_edge = first >= 0 && before_next < 0.05;
        for (const auto& [dx, dy] :
             {std::pair(0.02, 0.0), std::pair(-0.02, 0.0), std::pair(0.0, 0.02), std::pair(0.0, -0.02)})
          is_edge = is_edge || met_at(solids, view, x + dx, y + dy).first != first;
        if (is_edge) continue;
        ++compared;
        hits += first >= 0;
        ASSERT_EQ(painted_at(faces, tree, order, view, x, y), first)
            << "scene " << scene << ", at " << x << ", " << y;
      }
    }
  }
  EXPECT_GT(compared, 6000);
  EXPECT_GT(hits, 2000);
}

TEST(FaceTree, PartsOfAFaceAreTogetherAsLargeAsTheFace) {
  std::mt19937 random(7);
  const SolidFaces faces = faces_of(random_plates(random, 25));
  const FaceTree tree(faces);
  const auto area = [](std::span<const Point_mm> corners) {
    Point_mm twice{0, 0, 0};
    for (std::size_t i = 2; i < corners.size(); ++i)
      twice = space::plus(twice, space::cross(space::minus(corners[i - 1], corners[0]),
                                              space::minus(corners[i], corners[0])));
    return space::length(twice) / 2;
  };
  std::vector<double> of_parts(faces.faces.size(), 0);
  for (const FacePart& part : tree.parts()) of_parts[part.face] += area(tree.corners_of(part));
  EXPECT_GT(tree.parts().size(), faces.faces.size()) << "some are cut";
  for (std::size_t i = 0; i < faces.faces.size(); ++i)
    EXPECT_NEAR(of_parts[i], area(faces.corners_of(faces.faces[i])), 1.0) << i;
}

TEST(FaceTree, OfNothingHasNothingToPaint) {
  std::vector<std::uint32_t> order{1, 2};
  const SolidFaces none;
  FaceTree(none).order(none, {0, 0, 1}, order);
  EXPECT_TRUE(order.empty());
}

}  // namespace
}  // namespace seamtakt
