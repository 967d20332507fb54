// The weldment's picture: projection, plates and tubes as solids, those guessed, what the demo shows.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <regex>

#include "exchange/picture/leader_labels.hpp"
#include "exchange/picture/space.hpp"
#include "exchange/picture/torch_place.hpp"
#include "exchange/picture/weldment_scene.hpp"
#include "exchange/picture/weldment_svg.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/seam_geometry.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

const Plan& demo() {
  static const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  return plan;
}

TEST(ParallelView, ProjectsAsByHand) {
  const Point_mm p{3, 5, 7};
  const struct {
    SnapView view;
    double x, y, depth;
  } expected[] = {{SnapView::front, 3, 7, -5}, {SnapView::rear, -3, 7, 5}, {SnapView::left, -5, 7, -3},
                  {SnapView::right, 5, 7, 3},  {SnapView::above, 3, 5, 7}, {SnapView::below, 3, -5, -7}};
  for (const auto& [view, x, y, depth] : expected) {
    const ViewPoint at = ParallelView(angles_of(view)).at(p);
    EXPECT_NEAR(at.x, x, 1e-12) << static_cast<int>(view);
    EXPECT_NEAR(at.y, y, 1e-12) << static_cast<int>(view);
    EXPECT_NEAR(at.depth, depth, 1e-12) << static_cast<int>(view);
  }
  // Yaw 30, pitch 30: right (cos 30, sin 30, 0), to the viewer (cos 30 sin 30, -cos 30 cos 30, sin 30), up
  // (-sin 30 sin 30, sin 30 cos 30, cos 30). Of (3, 5, 7): 5.0981, -0.75 + 2.1651 + 6.0622 = 7.4772, and
  // 1.2990 - 3.75 + 3.5 = 1.0490.
  const ViewPoint at = ParallelView({30, 30}).at(p);
  EXPECT_NEAR(at.x, 5.0981, 1e-4);
  EXPECT_NEAR(at.y, 7.4772, 1e-4);
  EXPECT_NEAR(at.depth, 1.0490, 1e-4);
}

TEST(FitBox, PutsTheMiddleInTheMiddleAtTheLargestScale) {
  FitBox box;
  for (const ViewPoint& point : {ViewPoint{-10, 0, 0}, ViewPoint{30, 10, 5}}) box.add(point);
  // 40 wide in 200, 10 high in 100: 5 a millimetre; the middle (10, 5) at (110, 70).
  const ViewFit fit = box.fit({10, 20, 200, 100});
  EXPECT_DOUBLE_EQ(fit.scale, 5);
  EXPECT_DOUBLE_EQ(fit.x + fit.scale * 10, 110);
  EXPECT_DOUBLE_EQ(fit.y - fit.scale * 5, 70);
  EXPECT_DOUBLE_EQ(box.fit({10, 20, 200, 100}, 3).scale, 15);
}

TEST(LeaderLabels, LieInTheRectangleAndOnNoOther) {
  std::vector<LeaderLabel> labels(6, LeaderLabel{200, 150, 80, 18, 0, 0});
  labels.push_back({2, 2, 80, 18, 0, 0});
  place_labels(labels, {0, 0, 400, 300});
  for (std::size_t i = 0; i < labels.size(); ++i) {
    EXPECT_GE(labels[i].x, 0);
    EXPECT_GE(labels[i].y, 0);
    EXPECT_LE(labels[i].x + labels[i].width, 400);
    EXPECT_LE(labels[i].y + labels[i].height, 300);
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_TRUE(
          labels[i].x >= labels[k].x + labels[k].width || labels[k].x >= labels[i].x + labels[i].width ||
          labels[i].y >= labels[k].y + labels[k].height || labels[k].y >= labels[i].y + labels[i].height)
          << i << " lies on " << k;
  }
}

