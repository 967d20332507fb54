#pragma once

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepTopAdaptor_FClass2d.hxx>
#include <Bnd_Box.hxx>
#include <Extrema_ExtPC.hxx>
#include <Extrema_ExtPS.hxx>
#include <Geom2d_Curve.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <gp_Pln.hxx>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace seamtakt::drawing {

/// A face's use of an edge.
struct EdgeUse {
  int face = -1;
  bool is_reversed = false;  ///< against the edge's own direction, with the face's material on the left
  bool is_inner = false;     ///< it bounds a hole of the face
  Handle(Geom2d_Curve) on_surface;
};

struct BodyEdge {
  BRepAdaptor_Curve curve;
  double first = 0, last = 0;  ///< of its parameter
  double length_mm = 0;
  Bnd_Box box;
  bool is_line = false;
  bool is_closed = false;
  std::vector<EdgeUse> uses;  ///< two, on a sound solid
  /// Both sides are the same face, or it is a point: no edge of the body's form.
  bool is_ignored = false;
};

struct BodyFace {
  TopoDS_Face face;
  BRepAdaptor_Surface surface;
  bool is_reversed = false;
  bool is_plane = false;
  gp_Pln plane;
  Bnd_Box box;
  double area_mm2 = 0;
  std::unique_ptr<BRepTopAdaptor_FClass2d> domain;
  std::unique_ptr<Extrema_ExtPS> nearest;  ///< of a curved face
};

/// A place of a body's surface.
struct SurfacePlace {
  gp_Pnt point;
  double distance_mm = 0;
  int face = -1;        ///< inside of a face
  int edge = -1;        ///< on an edge; face is -1 then
  double at = 0;        ///< parameter on the edge
  gp_Vec normal;        ///< outward, where it is inside of a face
  bool is_end = false;  ///< at an end of the edge
};

/// A placed solid, with what the finder asks of it. In mm.
class Body {
 public:
  explicit Body(const TopoDS_Shape& solid);

  const TopoDS_Shape& solid() const { return solid_; }
  const std::vector<BodyEdge>& edges() const { return edges_; }
  const std::vector<BodyFace>& faces() const { return faces_; }
  const std::vector<gp_Pnt>& vertices() const { return vertices_; }
  const Bnd_Box& box() const { return box_; }
  double volume_mm3() const { return volume_mm3_; }
  bool has_curved_edges() const { return has_curved_edges_; }

  /// The nearest place of the surface; none beyond `reach_mm`. A place within `snap_mm` of an edge that runs
  /// `along` counts as on it.
  std::optional<SurfacePlace> nearest(const gp_Pnt& point, double reach_mm, double snap_mm,
                                      const gp_Vec& along) const;
  bool contains(const gp_Pnt& point) const;
  /// A face counts at a point that lies over its inside, no farther than `reach_mm`.
  std::optional<SurfacePlace> nearest_on_face(int face, const gp_Pnt& point, double reach_mm) const;
  /// Where a line runs through the surface: the first place ahead of a point. `is_found` false: nowhere.
  struct RayHit {
    bool is_found = false;
    double distance_mm = 0;
    gp_Vec normal;
  };
  RayHit first_hit(const gp_Pnt& from, const gp_Vec& direction) const;
  /// Outward normal of a face beside an edge.
  gp_Vec normal_at_edge(const BodyEdge& edge, const EdgeUse& use, double at) const;
  gp_Vec normal_at(int face, double u, double v) const;

 private:
  void read_faces();
  void read_edges();
  std::optional<SurfacePlace> nearest_on_edge(int edge, const gp_Pnt& point, double reach_mm) const;

  TopoDS_Shape solid_;
  std::vector<BodyFace> faces_;
  std::vector<BodyEdge> edges_;
  std::vector<gp_Pnt> vertices_;
  Bnd_Box box_;
  double volume_mm3_ = 0;
  bool has_curved_edges_ = false;
  mutable std::unique_ptr<BRepClass3d_SolidClassifier> inside_;
  mutable std::unique_ptr<IntCurvesFace_ShapeIntersector> rays_;
};

/// Parameter of the curve's place nearest to a point, with its distance.
struct CurvePlace {
  double at = 0, distance_mm = 0;
  bool is_end = false;
};
CurvePlace nearest_on_curve(const BodyEdge& edge, const gp_Pnt& point);

gp_Vec tangent_at(const BodyEdge& edge, double at);

}  // namespace seamtakt::drawing
