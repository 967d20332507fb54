#pragma once

#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string_view>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Cross-section of a butt weld's groove, mm2, from its drawing: thickness t, gap g, root face c; no cap.
///   square         g*t
///   single V       g*t + (t-c)^2*tan(alpha/2)            alpha included
///   double V       g*t + (t-c)^2/2*tan(alpha/2)          symmetric
///   single bevel   g*t + (t-c)^2*tan(beta)/2
///   double bevel   g*t + ((t-c)/2)^2*tan(beta)           symmetric
///   single U       g*t + 2*(arc part + (h-y1)*r*cos(b) + (h-y1)^2/2*tan(b)),  h = t-c, y1 = r*(1-sin(b))
/// and its cap 2/3*width*height for each welded face (two for the double grooves).
/// Source: derived (geometry; the cap a parabola). Accuracy: exact for the drawing.

enum class GrooveType { square, single_v, double_v, single_bevel, double_bevel, single_u };

struct GrooveTypeName {
  std::string_view name;
  GrooveType type;
};
inline constexpr std::array groove_type_names = {
    GrooveTypeName{"square", GrooveType::square},
    GrooveTypeName{"single-v", GrooveType::single_v},
    GrooveTypeName{"double-v", GrooveType::double_v},
    GrooveTypeName{"single-bevel", GrooveType::single_bevel},
    GrooveTypeName{"double-bevel", GrooveType::double_bevel},
    GrooveTypeName{"single-u", GrooveType::single_u},
};

inline std::optional<GrooveType> groove_type_of(std::string_view name) {
  for (const auto& known : groove_type_names)
    if (known.name == name) return known.type;
  return std::nullopt;
}

/// Largest angle, deg, that the type's angle must stay below: 180 where it is the included angle of a V.
inline double groove_angle_below_deg(GrooveType type) {
  return type == GrooveType::single_v || type == GrooveType::double_v ? 180 : 90;
}

inline int welded_faces(GrooveType type) {
  return type == GrooveType::double_v || type == GrooveType::double_bevel ? 2 : 1;
}

/// Lengths mm, >= 0, root_face <= thickness; angle_deg: included for a V, bevel or wall angle else.
template <class Real>
struct GrooveShape {
  GrooveType type = GrooveType::square;
  Real thickness_mm = Real(0), angle_deg = Real(0), gap_mm = Real(0), root_face_mm = Real(0),
       root_radius_mm = Real(0);
};

/// Half a U's opening above its root face: area (mm2) and width (mm).
template <class Real>
struct HalfU {
  Real area_mm2, width_mm;
};

template <class Real>
HalfU<Real> half_u(const Real& depth_mm, const Real& radius_mm, const Real& wall_angle_rad) {
  using std::acos;
  using std::cos;
  using std::sin;
  using std::sqrt;
  using std::tan;
  const Real sine = sin(wall_angle_rad), cosine = cos(wall_angle_rad);
  const Real arc_height = radius_mm * (1.0 - sine);
  const Real straight = depth_mm - arc_height;
  if (value_of(straight) < 0) {  // so shallow that only the arc is there
    const Real cos_phi = 1.0 - depth_mm / radius_mm;
    const Real phi = acos(cos_phi);
    const Real half_width = sqrt(depth_mm * (2.0 * radius_mm - depth_mm));
    const Real area = radius_mm * radius_mm / 2.0 * phi - half_width * (radius_mm - depth_mm) / 2.0;
    return {area, half_width};
  }
  const Real phi = std::numbers::pi / 2 - wall_angle_rad;
  const Real tangent = tan(wall_angle_rad);
  const Real arc = radius_mm * radius_mm / 2.0 * (phi - cosine * sine);
  const Real area = arc + straight * radius_mm * cosine + straight * straight / 2.0 * tangent;
  const Real width = radius_mm * cosine + straight * tangent;
  return {area, width};
}

/// Area without cap, mm2.
template <class Real>
Real groove_area_mm2(const GrooveShape<Real>& shape) {
  using std::tan;
  const Real gap_part = shape.gap_mm * shape.thickness_mm;
  const Real depth = shape.thickness_mm - shape.root_face_mm;
  const Real angle = shape.angle_deg * (std::numbers::pi / 180.0);
  const Real half_tangent = tan(angle / 2.0);
  switch (shape.type) {
    case GrooveType::square:
      return gap_part;
    case GrooveType::single_v:
      return Real(gap_part + depth * depth * half_tangent);
    case GrooveType::double_v:
      return Real(gap_part + depth * depth / 2.0 * half_tangent);
    case GrooveType::single_bevel:
      return Real(gap_part + depth * depth * tan(angle) / 2.0);
    case GrooveType::double_bevel:
      return Real(gap_part + depth * depth / 4.0 * tan(angle));
    case GrooveType::single_u:
      break;
  }
  return Real(gap_part + 2.0 * half_u(depth, shape.root_radius_mm, angle).area_mm2);
}

