// The temperature at the start of each pass against finite differences, and what it must be in limits.
#include "formula/heat/joint_field.hpp"
#include "formula/heat/shared_plate.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "heat_grid.hpp"

namespace seamtakt {
namespace {

using test::HeatGrid;

constexpr double fillet_rad = 1.5 * std::numbers::pi, butt_rad = std::numbers::pi;
constexpr double loss_W_m2K = 10;

/// Passes to and fro along a seam, each begun gap_s after the one before.
struct Passes {
  std::vector<ArcHeat> arcs;
  std::vector<double> start_mm, start_s;  ///< of passes 2, 3, ... and of the one after the last
};

Passes to_and_fro(double length_mm, double speed_mm_s, double heat_J_mm, double gap_s, int count) {
  Passes passes;
  double time_s = 0;
  for (int pass = 0; pass <= count; ++pass) {
    const double from = pass % 2 == 0 ? 0 : length_mm, to = length_mm - from;
    if (pass > 0) {
      passes.start_mm.push_back(from);
      passes.start_s.push_back(time_s);
    }
    if (pass == count) break;
    passes.arcs.push_back({from, to, time_s, time_s + length_mm / speed_mm_s, heat_J_mm});
    time_s += length_mm / speed_mm_s + gap_s;
  }
  return passes;
}

/// Sizes are whole cells. The seam is on plate 2's whole length, which begins `before_mm` along plate 1.
struct Joint {
  std::string name;
  double thickness_1_mm, width_1_mm, length_1_mm, thickness_2_mm, width_2_mm, length_2_mm, before_mm, cell_mm;
};

int cells(double mm, double cell_mm) {
  return static_cast<int>(std::lround(mm / cell_mm));
}

/// Plate 2 upright on plate 1, its near face `near_mm` from plate 1's edge: a tee, or at the edge a corner.
HeatGrid upright(const Joint& j, double near_mm) {
  const auto n = [&](double mm) { return cells(mm, j.cell_mm); };
  const int top = n(j.thickness_1_mm), face = n(near_mm), begin = n(j.before_mm);
  HeatGrid grid(j.cell_mm, loss_W_m2K, {n(j.length_1_mm), n(j.width_1_mm), top + n(j.width_2_mm)});
  grid.add_block({0, 0, 0}, {n(j.length_1_mm), n(j.width_1_mm), top});
  grid.add_block({begin, face, top},
                 {begin + n(j.length_2_mm), face + n(j.thickness_2_mm), top + n(j.width_2_mm)});
  // The fillet is between plate 1's free face beside plate 2 and plate 2's foot.
  grid.set_seam({begin, face - 1, top - 1}, {begin, face, top}, j.length_2_mm);
  return grid;
}

JointShape upright_shape(const Joint& j, double near_mm) {
  return {{JointPlate{j.thickness_1_mm, {near_mm, j.width_1_mm - near_mm}, j.length_1_mm, j.before_mm},
           JointPlate{j.thickness_2_mm, {j.width_2_mm}, j.length_2_mm, 0}},
          fillet_rad};
}

void expect_within(const std::string& name, const JointShape& shape, HeatGrid& grid, const Passes& passes,
                   double length_mm, double cell_mm, double tolerance) {
  const JointField field(shape, loss_W_m2K);
  const std::vector<double> grid_K = grid.rises_K(passes.arcs, passes.start_mm, passes.start_s);
  for (std::size_t i = 0; i < passes.start_s.size(); ++i) {
    // The grid's is that of a cell's middle.
    const double at_mm = std::clamp(passes.start_mm[i], cell_mm / 2, length_mm - cell_mm / 2);
    const double field_K = field.rise_K(at_mm, passes.start_s[i],
                                        std::span(passes.arcs).first(std::min(i + 1, passes.arcs.size())));
    EXPECT_NEAR(field_K, grid_K[i], tolerance * grid_K[i]) << name << ", pass " << i + 2;
  }
}

TEST(HeatGridSolver, LosesNoHeatWithinTheBody) {
  const Joint joint{"", 20, 60, 100, 20, 60, 100, 0, 5};
  const double near_mm = 20;
  const int top = cells(joint.thickness_1_mm, joint.cell_mm);
  HeatGrid grid(joint.cell_mm, 0, {20, 12, top + 12});
  grid.add_block({0, 0, 0}, {20, 12, top});
  grid.add_block({0, cells(near_mm, 5), top}, {20, cells(near_mm, 5) + 4, top + 12});
  grid.set_seam({0, 3, top - 1}, {0, 4, top}, 100);
  EXPECT_EQ(grid.cell_count(), 1920u);
  const Passes passes = to_and_fro(100, 10, 550, 30, 2);
  grid.rises_K(passes.arcs, passes.start_mm, passes.start_s);
  EXPECT_NEAR(grid.heat_J(), 2 * 550 * 100.0, 1e-6 * 2 * 550 * 100);
}

TEST(JointField, OfTeesIsWithinATenthOfFiniteDifferences) {
  struct Case {
    Joint joint;
    double speed_mm_s, heat_J_mm, gap_s;
  };
  const Case cases[] = {
      {{"short and thick", 20, 60, 100, 20, 60, 100, 0, 5}, 10, 550, 32.7},
      {{"short and thick, soon", 20, 60, 100, 20, 60, 100, 0, 5}, 10, 550, 10},
      {{"short and thin", 6, 78, 120, 6, 60, 120, 0, 3}, 10, 550, 20},
      {{"long and thin", 6, 150, 480, 6, 102, 480, 0, 6}, 10, 550, 60},
      {{"long and thick", 30, 210, 450, 30, 150, 450, 0, 10}, 8, 1500, 60},
      {{"thin on thick", 20, 200, 300, 10, 100, 300, 0, 5}, 8, 800, 30},
      {{"narrow second plate", 10, 300, 300, 10, 40, 300, 0, 5}, 8, 800, 30},
      {{"stiffener on a long plate", 10, 200, 500, 10, 100, 100, 200, 5}, 8, 800, 30},
      {{"stiffener, later", 10, 200, 500, 10, 100, 100, 200, 5}, 8, 800, 300},
  };
  for (const auto& [joint, speed_mm_s, heat_J_mm, gap_s] : cases) {
    const double near_mm =
        std::floor((joint.width_1_mm - joint.thickness_2_mm) / 2 / joint.cell_mm) * joint.cell_mm;
    HeatGrid grid = upright(joint, near_mm);
    expect_within(joint.name, upright_shape(joint, near_mm), grid,
                  to_and_fro(joint.length_2_mm, speed_mm_s, heat_J_mm, gap_s, 3), joint.length_2_mm,
                  joint.cell_mm, 0.1);
  }
}

TEST(JointField, OfACornerIsWithinATenthOfFiniteDifferences) {
  const Joint joint{"corner", 10, 100, 200, 10, 100, 200, 0, 5};
  // The grid's plate 2 goes on from plate 1's face at the edge: its inner face is its thickness from there,
  // and the fillet is on that side.
  HeatGrid grid(joint.cell_mm, loss_W_m2K, {40, 20, 22});
  grid.add_block({0, 0, 0}, {40, 20, 2});
  grid.add_block({0, 0, 2}, {40, 2, 22});
  grid.set_seam({0, 2, 1}, {0, 1, 2}, joint.length_2_mm);
  expect_within(joint.name, upright_shape(joint, joint.thickness_2_mm), grid, to_and_fro(200, 8, 800, 30, 3),
                200, joint.cell_mm, 0.1);
}

TEST(JointField, OfAButtIsWithinATenthOfFiniteDifferences) {
  for (const double before_mm : {0.0, 100.0}) {
    const double seam_mm = before_mm > 0 ? 100 : 200, plate_mm = seam_mm + 2 * before_mm;
    HeatGrid grid(5, loss_W_m2K, {cells(plate_mm, 5), 40, 2});
    grid.add_block({0, 0, 0}, {cells(plate_mm, 5), 40, 2});
    grid.set_seam({cells(before_mm, 5), 19, 0}, {cells(before_mm, 5), 20, 0}, seam_mm);
    const JointPlate half{10, {100}, plate_mm, before_mm};
    expect_within(before_mm > 0 ? "butt within longer plates" : "butt", {{half, half}, butt_rad}, grid,
                  to_and_fro(seam_mm, 8, 800, 30, 3), seam_mm, 5, 0.1);
  }
}

/// Two plates 60 x 100 x 20 mm, a tee.
JointShape small_tee() {
  return {{JointPlate{20, {20, 40}, 100, 0}, JointPlate{20, {60}, 100, 0}}, fillet_rad};
}

TEST(JointField, BecomesTheLumpedBodyThatLosesHeatToTheAir) {
  const JointField field(small_tee(), loss_W_m2K);
  EXPECT_DOUBLE_EQ(field.volume_mm3(), 2 * 60 * 100 * 20);
  // 2 * 2 * (60*100 + 20*160) mm2 less the two faces of 20 x 100 that touch: 32800 mm2.
  const double lost_per_s = 10e-6 * 32800 / (0.0044 * 240000);
  EXPECT_NEAR(field.loss_per_s(), lost_per_s, 1e-12);
  const std::vector<ArcHeat> arcs{{0, 100, 0, 10, 550}};
  for (const double later_s : {1500.0, 4000.0}) {
    const double lumped_K = 550 * 100 / (0.0044 * 240000) * std::exp(-lost_per_s * (later_s - 5));
    EXPECT_NEAR(field.rise_K(0, later_s, arcs), lumped_K, 2e-3 * lumped_K);
  }
}

TEST(JointField, OfWidePlatesIsTheThinPlatesLineSource) {
  // Far from the ends of wide plates, at t after the arc: Q/(rho_c*sum(d)*sqrt(pi*a*t)), three sheets of 6 mm
  // (rykalin-1957, a fast source; recalled).
  const JointField field({{JointPlate{6, {3000, 3000}, 3000, 0}, JointPlate{6, {3000}, 3000, 0}}, fillet_rad},
                         0);
  const std::vector<ArcHeat> arcs{{0, 3000, 0, 30, 400}};  // 100 mm/s: fast
  const double after_s = 100, a = 0.028 / 0.0044;
  const double wanted_K = 400 / (0.0044 * 18 * std::sqrt(std::numbers::pi * a * after_s));
  EXPECT_NEAR(field.rise_K(1500, 15 + after_s, arcs), wanted_K, 3e-3 * wanted_K);
}

TEST(JointField, AddsTheRisesOfPassesAndCountsNoneThatComesLater) {
  const JointField field(small_tee(), loss_W_m2K);
  const ArcHeat first{0, 100, 0, 10, 550}, second{100, 0, 50, 60, 300};
  const double together_K = field.rise_K(30, 100, std::vector{first, second});
  EXPECT_NEAR(together_K,
              field.rise_K(30, 100, std::vector{first}) + field.rise_K(30, 100, std::vector{second}), 1e-9);
  EXPECT_EQ(field.rise_K(30, 45, std::vector{second}), 0);
  EXPECT_EQ(field.rise_K(100, 50, std::vector{second}), 0);
}

TEST(JointField, CoolsToALimitOrNever) {
  const JointField field(small_tee(), loss_W_m2K);
  const std::vector<ArcHeat> arcs{{0, 100, 0, 10, 550}};
  const double cooled_s = field.cooled_at_s(100, 100, 10, 86400, arcs);
  // 25.7 s, computed by a script of its own from the same formulas.
  EXPECT_NEAR(cooled_s - 10, 25.7, 0.3);
  EXPECT_LE(field.rise_K(100, cooled_s, arcs), 100);
  EXPECT_GT(field.rise_K(100, cooled_s - 0.01, arcs), 100);
  EXPECT_EQ(field.cooled_at_s(100, 100, 500, 86400, arcs), 500);
  const JointField closed(small_tee(), 0);
  // Without loss it stays at 550*100/(0.0044*240000) = 52.1 K.
  EXPECT_EQ(closed.cooled_at_s(100, 50, 10, 86400, arcs), std::numeric_limits<double>::infinity());
  EXPECT_LT(closed.cooled_at_s(100, 54, 10, 86400, arcs), 1000);
}

/// Two upright plates on one: the arc is at the near face of the first, from_mm from the edge; what the
/// second finds where its own seam begins.
struct Neighbours {
  std::string name;
  double width_mm, length_mm, height_mm, upright_length_mm, first_mm, second_mm, first_before_mm,
      second_before_mm;
  std::vector<double> at_s;
};

TEST(SharedPlate, HeatOfTheNextJointIsAboveFiniteDifferencesByAQuarterAtMost) {
  const Neighbours cases[] = {
      {"apart", 200, 300, 60, 300, 50, 140, 0, 0, {120, 300, 600}},
      {"close", 200, 300, 60, 300, 80, 120, 0, 0, {45, 60, 120, 300, 600}},
      {"large plates on a small one", 100, 200, 100, 200, 20, 70, 0, 0, {40, 60, 120, 300, 600}},
      {"stiffeners not abreast", 200, 400, 100, 100, 50, 140, 50, 150, {300, 600}},
  };
  constexpr double cell_mm = 5, thickness_mm = 10, speed_mm_s = 8, heat_J_mm = 800;
  for (const Neighbours& n : cases) {
    const auto c = [&](double mm) { return cells(mm, cell_mm); };
    const int top = c(thickness_mm);
    HeatGrid grid(cell_mm, loss_W_m2K, {c(n.length_mm), c(n.width_mm), top + c(n.height_mm)});
    grid.add_block({0, 0, 0}, {c(n.length_mm), c(n.width_mm), top});
    for (const auto& [face_mm, before_mm] :
         {std::pair(n.first_mm, n.first_before_mm), std::pair(n.second_mm, n.second_before_mm)})
      grid.add_block({c(before_mm), c(face_mm), top},
                     {c(before_mm + n.upright_length_mm), c(face_mm + thickness_mm), top + c(n.height_mm)});
    grid.set_seam({c(n.first_before_mm), c(n.first_mm) - 1, top - 1},
                  {c(n.first_before_mm), c(n.first_mm), top}, n.upright_length_mm);

    const auto field = [&](double face_mm, double before_mm) {
      return JointField({{JointPlate{thickness_mm, {face_mm, n.width_mm - face_mm}, n.length_mm, before_mm},
                          JointPlate{thickness_mm, {n.height_mm}, n.upright_length_mm, 0}},
                         fillet_rad},
                        loss_W_m2K);
    };
    const JointField first = field(n.first_mm, n.first_before_mm),
                     second = field(n.second_mm, n.second_before_mm);
    const SharedPlate plate{n.length_mm, n.width_mm, thickness_mm};
    const double end_s = n.upright_length_mm / speed_mm_s;
    const std::vector<PlateArc> arcs{{{n.first_before_mm, n.first_mm},
                                      {n.first_before_mm + n.upright_length_mm, n.first_mm},
                                      0,
                                      end_s,
                                      heat_J_mm}};
    const std::vector<ArcHeat> heat{{0, n.upright_length_mm, 0, end_s, heat_J_mm}};
    for (const double at_s : n.at_s) {
      grid.rises_K(heat, {0}, {at_s});
      const int begin = c(n.second_before_mm), face = c(n.second_mm);
      const double grid_K =
          (grid.rise_at_K({begin, face - 1, top - 1}) + grid.rise_at_K({begin, face, top})) / 2;
      const double rise_K = neighbour_rise_K(plate, {&first, 0}, {&second, 0},
                                             {n.second_before_mm + cell_mm / 2, n.second_mm}, at_s, arcs);
      EXPECT_GT(rise_K, 0.97 * grid_K) << n.name << " at " << at_s;
      EXPECT_LT(rise_K, 1.27 * grid_K) << n.name << " at " << at_s;
    }
  }
}

TEST(SharedPlate, HeatOfAnArcThatComesLaterCountsNothing) {
  const JointField field(small_tee(), loss_W_m2K);
  const std::vector<PlateArc> arcs{{{0, 20}, {100, 20}, 50, 60, 550}};
  const SharedPlate plate{100, 60, 20};
  EXPECT_EQ(neighbour_rise_K(plate, {&field, 0}, {&field, 0}, {50, 50}, 50, arcs), 0);
  EXPECT_GT(neighbour_rise_K(plate, {&field, 0}, {&field, 0}, {50, 50}, 70, arcs), 0);
}

}  // namespace
}  // namespace seamtakt
