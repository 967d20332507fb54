#pragma once

#include <vector>

namespace seamtakt::desk {

/// A piece of an isoline between two points.
struct ContourPiece {
  double x1, y1, x2, y2;
};

/// Isolines of a grid at one level (marching squares, linear between points). values[row * x.size() + column]
/// at x[column], y[row]. `stride`: every so many points are looked at; a large map needs no more than the
/// screen has.
std::vector<ContourPiece> contour(const std::vector<double>& x, const std::vector<double>& y,
                                  const double* values, double level, std::size_t stride = 1);

/// Joins pieces that share an end into lines, so that they can be dashed. Points of a line are in `x` and
/// `y`; lines are separated by a NaN in both.
struct ContourLines {
  std::vector<double> x, y;
};
ContourLines joined_contour(const std::vector<ContourPiece>& pieces);

/// Round levels between the least and greatest of the values: 1, 2 or 5 times a power of ten apart, about
/// `count`.
std::vector<double> round_levels(double low, double high, int count);

}  // namespace seamtakt::desk
