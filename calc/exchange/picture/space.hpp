#pragma once

#include <cmath>

#include "plan/plan.hpp"

/// Arithmetic of points and directions in space; lengths in mm.
namespace seamtakt::space {

inline Point_mm plus(const Point_mm& a, const Point_mm& b) {
  return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}
inline Point_mm minus(const Point_mm& a, const Point_mm& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}
inline Point_mm times(double factor, const Point_mm& a) {
  return {factor * a[0], factor * a[1], factor * a[2]};
}
inline double dot(const Point_mm& a, const Point_mm& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
inline Point_mm cross(const Point_mm& a, const Point_mm& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
inline double length(const Point_mm& a) {
  return std::sqrt(dot(a, a));
}
/// Of length 1; the vector itself where it has no length.
inline Point_mm unit(const Point_mm& a) {
  const double l = length(a);
  return l > 0 ? times(1 / l, a) : a;
}
/// The point at the share `t` of the way from a to b.
inline Point_mm between(const Point_mm& a, const Point_mm& b, double t) {
  return plus(a, times(t, minus(b, a)));
}

}  // namespace seamtakt::space
