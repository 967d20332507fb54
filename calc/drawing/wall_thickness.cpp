#include "drawing/wall_thickness.hpp"

#include <IntCurvesFace_ShapeIntersector.hxx>
#include <gp_Lin.hxx>

namespace seamtakt::drawing {

std::optional<double> wall_thickness_mm(const Body& body, const gp_Pnt& place, const gp_Vec& outward_normal) {
  constexpr double skip_mm = 0.01, farthest_mm = 1e4, antiparallel = 0.99;
  IntCurvesFace_ShapeIntersector ray;
  ray.Load(body.solid(), 1e-6);
  const gp_Lin line(place, gp_Dir(-outward_normal));
  ray.Perform(line, skip_mm, farthest_mm);
  if (!ray.IsDone()) return {};
  int nearest = 0;
  for (int i = 1; i <= ray.NbPnt(); ++i)
    if (nearest == 0 || ray.WParameter(i) < ray.WParameter(nearest)) nearest = i;
  if (nearest == 0) return {};
  for (std::size_t face = 0; face < body.faces().size(); ++face) {
    if (!body.faces()[face].face.IsSame(ray.Face(nearest))) continue;
    const gp_Vec exit =
        body.normal_at(static_cast<int>(face), ray.UParameter(nearest), ray.VParameter(nearest));
    if (exit.Dot(outward_normal) > -antiparallel) return {};
    return ray.WParameter(nearest);
  }
  return {};
}

}  // namespace seamtakt::drawing
