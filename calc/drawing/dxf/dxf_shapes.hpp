#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

namespace seamtakt::drawing {

using FlatPoint = std::array<double, 2>;

/// A corner of a drawn line; a bulge is the tangent of a quarter of the arc that begins there (0: straight).
struct FlatCorner {
  FlatPoint at{};
  double bulge = 0;
};

/// LINE, ARC, CIRCLE and polylines alike.
struct FlatShape {
  std::string id, layer;
  std::vector<FlatCorner> corners;
  bool is_closed = false;
};

/// x' = m00 x + m01 y + t0, y' = m10 x + m11 y + t1.
struct FlatPlacing {
  std::array<double, 4> m{1, 0, 0, 1};
  FlatPoint t{};

  FlatPoint operator()(const FlatPoint& p) const {
    return {m[0] * p[0] + m[1] * p[1] + t[0], m[2] * p[0] + m[3] * p[1] + t[1]};
  }
  /// This one after `first`.
  FlatPlacing after(const FlatPlacing& first) const;
  /// By how much it stretches at most.
  double largest_scale() const;
};

/// A block that is put somewhere, once or in rows and columns.
struct FlatInsert {
  std::string id, layer, block;
  FlatPlacing place;  ///< of the first
  int columns = 1, rows = 1;
  FlatPoint column_step{}, row_step{};
};

struct FlatBlock {
  FlatPoint base{};
  std::vector<FlatShape> shapes;
  std::vector<FlatInsert> inserts;
};

struct FlatPath {
  std::string id;
  std::vector<FlatPoint> points_mm;
  bool is_closed = false;
};

struct FlatDrawing {
  std::string path, sha256, version, unit;
  std::map<std::string, std::vector<FlatPath>> layers;
  std::map<std::string, std::size_t> left_out;  ///< kinds of entities that aren't read
};

/// What a drawing's own block and those that it puts in make up, arcs as chords within 0.05 mm. Refusal where
/// blocks hold themselves, or there is more than a drawing has.
void lay_out(const FlatBlock& model, const std::map<std::string, FlatBlock>& blocks, double mm_per_unit,
             FlatDrawing& drawing);

}  // namespace seamtakt::drawing