/// Opening at the plate's surface, mm.
template <class Real>
Real groove_top_width_mm(const GrooveShape<Real>& shape) {
  using std::tan;
  const Real depth = shape.thickness_mm - shape.root_face_mm;
  const Real angle = shape.angle_deg * (std::numbers::pi / 180.0);
  switch (shape.type) {
    case GrooveType::square:
      return shape.gap_mm;
    case GrooveType::single_v:
      return Real(shape.gap_mm + 2.0 * depth * tan(angle / 2.0));
    case GrooveType::double_v:
      return Real(shape.gap_mm + depth * tan(angle / 2.0));
    case GrooveType::single_bevel:
      return Real(shape.gap_mm + depth * tan(angle));
    case GrooveType::double_bevel:
      return Real(shape.gap_mm + depth / 2.0 * tan(angle));
    case GrooveType::single_u:
      break;
  }
  return Real(shape.gap_mm + 2.0 * half_u(depth, shape.root_radius_mm, angle).width_mm);
}

/// Cap over all welded faces, mm2: cap height mm, >= 0.
template <class Real>
Real groove_cap_area_mm2(GrooveType type, const Real& top_width_mm, const Real& cap_height_mm) {
  return Real(top_width_mm * cap_height_mm * (2.0 / 3.0) * static_cast<double>(welded_faces(type)));
}

inline constexpr FormulaNote groove_square_note{
    "groove.square", "groove_area_mm2",       "A = g*t",           "derived", "geometry",
    "square edges",  "exact for the drawing", SourceBasis::derived};
inline constexpr FormulaNote groove_single_v_note{"groove.single-v",
                                                  "groove_area_mm2",
                                                  "A = g*t + (t-c)^2*tan(alpha*pi/360)",
                                                  "derived",
                                                  "geometry",
                                                  "included angle alpha below 180 deg",
                                                  "exact for the drawing",
                                                  SourceBasis::derived};
inline constexpr FormulaNote groove_double_v_note{"groove.double-v",
                                                  "groove_area_mm2",
                                                  "A = g*t + (t-c)^2/2*tan(alpha*pi/360)",
                                                  "derived",
                                                  "geometry",
                                                  "symmetric, included angle alpha below 180 deg",
                                                  "exact for the drawing",
                                                  SourceBasis::derived};
inline constexpr FormulaNote groove_single_bevel_note{"groove.single-bevel",
                                                      "groove_area_mm2",
                                                      "A = g*t + (t-c)^2*tan(beta*pi/180)/2",
                                                      "derived",
                                                      "geometry",
                                                      "bevel angle beta below 90 deg",
                                                      "exact for the drawing",
                                                      SourceBasis::derived};
inline constexpr FormulaNote groove_double_bevel_note{"groove.double-bevel",
                                                      "groove_area_mm2",
                                                      "A = g*t + ((t-c)/2)^2*tan(beta*pi/180)",
                                                      "derived",
                                                      "geometry",
                                                      "symmetric, bevel angle beta below 90 deg",
                                                      "exact for the drawing",
                                                      SourceBasis::derived};
inline constexpr FormulaNote groove_single_u_note{
    "groove.single-u",
    "groove_area_mm2",
    "A = g*t + 2*(r^2/2*(phi - sin(phi)*cos(phi)) + s*r*sin(phi) + s^2/2*cos(phi)/sin(phi))",
    "derived",
    "geometry",
    "phi = 90 deg less the wall angle; s = t-c-r*(1-cos(phi)) not below 0, else the arc alone",
    "exact for the drawing",
    SourceBasis::derived};
inline constexpr FormulaNote groove_cap_note{"groove.cap",
                                             "cap_area_mm2",
                                             "Ac = 2/3*b*h*n",
                                             "derived",
                                             "parabola",
                                             "n faces welded: two for double grooves",
                                             "within 2 % of a circular cap for h/b up to 0.12",
                                             SourceBasis::derived};
inline constexpr FormulaNote groove_width_note{"groove.top-width",
                                               "top_width_mm",
                                               "b = g + w",
                                               "derived",
                                               "geometry",
                                               "w the opening of the sloped walls at the surface",
                                               "exact for the drawing",
                                               SourceBasis::derived};

}  // namespace seamtakt
