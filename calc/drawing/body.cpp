#include "drawing/body.hpp"

#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <BRepLib.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <ElCLib.hxx>
#include <ElSLib.hxx>
#include <GCPnts_AbscissaPoint.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <algorithm>
#include <cmath>

namespace seamtakt::drawing {

namespace {

constexpr double fine_mm = 1e-7;

/// Tight, but of a spline or a torus: there a search for its extremes takes longer than all the rest.
Bnd_Box box_of(const TopoDS_Shape& shape, bool is_spline) {
  Bnd_Box box;
  if (is_spline)
    BRepBndLib::Add(shape, box, false);
  else
    BRepBndLib::AddOptimal(shape, box, false, false);
  return box;
}

bool is_beyond(const Bnd_Box& box, const gp_Pnt& point, double reach_mm) {
  if (box.IsVoid()) return true;
  double x0, y0, z0, x1, y1, z1;
  box.Get(x0, y0, z0, x1, y1, z1);
  return point.X() < x0 - reach_mm || point.X() > x1 + reach_mm || point.Y() < y0 - reach_mm ||
         point.Y() > y1 + reach_mm || point.Z() < z0 - reach_mm || point.Z() > z1 + reach_mm;
}

/// A flat face's edges often come without their curve in the plane's parameters. Each question about the face
/// would project them anew, which takes more time than the rest of the answer.
void keep_flat_curves(const TopoDS_Shape& solid) {
  for (TopExp_Explorer faces(solid, TopAbs_FACE); faces.More(); faces.Next())
    for (TopExp_Explorer at(faces.Current(), TopAbs_EDGE); at.More(); at.Next())
      BRepLib::BuildPCurveForEdgeOnPlane(TopoDS::Edge(at.Current()), TopoDS::Face(faces.Current()));
}

}  // namespace

Body::Body(const TopoDS_Shape& solid) : solid_(solid) {
  keep_flat_curves(solid_);
  read_faces();
  read_edges();
  TopTools_IndexedMapOfShape vertices;
  TopExp::MapShapes(solid_, TopAbs_VERTEX, vertices);
  for (int i = 1; i <= vertices.Extent(); ++i)
    vertices_.push_back(BRep_Tool::Pnt(TopoDS::Vertex(vertices(i))));
  for (const BodyFace& face : faces_) box_.Add(face.box);
  GProp_GProps volume;
  BRepGProp::VolumeProperties(solid_, volume);
  volume_mm3_ = volume.Mass();
}

void Body::read_faces() {
  TopTools_IndexedMapOfShape faces;
  TopExp::MapShapes(solid_, TopAbs_FACE, faces);
  faces_.reserve(static_cast<std::size_t>(faces.Extent()));
  for (int i = 1; i <= faces.Extent(); ++i) {
    BodyFace& face = faces_.emplace_back();
    face.face = TopoDS::Face(faces(i));
    face.surface.Initialize(face.face);
    face.is_reversed = face.face.Orientation() == TopAbs_REVERSED;
    face.is_plane = face.surface.GetType() == GeomAbs_Plane;
    if (face.is_plane) face.plane = face.surface.Plane();
    face.box = box_of(face.face, face.surface.GetType() > GeomAbs_Sphere);
    GProp_GProps area;
    BRepGProp::SurfaceProperties(face.face, area);
    face.area_mm2 = area.Mass();
    face.domain = std::make_unique<BRepTopAdaptor_FClass2d>(face.face, fine_mm);
  }
  // Kept by address: only after the last face has its place.
  for (BodyFace& face : faces_) {
    if (face.is_plane) continue;
    face.nearest = std::make_unique<Extrema_ExtPS>();
    face.nearest->SetFlag(Extrema_ExtFlag_MIN);
    face.nearest->Initialize(face.surface, face.surface.FirstUParameter(), face.surface.LastUParameter(),
                             face.surface.FirstVParameter(), face.surface.LastVParameter(), 1e-9, 1e-9);
  }
}

void Body::read_edges() {
  TopTools_IndexedMapOfShape known;
  TopExp::MapShapes(solid_, TopAbs_EDGE, known);
  edges_.resize(static_cast<std::size_t>(known.Extent()));
  for (std::size_t f = 0; f < faces_.size(); ++f) {
    const TopoDS_Face& face = faces_[f].face;
    const TopoDS_Wire outer = BRepTools::OuterWire(face);
    for (TopExp_Explorer wires(face, TopAbs_WIRE); wires.More(); wires.Next())
      for (TopExp_Explorer at(wires.Current(), TopAbs_EDGE); at.More(); at.Next()) {
        const TopoDS_Edge& edge = TopoDS::Edge(at.Current());
        EdgeUse use;
        use.face = static_cast<int>(f);
        use.is_reversed = edge.Orientation() == TopAbs_REVERSED;
        use.is_inner = !wires.Current().IsSame(outer);
        double first, last;
        use.on_surface = BRep_Tool::CurveOnSurface(edge, face, first, last);
        edges_[static_cast<std::size_t>(known.FindIndex(edge)) - 1].uses.push_back(use);
      }
  }
  for (int i = 1; i <= known.Extent(); ++i) {
    BodyEdge& edge = edges_[static_cast<std::size_t>(i) - 1];
    const TopoDS_Edge& shape = TopoDS::Edge(known(i));
    if (BRep_Tool::Degenerated(shape)) {
      edge.is_ignored = true;
      continue;
    }
    edge.curve.Initialize(TopoDS::Edge(shape.Oriented(TopAbs_FORWARD)));
    edge.first = edge.curve.FirstParameter();
    edge.last = edge.curve.LastParameter();
    edge.is_line = edge.curve.GetType() == GeomAbs_Line;
    edge.is_closed = edge.curve.Value(edge.first).Distance(edge.curve.Value(edge.last)) < 1e-4;
    edge.length_mm = edge.is_line ? edge.last - edge.first : GCPnts_AbscissaPoint::Length(edge.curve);
    edge.box = box_of(shape, edge.curve.GetType() > GeomAbs_Circle);
    edge.is_ignored =
        edge.uses.size() != 2 || edge.uses[0].face == edge.uses[1].face || edge.length_mm < 1e-4;
    has_curved_edges_ = has_curved_edges_ || !edge.is_line;
  }
}

gp_Vec Body::normal_at(int face, double u, double v) const {
  const BodyFace& of = faces_[static_cast<std::size_t>(face)];
  gp_Vec normal;
  if (of.is_plane) {
    // A plane may be left-handed: its own normal is that of its parameters.
    normal = gp_Vec(of.plane.XAxis().Direction()).Crossed(gp_Vec(of.plane.YAxis().Direction()));
  } else {
    gp_Pnt point;
    gp_Vec du, dv;
    of.surface.D1(u, v, point, du, dv);
    normal = du.Crossed(dv);
  }
  const double size = normal.Magnitude();
  if (size < 1e-12) return gp_Vec(0, 0, 0);
  return normal * ((of.is_reversed ? -1 : 1) / size);
}

gp_Vec Body::normal_at_edge(const BodyEdge&, const EdgeUse& use, double at) const {
  if (faces_[static_cast<std::size_t>(use.face)].is_plane || use.on_surface.IsNull())
    return normal_at(use.face, 0, 0);
  const gp_Pnt2d uv = use.on_surface->Value(at);
  return normal_at(use.face, uv.X(), uv.Y());
}

gp_Vec tangent_at(const BodyEdge& edge, double at) {
  gp_Pnt point;
  gp_Vec tangent;
  edge.curve.D1(at, point, tangent);
  const double size = tangent.Magnitude();
  return size < 1e-12 ? gp_Vec(0, 0, 0) : tangent / size;
}

CurvePlace nearest_on_curve(const BodyEdge& edge, const gp_Pnt& point) {
  CurvePlace place;
  if (edge.is_line) {
    const double free = ElCLib::Parameter(edge.curve.Line(), point);
    place.at = std::clamp(free, edge.first, edge.last);
    place.is_end = free < edge.first - fine_mm || free > edge.last + fine_mm;
    place.distance_mm = point.Distance(edge.curve.Value(place.at));
    return place;
  }
  place.at = edge.first;
  place.distance_mm = point.Distance(edge.curve.Value(edge.first));
  place.is_end = !edge.is_closed;
  const double at_last = point.Distance(edge.curve.Value(edge.last));
  if (at_last < place.distance_mm) {
    place.at = edge.last;
    place.distance_mm = at_last;
  }
  Extrema_ExtPC nearest(point, edge.curve, edge.first, edge.last);
  if (!nearest.IsDone()) return place;
  for (int i = 1; i <= nearest.NbExt(); ++i) {
    const double distance = std::sqrt(nearest.SquareDistance(i));
    if (distance > place.distance_mm + fine_mm) continue;
    place.at = nearest.Point(i).Parameter();
    place.distance_mm = distance;
    place.is_end = false;
  }
  return place;
}

std::optional<SurfacePlace> Body::nearest_on_face(int index, const gp_Pnt& point, double reach_mm) const {
  const BodyFace& face = faces_[static_cast<std::size_t>(index)];
  if (is_beyond(face.box, point, reach_mm)) return {};
  SurfacePlace place;
  place.face = index;
  double u = 0, v = 0;
  if (face.is_plane) {
    place.distance_mm = face.plane.Distance(point);
    if (place.distance_mm > reach_mm) return {};
    ElSLib::Parameters(face.plane, point, u, v);
    if (face.domain->Perform(gp_Pnt2d(u, v)) == TopAbs_OUT) return {};
    place.point = ElSLib::Value(u, v, face.plane);
    place.normal = normal_at(index, u, v);
    return place;
  }
  face.nearest->Perform(point);
  if (!face.nearest->IsDone()) return {};
  bool is_found = false;
  for (int i = 1; i <= face.nearest->NbExt(); ++i) {
    const double distance = std::sqrt(face.nearest->SquareDistance(i));
    if (distance > reach_mm || (is_found && distance >= place.distance_mm)) continue;
    const Extrema_POnSurf& on_surface = face.nearest->Point(i);
    on_surface.Parameter(u, v);
    if (face.domain->Perform(gp_Pnt2d(u, v)) == TopAbs_OUT) continue;
    place.point = on_surface.Value();
    place.distance_mm = distance;
    place.normal = normal_at(index, u, v);
    is_found = true;
  }
  if (!is_found || place.normal.Magnitude() < 0.5) return {};
  return place;
}

std::optional<SurfacePlace> Body::nearest_on_edge(int index, const gp_Pnt& point, double reach_mm) const {
  const BodyEdge& edge = edges_[static_cast<std::size_t>(index)];
  if (edge.is_ignored || is_beyond(edge.box, point, reach_mm)) return {};
  const CurvePlace on_curve = nearest_on_curve(edge, point);
  if (on_curve.distance_mm > reach_mm) return {};
  SurfacePlace place;
  place.edge = index;
  place.at = on_curve.at;
  place.distance_mm = on_curve.distance_mm;
  place.is_end = on_curve.is_end;
  place.point = edge.curve.Value(on_curve.at);
  return place;
}

std::optional<SurfacePlace> Body::nearest(const gp_Pnt& point, double reach_mm, double snap_mm,
                                          const gp_Vec& along) const {
  if (is_beyond(box_, point, reach_mm)) return {};
  std::optional<SurfacePlace> on_face, on_edge;
  for (std::size_t i = 0; i < faces_.size(); ++i) {
    auto place = nearest_on_face(static_cast<int>(i), point, reach_mm);
    if (place && (!on_face || place->distance_mm < on_face->distance_mm)) on_face = std::move(place);
  }
  const gp_Pnt from = on_face ? on_face->point : point;
  const double edge_reach = on_face ? snap_mm : reach_mm;
  for (std::size_t i = 0; i < edges_.size(); ++i) {
    auto place = nearest_on_edge(static_cast<int>(i), from, edge_reach);
    if (!place) continue;
    if (on_face && std::abs(tangent_at(edges_[i], place->at).Dot(along)) < 0.9) continue;
    const bool is_nearer =
        !on_edge || place->distance_mm < on_edge->distance_mm - fine_mm ||
        (place->distance_mm < on_edge->distance_mm + fine_mm && on_edge->is_end && !place->is_end);
    if (is_nearer) on_edge = std::move(place);
  }
  if (!on_edge) return on_face;
  on_edge->distance_mm = point.Distance(on_edge->point);
  // An end of an edge that only touches the snap range says less than the face.
  if (on_face && on_edge->is_end) return on_face;
  return on_edge;
}

bool Body::contains(const gp_Pnt& point) const {
  if (is_beyond(box_, point, 0)) return false;
  if (!inside_) {
    inside_ = std::make_unique<BRepClass3d_SolidClassifier>();
    inside_->Load(solid_);
  }
  inside_->Perform(point, 1e-6);
  return inside_->State() == TopAbs_IN;
}

Body::RayHit Body::first_hit(const gp_Pnt& from, const gp_Vec& direction) const {
  constexpr double skip_mm = 0.01, farthest_mm = 1e5;
  if (!rays_) {
    rays_ = std::make_unique<IntCurvesFace_ShapeIntersector>();
    rays_->Load(solid_, 1e-6);
  }
  rays_->Perform(gp_Lin(from, gp_Dir(direction)), skip_mm, farthest_mm);
  RayHit hit;
  if (!rays_->IsDone()) return hit;
  int nearest = 0;
  for (int i = 1; i <= rays_->NbPnt(); ++i)
    if (nearest == 0 || rays_->WParameter(i) < rays_->WParameter(nearest)) nearest = i;
  if (nearest == 0) return hit;
  for (std::size_t face = 0; face < faces_.size() && !hit.is_found; ++face) {
    if (!faces_[face].face.IsSame(rays_->Face(nearest))) continue;
    hit.is_found = true;
    hit.distance_mm = rays_->WParameter(nearest);
    hit.normal = normal_at(static_cast<int>(face), rays_->UParameter(nearest), rays_->VParameter(nearest));
  }
  return hit;
}

}  // namespace seamtakt::drawing
