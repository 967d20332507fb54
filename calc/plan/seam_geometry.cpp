#include "plan/seam_geometry.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

double distance_mm(const Point_mm& a, const Point_mm& b) {
  return std::sqrt((b[0] - a[0]) * (b[0] - a[0]) + (b[1] - a[1]) * (b[1] - a[1]) +
                   (b[2] - a[2]) * (b[2] - a[2]));
}

double path_length_mm(const Seam& seam) {
  double length = 0;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i)
    length += distance_mm(seam.path_mm[i - 1], seam.path_mm[i]);
  return length;
}

bool is_closed(const Seam& seam) {
  return seam.path_mm.size() > 2 && distance_mm(seam.path_mm.front(), seam.path_mm.back()) < 1e-6;
}

std::vector<WeldRun> weld_runs(const Seam& seam) {
  const double length = path_length_mm(seam);
  if (!seam.intermittent) return {{0, length + (is_closed(seam) ? seam.overlap_mm : 0)}};
  const double run = seam.intermittent->length_mm, pitch = run + seam.intermittent->gap_mm;
  // A length that is a whole number of pitches must not lose its last run to rounding.
  const auto count = static_cast<int>(std::floor((length + seam.intermittent->gap_mm) / pitch + 1e-9));
  std::vector<WeldRun> runs;
  for (int i = 0; i < count; ++i) runs.push_back({i * pitch, i * pitch + run});
  return runs;
}

double welded_length_mm(const Seam& seam) {
  if (!seam.intermittent) return path_length_mm(seam) + (is_closed(seam) ? seam.overlap_mm : 0);
  return static_cast<double>(weld_runs(seam).size()) * seam.intermittent->length_mm;
}

Point_mm point_at(const Seam& seam, double along_mm) {
  const double length = path_length_mm(seam);
  if (is_closed(seam) && along_mm > length) along_mm -= length;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
    const Point_mm &a = seam.path_mm[i - 1], &b = seam.path_mm[i];
    const double step = distance_mm(a, b);
    if (along_mm <= step && step > 0) {
      const double share = std::max(0.0, along_mm / step);
      return {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])};
    }
    along_mm -= step;
  }
  return seam.path_mm.back();
}

bool may_reverse(const Seam& seam) {
  return seam.direction != "as-drawn" && seam.position != "PF" && seam.position != "PG";
}

PassEnds pass_ends(const Seam& seam, int pass) {
  const auto runs = weld_runs(seam);
  const Point_mm first = point_at(seam, runs.front().from_mm), last = point_at(seam, runs.back().to_mm);
  return pass % 2 == 0 && may_reverse(seam) ? PassEnds{last, first} : PassEnds{first, last};
}

Projection project(const Seam& seam, const Point_mm& point) {
  Projection nearest{0, distance_mm(seam.path_mm.front(), point)};
  double before = 0;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
    const Point_mm &a = seam.path_mm[i - 1], &b = seam.path_mm[i];
    const double step = distance_mm(a, b);
    if (step <= 0) continue;
    double dot = 0;
    for (std::size_t k = 0; k < 3; ++k) dot += (point[k] - a[k]) * (b[k] - a[k]);
    const double share = std::clamp(dot / (step * step), 0.0, 1.0);
    Point_mm foot;
    for (std::size_t k = 0; k < 3; ++k) foot[k] = a[k] + share * (b[k] - a[k]);
    const double off = distance_mm(foot, point);
    if (off < nearest.off_mm) nearest = {before + share * step, off};
    before += step;
  }
  return nearest;
}

}  // namespace seamtakt