TEST(PlanSolids, OfTubesHaveTheirSectionAcrossTheAxis) {
  Weldment weldment;
  Tube round;
  round.axis_mm = {{0, 0, 0}, {0, 0, 500}};
  round.section.emplace();
  round.section->kind = "round";
  round.section->d_mm = 60;
  round.section->t_mm = 5;
  Tube rect;
  rect.axis_mm = {{0, 0, 0}, {400, 0, 0}};
  rect.section.emplace();
  rect.section->kind = "rect";
  rect.section->b_mm = 80;
  rect.section->h_mm = 40;
  weldment.tubes = {round, rect};
  const std::vector<Prism> solids = plan_solids(weldment);
  ASSERT_EQ(solids.size(), 2u);
  EXPECT_EQ(solids[0].outline_mm.size(), 24u);
  ASSERT_EQ(solids[0].holes_mm.size(), 1u);
  EXPECT_NEAR(std::hypot(solids[0].holes_mm[0][5][0], solids[0].holes_mm[0][5][1]), 25, 1e-9) << "60 / 2 - 5";
  EXPECT_DOUBLE_EQ(solids[0].height_mm, 500);
  EXPECT_TRUE(solids[1].holes_mm.empty()) << "no wall: closed";
  // Along x its width lies level, so along y, and its height upright.
  double wide = 0, high = 0;
  for (const NumberPair& corner : solids[1].outline_mm) {
    const Point_mm at =
        space::plus(space::times(corner[0], solids[1].u), space::times(corner[1], solids[1].v));
    EXPECT_NEAR(at[0], 0, 1e-9);
    wide = std::max(wide, std::abs(at[1]));
    high = std::max(high, std::abs(at[2]));
  }
  EXPECT_NEAR(wide, 40, 1e-9);
  EXPECT_NEAR(high, 20, 1e-9);
}

Seam seam_along(const char* id, std::vector<Point_mm> path) {
  Seam seam;
  seam.id = id;
  seam.thickness_mm = {10, 12};
  seam.path_mm = std::move(path);
  return seam;
}

TEST(GuessedSolids, AreTheRectanglesThroughSeamsThatShareAPlane) {
  // A cross plate of 10 between two sides: a floor seam and an upright one on each face.
  Weldment weldment;
  for (const double x : {100.0, 110.0}) {
    weldment.seams.push_back(seam_along("a", {{x, 0, 0}, {x, 300, 0}}));
    weldment.seams.push_back(seam_along("b", {{x, 0, 5}, {x, 0, 200}}));
  }
  const std::vector<Prism> solids = guessed_solids(weldment);
  const auto cross = std::find_if(solids.begin(), solids.end(), [](const Prism& solid) {
    return std::abs(std::abs(space::cross(solid.u, solid.v)[0]) - 1) < 1e-9;
  });
  ASSERT_NE(cross, solids.end());
  EXPECT_TRUE(cross->is_guess);
  EXPECT_DOUBLE_EQ(cross->height_mm, 10);
  EXPECT_EQ(
      std::count_if(solids.begin(), solids.end(),
                    [](const Prism& solid) { return std::abs(space::cross(solid.u, solid.v)[0]) > 0.9; }),
      1)
      << "two planes as far apart as a plate is thick are one plate";
  double low = 1e300, high = -1e300;
  for (const double h : {0.0, cross->height_mm}) {
    const double x = cross->origin_mm[0] + h * space::cross(cross->u, cross->v)[0];
    low = std::min(low, x);
    high = std::max(high, x);
  }
  EXPECT_NEAR(low, 100, 1e-9);
  EXPECT_NEAR(high, 110, 1e-9);
  weldment.seams.resize(1);
  EXPECT_TRUE(guessed_solids(weldment).empty()) << "one straight seam tells of no plate";
}

TEST(GuessedSolids, StandInOnlyWhereThePlanHasNone) {
  Weldment tractor = demo().weldments[1];
  EXPECT_FALSE(WeldmentScene(tractor).is_guess());
  tractor.plates.clear();
  const WeldmentScene scene(tractor);
  EXPECT_TRUE(scene.is_guess());
  EXPECT_GE(scene.solids().size(), 10u);
}

TEST(DemoPicture, HasEachSeamOnTwoSolidsAndSeenFromOneOfSixSides) {
  for (const Weldment& weldment : demo().weldments) {
    ASSERT_FALSE(weldment.plates.empty()) << weldment.id;
    const WeldmentScene scene(weldment);
    ASSERT_TRUE(scene.tree().is_exact());
    ASSERT_EQ(scene.seam_count(), weldment.seams.size());
    std::vector<double> seen(weldment.seams.size(), 0);
    WeldmentFrame frame;
    for (const SnapView view : snap_views) {
      frame.look(scene, angles_of(view));
      std::vector<double> here(weldment.seams.size(), 0);
      for (const BeadPart& bead : frame.beads())
        if (bead.sight != Sight::hidden)
          here[bead.seam] += std::hypot(bead.b.x - bead.a.x, bead.b.y - bead.a.y);
      for (std::size_t i = 0; i < seen.size(); ++i) seen[i] = std::max(seen[i], here[i]);
    }
    for (std::size_t i = 0; i < seen.size(); ++i) {
      const Seam& seam = weldment.seams[i];
      double strokes_mm = 0;
      for (const SeamStroke& stroke : scene.strokes())
        if (stroke.seam == i) strokes_mm += distance_mm(stroke.a, stroke.b);
      EXPECT_GE(scene.solids_of(i).size(), 2u) << weldment.id << "/" << seam.id;
      // Least by rays cast in Python: 0.69 (round the end of a cross member, whose lower corner is seen from
      // the ends alone).
      EXPECT_GE(seen[i], 0.6 * strokes_mm) << weldment.id << "/" << seam.id;
      EXPECT_GT(strokes_mm, 0);
    }
  }
}

