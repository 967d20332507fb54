#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "drawing/body.hpp"

namespace seamtakt::drawing {

using Point2_mm = std::array<double, 2>;

/// A flat plate: its outline lies in the plane of u and v, its thickness goes along u x v.
struct PlateShape {
  gp_Pnt origin;
  gp_Vec u, v;
  std::vector<Point2_mm> outline_mm;
  std::vector<std::vector<Point2_mm>> holes_mm;
  double thickness_mm = 0;
};

/// A straight hollow section. Rectangular: b_mm and h_mm; round: d_mm.
struct TubeShape {
  gp_Pnt begin, end;
  std::optional<double> d_mm, b_mm, h_mm, r_mm;
  double t_mm = 0;
  gp_Vec b_along;  ///< of a rectangular one
};

struct Part {
  std::string name, path;  ///< path: names down the assembly, each instance its own
  std::unique_ptr<Body> body;
  std::optional<PlateShape> plate;
  std::optional<TubeShape> tube;
  std::optional<double> thickness_mm;
  /// Of a plate: across it. None where two directions are as good (a square bar).
  std::optional<gp_Vec> thickness_direction;
  /// By its name a bolt, nut, washer, bearing or the like: told, never left out here.
  bool is_hardware = false;
};

/// By a word such as "nut" beside a standard or a thread ("DIN", "M6x30"): "bearing bracket" is a bracket.
bool is_named_hardware(const std::string& name);

/// Finds out whether it is a plate or a tube.
void find_form(Part& part);

}  // namespace seamtakt::drawing
