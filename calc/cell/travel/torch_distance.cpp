#include "cell/travel/torch_distance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace seamtakt {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

Point_mm minus(const Point_mm& a, const Point_mm& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

double product(const Point_mm& a, const Point_mm& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Point_mm at_time(const TorchPiece& piece, double time_s) {
  const double duration_s = piece.end_s - piece.start_s;
  const double share = duration_s > 0 ? (time_s - piece.start_s) / duration_s : 0;
  const Point_mm way = minus(piece.to, piece.from);
  return {piece.from[0] + share * way[0], piece.from[1] + share * way[1], piece.from[2] + share * way[2]};
}

/// The square of the distance between a point of `a` and one of `b`, as far along as x and y say (0 to 1):
/// uu x^2 - 2 uv x y + vv y^2 + 2 wu x - 2 wv y + ww.
class TooNear {
 public:
  TooNear(const TorchPiece& a, const TorchPiece& b, double distance_mm)
      : delay_s_(b.start_s - a.start_s), a_s_(a.end_s - a.start_s), b_s_(b.end_s - b.start_s) {
    const Point_mm u = minus(a.to, a.from), v = minus(b.to, b.from), w = minus(a.from, b.from);
    uu_ = product(u, u);
    uv_ = product(u, v);
    vv_ = product(v, v);
    wu_ = product(w, u);
    wv_ = product(w, v);
    rest_ = product(w, w) - distance_mm * distance_mm;
  }

  std::optional<Delays> delays() {
    for (const double side : {0.0, 1.0}) {
      // x = side: a quadratic in y; y = side: one in x. An edge's ends are corners.
      on_edge(vv_, -uv_ * side - wv_, uu_ * side * side + 2 * wu_ * side + rest_,
              [&](double y) { add(side, y); });
      on_edge(uu_, -uv_ * side + wu_, vv_ * side * side - 2 * wv_ * side + rest_,
              [&](double x) { add(x, side); });
    }
    tangents();
    if (!(from_s_ < to_s_)) return std::nullopt;
    return Delays{from_s_, to_s_};
  }

 private:
  void add(double x, double y) {
    const double delay_s = delay_s_ + y * b_s_ - x * a_s_;
    from_s_ = std::min(from_s_, delay_s);
    to_s_ = std::max(to_s_, delay_s);
  }

  /// Where square*s^2 + 2*half*s + rest <= 0 for s in [0, 1]: both ends of that range.
  template <class Take>
  static void on_edge(double square, double half, double rest, const Take& take) {
    double low = 0, high = 1;
    if (square > 0) {
      const double root = half * half - square * rest;
      if (root < 0) return;
      low = std::max(low, (-half - std::sqrt(root)) / square);
      high = std::min(high, (-half + std::sqrt(root)) / square);
    } else if (rest > 0) {
      return;  // neither torch moves along this edge
    }
    if (low > high) return;
    take(low);
    take(high);
  }

  /// The points of the ellipse with the least and the largest delay, where they are inside.
  void tangents() {
    const double determinant = uu_ * vv_ - uv_ * uv_;
    if (!(determinant > 1e-12 * uu_ * vv_)) return;  // a strip: its ends are on the edges
    const double x0 = (-wu_ * vv_ + wv_ * uv_) / determinant, y0 = (wv_ * uu_ - wu_ * uv_) / determinant;
    const double inside = -(rest_ + wu_ * x0 - wv_ * y0);
    if (inside <= 0) return;
    const double dx = (-a_s_ * vv_ + b_s_ * uv_) / determinant, dy = (b_s_ * uu_ - a_s_ * uv_) / determinant;
    const double slope = -a_s_ * dx + b_s_ * dy;
    if (!(slope > 0)) return;
    const double far = std::sqrt(inside / slope);
    for (const double sign : {-far, far}) {
      const double x = x0 + sign * dx, y = y0 + sign * dy;
      if (x >= 0 && x <= 1 && y >= 0 && y <= 1) add(x, y);
    }
  }

  double delay_s_, a_s_, b_s_;
  double uu_ = 0, uv_ = 0, vv_ = 0, wu_ = 0, wv_ = 0, rest_ = 0;
  double from_s_ = infinity, to_s_ = -infinity;
};

}  // namespace

double least_distance_mm(const TorchPiece& a, const TorchPiece& b) {
  const double begin_s = std::max(a.start_s, b.start_s), end_s = std::min(a.end_s, b.end_s);
  if (begin_s > end_s) return infinity;
  const Point_mm apart = minus(at_time(a, begin_s), at_time(b, begin_s));
  const Point_mm change = minus(minus(at_time(a, end_s), at_time(b, end_s)), apart);
  const double square = product(change, change);
  const double share = square > 0 ? std::clamp(-product(apart, change) / square, 0.0, 1.0) : 0;
  return std::hypot(apart[0] + share * change[0], apart[1] + share * change[1], apart[2] + share * change[2]);
}

std::optional<Delays> delays_too_near(const TorchPiece& a, const TorchPiece& b, double distance_mm) {
  return TooNear(a, b, distance_mm).delays();
}

}  // namespace seamtakt
