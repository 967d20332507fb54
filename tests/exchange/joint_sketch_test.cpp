// Sketches of joints: corners, dimensions and runs by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "exchange/sheets/cell_text.hpp"
#include "exchange/sketch/joint_drawing.hpp"

namespace seamtakt {
namespace {

Seam tee_of_leg(double leg_mm) {
  Seam seam;
  seam.joint = "tee";
  seam.thickness_mm = {10, 8};
  seam.leg_mm = leg_mm;
  seam.gap_mm = 0.3;
  seam.schedules = {"F"};
  return seam;
}

Seam butt_of(const std::string& type, double angle_deg) {
  Seam seam;
  seam.joint = "butt";
  seam.thickness_mm = {12, 12};
  seam.groove = Groove{};
  seam.groove->type = type;
  seam.groove->angle_deg = angle_deg;
  seam.groove->root_gap_mm = 2;
  seam.groove->root_face_mm = 1;
  seam.schedules = {"R", "F", "C"};
  return seam;
}

void expect_outline(const SketchOutline& outline, const SketchOutline& expected) {
  ASSERT_EQ(outline.size(), expected.size());
  for (std::size_t i = 0; i < outline.size(); ++i) {
    EXPECT_NEAR(outline[i].x_mm, expected[i].x_mm, 1e-4) << i;
    EXPECT_NEAR(outline[i].y_mm, expected[i].y_mm, 1e-4) << i;
  }
}

/// By the shoelace formula.
double area_mm2(const SketchOutline& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const SketchPoint &a = outline[i], &b = outline[(i + 1) % outline.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return std::abs(twice) / 2;
}

std::vector<std::string> texts_of(const SketchedJoint& shape) {
  std::vector<std::string> texts;
  for (const SketchDimension& each : shape.dimensions)
    texts.push_back(cell_text(each.text, TextView::plain_english()));
  for (const SketchNote& each : shape.notes) texts.push_back(cell_text(each.text, TextView::plain_english()));
  return texts;
}

bool has(const std::vector<std::string>& texts, const std::string& text) {
  return std::find(texts.begin(), texts.end(), text) != texts.end();
}

TEST(JointSketch, of_a_tee_has_a_right_triangle_of_its_legs_and_both_plates) {
  const auto shape = joint_shape(tee_of_leg(6));
  ASSERT_TRUE(shape);
  expect_outline(shape->weld, {{0, 0}, {6, 0}, {0, 6}});
  ASSERT_EQ(shape->plates.size(), 2u);
  // Beyond the weld: leg and 0.8 of the thicker plate, 6 + 8 = 14.
  expect_outline(shape->plates[0], {{-22, -10}, {20, -10}, {20, 0}, {-22, 0}});
  expect_outline(shape->plates[1], {{0, 0.3}, {0, 20}, {-8, 20}, {-8, 0.3}});
}

TEST(JointSketch, says_what_the_drawing_states_plainly_and_what_follows_in_brackets) {
  const auto of_leg = texts_of(*joint_shape(tee_of_leg(6)));
  // a = 6 cos 45 = 4.243.
  for (const char* text : {"t1 10 mm", "t2 8 mm", "z 6 mm", "(a 4.24 mm)", "g 0.3 mm"})
    EXPECT_TRUE(has(of_leg, text)) << text;
  Seam seam = tee_of_leg(6);
  seam.leg_mm.reset();
  seam.throat_mm = 3;
  seam.gap_max_mm = 1;
  const auto of_throat = texts_of(*joint_shape(seam));
  for (const char* text : {"a 3 mm", "(z 4.24 mm)", "g 0.3 to 1 mm"})
    EXPECT_TRUE(has(of_throat, text)) << text;
}

TEST(JointSketch, of_plates_at_60_deg_leans_the_second_toe_over) {
  Seam seam = tee_of_leg(6);
  seam.dihedral_deg = 60;
  const auto shape = joint_shape(seam);
  ASSERT_TRUE(shape);
  // 6 cos 60 = 3, 6 sin 60 = 5.1962.
  expect_outline(shape->weld, {{0, 0}, {6, 0}, {3, 5.19615}});
  EXPECT_TRUE(has(texts_of(*shape), "angle 60 deg"));
  // a = 6 cos 30 = 5.196.
  EXPECT_TRUE(has(texts_of(*shape), "(a 5.2 mm)"));
}

TEST(JointSketch, of_a_corner_ends_the_first_plate_at_the_second_ones_back) {
  Seam seam = tee_of_leg(6);
  seam.joint = "corner";
  EXPECT_NEAR(joint_shape(seam)->plates[0][0].x_mm, -8, 1e-9);
}

TEST(JointSketch, of_a_lap_lays_the_second_plate_on_the_first) {
  Seam seam = tee_of_leg(5);
  seam.joint = "lap";
  const auto shape = joint_shape(seam);
  ASSERT_TRUE(shape);
  expect_outline(shape->weld, {{0, 0}, {5, 0}, {0, 5}});
  // Reach 5 + 8 = 13, to the left beyond another leg.
  expect_outline(shape->plates[1], {{-18, 0.3}, {0, 0.3}, {0, 8.3}, {-18, 8.3}});
}

TEST(JointSketch, of_a_v_has_the_walls_of_its_angle) {
  const auto shape = joint_shape(butt_of("single-v", 60));
  ASSERT_TRUE(shape);
  // 11 tan 30 = 6.35085.
  expect_outline(shape->weld, {{0, 0}, {0, 1}, {-6.35085, 12}, {8.35085, 12}, {2, 1}, {2, 0}});
  for (const char* text : {"60 deg", "g 2 mm", "c 1 mm", "t1 12 mm", "t2 12 mm"})
    EXPECT_TRUE(has(texts_of(*shape), text)) << text;
}

struct DrawnSection {
  const char* type;
  double angle_deg, area_mm2;
};

/// g t = 24 and the triangles beside it, by hand: 11^2 tan 30, half of that, 11^2/2 tan 45, 5.5^2 tan 45.
TEST(JointSketch, of_each_groove_encloses_the_area_of_its_drawing) {
  for (const DrawnSection& section :
       {DrawnSection{"square", 0, 24}, DrawnSection{"single-v", 60, 93.8594},
        DrawnSection{"double-v", 60, 58.9297}, DrawnSection{"single-bevel", 45, 84.5},
        DrawnSection{"double-bevel", 45, 54.25}}) {
    const auto shape = joint_shape(butt_of(section.type, section.angle_deg));
    ASSERT_TRUE(shape) << section.type;
    EXPECT_NEAR(area_mm2(shape->weld), section.area_mm2, 1e-3) << section.type;
  }
}

/// t 12, g 2, c 2, r 5, 10 deg: the integral of the width over the height, by a separate script.
TEST(JointSketch, of_a_u_follows_its_arc) {
  Seam seam = butt_of("single-u", 10);
  seam.groove->root_face_mm = 2;
  seam.groove->root_radius_mm = 5;
  const auto shape = joint_shape(seam);
  ASSERT_TRUE(shape);
  EXPECT_NEAR(area_mm2(shape->weld), 118.494, 0.3);
  EXPECT_TRUE(has(texts_of(*shape), "R 5 mm"));
}

TEST(JointSketch, of_a_bevel_on_a_tee_stands_the_prepared_plate_on_the_other) {
  Seam seam = butt_of("single-bevel", 45);
  seam.joint = "tee";
  seam.thickness_mm = {15, 10};
  seam.groove->root_gap_mm = 1;
  seam.groove->root_face_mm = 2;
  const auto shape = joint_shape(seam);
  ASSERT_TRUE(shape);
  // As a butt the bevel runs from (1, 0) by (1, 2) to (1 + 8 tan 45, 10) = (9, 10); turned, x is its height
  // less the thickness of 10 and y its way from the wall.
  expect_outline(shape->weld, {{-10, 0}, {0, 0}, {0, 9}, {-8, 1}, {-10, 1}});
  for (const SketchPoint& point : shape->plates[0]) EXPECT_LE(point.y_mm, 0);
}

TEST(JointSketch, is_not_drawn_where_there_is_no_such_form) {
  Seam fillet_on_butt = tee_of_leg(6);
  fillet_on_butt.joint = "butt";
  EXPECT_FALSE(joint_shape(fillet_on_butt));
  Seam v_on_tee = butt_of("single-v", 60);
  v_on_tee.joint = "tee";
  EXPECT_FALSE(joint_shape(v_on_tee));
  Seam nearly_closed = tee_of_leg(6);
  nearly_closed.dihedral_deg = 5;
  EXPECT_FALSE(joint_shape(nearly_closed));
  Seam without_size = tee_of_leg(6);
  without_size.leg_mm.reset();
  EXPECT_FALSE(joint_shape(without_size));
}

TEST(JointSketch, numbers_the_runs_from_the_root_on_and_within_the_weld) {
  Seam seam = tee_of_leg(10);
  seam.schedules = {"R", "F", "C"};
  const auto shape = joint_shape(seam);
  ASSERT_EQ(shape->runs.size(), 3u);
  const auto from_root = [&](std::size_t i) {
    return std::hypot(shape->runs[i].at.x_mm, shape->runs[i].at.y_mm);
  };
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(shape->runs[i].number, static_cast<int>(i) + 1);
    EXPECT_GT(shape->runs[i].at.x_mm, 0);
    EXPECT_GT(shape->runs[i].at.y_mm, 0);
    EXPECT_LT(shape->runs[i].at.x_mm + shape->runs[i].at.y_mm, 10) << "inside the face";
  }
  EXPECT_LT(from_root(0), from_root(1));
  EXPECT_LT(from_root(0), from_root(2));
}

TEST(JointSketch, has_layers_of_one_two_and_three_runs) {
  EXPECT_EQ(runs_in_layers(6, 1), (std::vector<int>{1, 2, 3}));
  EXPECT_EQ(runs_in_layers(5, 4), (std::vector<int>{1, 2, 2}));
  EXPECT_EQ(runs_in_layers(4, 4), (std::vector<int>{1, 1, 1, 1}));
  EXPECT_TRUE(runs_in_layers(0, 1).empty());
}

TEST(JointDrawing, is_to_scale_and_fills_the_runs_that_are_asked_for) {
  const Drawing drawing =
      joint_drawing(*joint_shape(tee_of_leg(6)), {1}, std::string("tee <1>"), TextView::plain_english());
  // The joint is 42 x 30 mm in 124 x 94 units: 124/42 units a mm, a leg of 6 mm is 17.714.
  const auto weld = std::find_if(drawing.paths.begin(), drawing.paths.end(),
                                 [](const DrawingPath& path) { return path.fill == DrawingFill::weld; });
  ASSERT_NE(weld, drawing.paths.end());
  EXPECT_NEAR(weld->points[1].x - weld->points[0].x, 17.7143, 1e-3);
  EXPECT_NEAR(weld->points[0].y - weld->points[2].y, 17.7143, 1e-3)
      << "up in the sketch is up in the drawing";
  EXPECT_EQ(std::count_if(drawing.paths.begin(), drawing.paths.end(),
                          [](const DrawingPath& path) { return path.fill == DrawingFill::ink; }),
            1);
  for (const DrawingPath& path : drawing.paths)
    for (const DrawingPoint& point : path.points) {
      EXPECT_GE(point.x, 0);
      EXPECT_LE(point.x, drawing.width);
      EXPECT_GE(point.y, 0);
      EXPECT_LE(point.y, drawing.height);
    }
  const std::string svg = drawing_svg(drawing);
  for (const char* part : {"aria-label=\"tee &lt;1&gt;\"", ">z 6 mm</text>", ">tee &lt;1&gt;</text>"})
    EXPECT_NE(svg.find(part), std::string::npos) << part;
}

}  // namespace
}  // namespace seamtakt