TEST(DemoPicture, HasStitchesOfIntermittentSeams) {
  const Weldment& dolly = demo().weldments[0];
  const WeldmentScene scene(dolly);
  // BD/S01: 1410 mm in runs of 60 with gaps of 90: floor((1410 + 90) / 150) = 10.
  ASSERT_TRUE(dolly.seams[0].intermittent);
  EXPECT_EQ(std::count_if(scene.strokes().begin(), scene.strokes().end(),
                          [](const SeamStroke& stroke) { return stroke.seam == 0; }),
            10);
}

TEST(SeamMarks, AreTheWorstFindingsWithTheirFigures) {
  Weldment weldment;
  weldment.id = "W";
  weldment.seams = {seam_along("S1", {{0, 0, 0}, {1, 0, 0}}), seam_along("S10", {{0, 0, 0}, {1, 0, 0}})};
  Findings findings(3);
  findings[0].severity = Severity::fail;
  findings[0].where = "W/S10/pass 1";
  findings[1].severity = Severity::fail;
  findings[1].where = "W/S10";
  findings[1].value = 5.1;
  findings[1].limit = 6;
  findings[1].unit = "mm";
  findings[2].severity = Severity::note;
  findings[2].where = "W/S10";
  const std::vector<SeamMark> marks = seam_marks(weldment, findings);
  EXPECT_FALSE(marks[0].severity) << "S1 isn't S10";
  EXPECT_EQ(marks[1].severity, Severity::fail);
  EXPECT_EQ(mark_text(marks[1], TextView::plain_english()), "5.1 of 6 mm");
  EXPECT_EQ(mark_text(marks[0], TextView::plain_english()), "");
}

TEST(WeldmentSvg, HasFacesBeadsAndTheLabelOfWhatFails) {
  const Weldment& tractor = demo().weldments[1];
  std::vector<SeamMark> marks(tractor.seams.size());
  marks[48] = {Severity::fail, 5.1, 6.0, "mm"};
  const std::string svg = weldment_svg(tractor, marks, TextView::plain_english());
  const auto count = [&](const char* what) {
    const std::regex pattern(what);
    return std::distance(std::sregex_iterator(svg.begin(), svg.end(), pattern), std::sregex_iterator());
  };
  EXPECT_GT(count("<polygon "), 60) << "two dozen plates with two or three faces each";
  EXPECT_GE(count("<title>"), static_cast<std::ptrdiff_t>(tractor.seams.size())) << "a bead of each seam";
  EXPECT_EQ(count("<text style="), 1) << "labels";
  EXPECT_NE(svg.find(tractor.seams[48].id + " 5.1 of 6 mm</text>"), std::string::npos);
  EXPECT_EQ(count("NaN|nan|inf"), 0);
  EXPECT_EQ(svg.find("guessed"), std::string::npos);
  EXPECT_TRUE(weldment_svg(Weldment(), {}, TextView::plain_english()).empty());
}

TEST(TorchPlaces, AreOnTheWayOfTheMoveAtThatTime) {
  CycleResult cycle;
  Move air;
  air.robot = "R1";
  air.start_s = 0;
  air.end_s = 2;
  air.points = {{0, 0, 0}, {100, 0, 0}};
  Move arc = air;
  arc.kind = MoveKind::arc;
  arc.start_s = 3;
  arc.end_s = 7;
  arc.points = {{100, 0, 0}, {100, 60, 0}, {100, 60, 20}};
  cycle.moves = {air, arc};
  EXPECT_TRUE(torch_places(cycle, -1).empty());
  EXPECT_EQ(torch_places(cycle, 1)[0].at_mm, (Point_mm{50, 0, 0}));
  EXPECT_EQ(torch_places(cycle, 2.5)[0].at_mm, (Point_mm{100, 0, 0}));
  // Half of 80 mm: 40 along y.
  const TorchPlace at = torch_places(cycle, 5)[0];
  EXPECT_NEAR(space::length(space::minus(at.at_mm, {100, 40, 0})), 0, 1e-9);
  EXPECT_TRUE(at.is_welding);
  EXPECT_FALSE(torch_places(cycle, 8)[0].is_welding);
  EXPECT_EQ(torch_places(cycle, 8)[0].at_mm, (Point_mm{100, 60, 20}));
}

}  // namespace
}  // namespace seamtakt
