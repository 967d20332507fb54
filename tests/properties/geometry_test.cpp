#include <gtest/gtest.h>

#include "formula/size/fillet.hpp"
#include "formula/size/groove.hpp"
#include "properties/numbers.hpp"

namespace seamtakt::properties {
namespace {

RC_GTEST_PROP(Fillet, DoesNotCareWhichLegIsWhich, ()) {
  double z1 = between(1, 40), z2 = between(1, 40), dihedral = between(10, 170);
  assert_near(fillet_throat_mm(z1, z2, dihedral), fillet_throat_mm(z2, z1, dihedral));
  assert_near(fillet_area_mm2(z1, z2, dihedral), fillet_area_mm2(z2, z1, dihedral));
  assert_near(fillet_face_width_mm(z1, z2, dihedral), fillet_face_width_mm(z2, z1, dihedral));
}

RC_GTEST_PROP(Fillet, HasAThroatNotLongerThanItsShorterLeg, ()) {
  double z1 = between(1, 40), z2 = between(1, 40), dihedral = between(10, 170);
  RC_ASSERT(fillet_throat_mm(z1, z2, dihedral) <= std::min(z1, z2) * (1 + 1e-12));
}

RC_GTEST_PROP(Fillet, OfEqualLegsHasTheClosedFormsThroat, ()) {
  double leg = between(1, 40), dihedral = between(10, 170);
  double throat = fillet_throat_mm(leg, leg, dihedral);
  assert_near(throat, fillet_throat_of_leg_mm(leg, dihedral), 1e-11);
  assert_near(fillet_leg_of_throat_mm(throat, dihedral), leg, 1e-11);
  assert_near(fillet_leg_of_area_mm(fillet_area_mm2(leg, leg, dihedral), dihedral), leg, 1e-11);
}

RC_GTEST_PROP(Fillet, GrowsWithItsSquare, ()) {
  double z1 = between(1, 40), z2 = between(1, 40), dihedral = between(10, 170), factor = between(1, 5);
  assert_near(fillet_area_mm2(z1 * factor, z2 * factor, dihedral),
              factor * factor * fillet_area_mm2(z1, z2, dihedral));
  assert_near(fillet_throat_mm(z1 * factor, z2 * factor, dihedral),
              factor * fillet_throat_mm(z1, z2, dihedral));
}

RC_GTEST_PROP(Fillet, ObtainedFromItsNeededDepositIsTheLegWanted, ()) {
  double leg = between(1, 40), allowance = between(1, 1.5), gap = between(0, 4), dihedral = between(20, 160);
  double deposit = fillet_area_needed_mm2(leg, allowance, gap, dihedral);
  assert_near(fillet_leg_obtained_mm(deposit, allowance, gap, dihedral), leg, 1e-10);
}

RC_GTEST_PROP(Fillet, WithACurvedFaceIsFoundFromItsWholeArea, ()) {
  double leg = between(3, 40), dihedral = between(40, 140), height = between(-0.1, 0.2) * leg;
  double area = fillet_area_mm2(leg, leg, dihedral) +
                face_segment_area_mm2(fillet_face_width_mm(leg, leg, dihedral), height);
  auto found = fillet_leg_of_full_area_mm(area, height, dihedral);
  RC_ASSERT(found.has_value());
  assert_near(*found, leg, 1e-9);
}

RC_GTEST_PROP(Fillet, HasTheLegAsAwsMeasuresItAtItsSkew, ()) {
  // AWS: perpendicular from one toe to the other plate, z*sin(psi) = 2*a*sin(psi/2).
  double leg = between(1, 40), dihedral = between(10, 170), half = radians(dihedral) / 2;
  double throat = fillet_throat_of_leg_mm(leg, dihedral);
  assert_near(leg * std::sin(radians(dihedral)), 2 * throat * std::sin(half), 1e-11);
  assert_near(2 * throat * std::sin(half), throat * std::sqrt(2) * fillet_skew_factor(dihedral), 1e-11);
}

GrooveShape<double> any_shape(GrooveType type) {
  double thickness = between(3, 60);
  return {type,
          thickness,
          between(0, groove_angle_below_deg(type) * 0.6),
          between(0, 6),
          between(0, 0.4) * thickness,
          between(1, 12)};
}

RC_GTEST_PROP(Groove, GrowsByThePlatesThicknessForEachMillimetreOfGap, ()) {
  for (const auto& known : groove_type_names) {
    GrooveShape<double> shape = any_shape(known.type), wider = shape;
    wider.gap_mm += 1;
    assert_near(groove_area_mm2(wider), groove_area_mm2(shape) + shape.thickness_mm, 1e-11);
    assert_near(groove_top_width_mm(wider), groove_top_width_mm(shape) + 1, 1e-11);
  }
}

RC_GTEST_PROP(Groove, FromBothSidesNeedsHalfOfTheAngledPart, ()) {
  GrooveShape<double> v = any_shape(GrooveType::single_v), x = v;
  x.type = GrooveType::double_v;
  double gap_part = v.gap_mm * v.thickness_mm;
  RC_ASSERT(std::abs((groove_area_mm2(x) - gap_part) - (groove_area_mm2(v) - gap_part) / 2) <=
            1e-10 * (1 + groove_area_mm2(v)));
  GrooveShape<double> bevel = any_shape(GrooveType::single_bevel), k = bevel;
  k.type = GrooveType::double_bevel;
  gap_part = bevel.gap_mm * bevel.thickness_mm;
  RC_ASSERT(std::abs((groove_area_mm2(k) - gap_part) - (groove_area_mm2(bevel) - gap_part) / 2) <=
            1e-10 * (1 + groove_area_mm2(bevel)));
}

RC_GTEST_PROP(Groove, WithoutAngleIsASlot, ()) {
  for (auto type :
       {GrooveType::single_v, GrooveType::double_v, GrooveType::single_bevel, GrooveType::double_bevel}) {
    GrooveShape<double> shape = any_shape(type);
    shape.angle_deg = 0;
    assert_near(groove_area_mm2(shape), shape.gap_mm * shape.thickness_mm);
  }
}

RC_GTEST_PROP(Groove, WithAUOfNoRadiusIsAVOfTwiceItsWallAngle, ()) {
  GrooveShape<double> u = any_shape(GrooveType::single_u), v = u;
  u.root_radius_mm = 0;
  v.type = GrooveType::single_v;
  v.angle_deg = 2 * u.angle_deg;
  assert_near(groove_area_mm2(u), groove_area_mm2(v), 1e-11);
  assert_near(groove_top_width_mm(u), groove_top_width_mm(v), 1e-11);
}

}  // namespace
}  // namespace seamtakt::properties
