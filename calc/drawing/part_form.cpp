#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <ElSLib.hxx>
#include <GCPnts_TangentialDeflection.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <algorithm>
#include <cmath>

#include "drawing/part.hpp"
#include "drawing/tube_form.hpp"

namespace seamtakt::drawing {

namespace {

/// Bevels, holes and small notches leave a plate's volume this near to face times thickness.
constexpr double volume_share = 0.05;
constexpr double parallel = 0.9999;

struct FacePair {
  int face = -1, opposite = -1;
  double distance_mm = 0;
};

/// The largest flat face that looks against `face`, inside of the body.
FacePair opposite_of(const Body& body, int index) {
  const BodyFace& face = body.faces()[static_cast<std::size_t>(index)];
  const gp_Vec normal = body.normal_at(index, 0, 0);
  FacePair pair;
  double area = 0;
  for (std::size_t i = 0; i < body.faces().size(); ++i) {
    const BodyFace& other = body.faces()[i];
    if (!other.is_plane || static_cast<int>(i) == index) continue;
    if (body.normal_at(static_cast<int>(i), 0, 0).Dot(normal) > -parallel) continue;
    const double distance = -gp_Vec(face.plane.Location(), other.plane.Location()).Dot(normal);
    if (distance < 1e-3 || other.area_mm2 <= area) continue;
    area = other.area_mm2;
    pair = {index, static_cast<int>(i), distance};
  }
  return pair;
}

bool fills(const Body& body, const FacePair& pair) {
  const double one = body.faces()[static_cast<std::size_t>(pair.face)].area_mm2;
  const double other = body.faces()[static_cast<std::size_t>(pair.opposite)].area_mm2;
  const double expected = (one + other) / 2 * pair.distance_mm;
  return std::abs(body.volume_mm3() - expected) < volume_share * expected &&
         std::min(one, other) > 0.7 * std::max(one, other);
}

std::vector<int> faces_by_area(const Body& body) {
  std::vector<int> order;
  for (std::size_t i = 0; i < body.faces().size(); ++i)
    if (body.faces()[i].is_plane) order.push_back(static_cast<int>(i));
  std::stable_sort(order.begin(), order.end(), [&](int left, int right) {
    return body.faces()[static_cast<std::size_t>(left)].area_mm2 >
           body.faces()[static_cast<std::size_t>(right)].area_mm2 * (1 + 1e-9);
  });
  return order;
}

std::vector<Point2_mm> outline_of(const TopoDS_Wire& wire, const TopoDS_Face& face, const PlateShape& plate) {
  std::vector<Point2_mm> outline;
  for (BRepTools_WireExplorer at(wire, face); at.More(); at.Next()) {
    const BRepAdaptor_Curve curve(at.Current());
    const bool is_reversed = at.Current().Orientation() == TopAbs_REVERSED;
    const GCPnts_TangentialDeflection chords(curve, 0.25, 0.05, 2, 1e-7);
    // The last point is the next edge's first.
    for (int i = 1; i < chords.NbPoints(); ++i) {
      const gp_Vec from_origin(plate.origin, chords.Value(is_reversed ? chords.NbPoints() + 1 - i : i));
      outline.push_back({from_origin.Dot(plate.u), from_origin.Dot(plate.v)});
    }
  }
  return outline;
}

PlateShape plate_of(const Body& body, const FacePair& pair) {
  // The face that looks along u x v is the far one: the thickness goes from the origin's face into the plate.
  const BodyFace& near = body.faces()[static_cast<std::size_t>(pair.opposite)];
  const gp_Vec across = body.normal_at(pair.face, 0, 0);
  PlateShape plate;
  plate.thickness_mm = pair.distance_mm;
  const TopoDS_Wire outer = BRepTools::OuterWire(near.face);
  double longest = 0;
  for (BRepTools_WireExplorer at(outer, near.face); at.More(); at.Next()) {
    const BRepAdaptor_Curve curve(at.Current());
    const gp_Pnt first = curve.Value(curve.FirstParameter()), last = curve.Value(curve.LastParameter());
    if (plate.u.Magnitude() < 0.5) plate.origin = first;
    if (curve.GetType() != GeomAbs_Line || first.Distance(last) <= longest * (1 + 1e-9)) continue;
    longest = first.Distance(last);
    plate.origin = first;
    plate.u = gp_Vec(first, last).Normalized();
  }
  if (longest == 0) plate.u = gp_Vec(near.plane.XAxis().Direction());
  plate.v = across.Crossed(plate.u);
  plate.outline_mm = outline_of(outer, near.face, plate);
  for (TopExp_Explorer at(near.face, TopAbs_WIRE); at.More(); at.Next())
    if (!at.Current().IsSame(outer))
      plate.holes_mm.push_back(outline_of(TopoDS::Wire(at.Current()), near.face, plate));
  return plate;
}

/// Another pair of faces is as near, and fills the body too: a square bar has no direction of its thickness.
bool is_ambiguous(const Body& body, const std::vector<int>& order, const FacePair& chosen) {
  const gp_Vec across = body.normal_at(chosen.face, 0, 0);
  return std::any_of(order.begin(), order.end(), [&](int face) {
    if (std::abs(body.normal_at(face, 0, 0).Dot(across)) > parallel) return false;
    const FacePair pair = opposite_of(body, face);
    return pair.face >= 0 && pair.distance_mm < chosen.distance_mm * 1.01 && fills(body, pair);
  });
}

}  // namespace

void find_form(Part& part) {
  const Body& body = *part.body;
  part.tube = tube_of(body);
  if (part.tube) {
    part.thickness_mm = part.tube->t_mm;
    return;
  }
  const std::vector<int> order = faces_by_area(body);
  if (order.empty()) return;
  // A bent plate's narrow flat sides, or a shaft's ends, are as parallel as a plate's faces.
  for (const BodyFace& face : body.faces())
    if (face.area_mm2 > 1.1 * body.faces()[static_cast<std::size_t>(order.front())].area_mm2) return;
  const FacePair pair = opposite_of(body, order.front());
  if (pair.face < 0 || !fills(body, pair)) return;
  part.thickness_mm = pair.distance_mm;
  if (is_ambiguous(body, order, pair)) return;
  part.plate = plate_of(body, pair);
  part.thickness_direction = body.normal_at(pair.face, 0, 0);
}

}  // namespace seamtakt::drawing
