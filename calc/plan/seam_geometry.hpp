#pragma once

#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// One run of weld along a seam: from and to, as distances along the polyline (mm), welded in this direction.
struct WeldRun {
  double from_mm = 0, to_mm = 0;
};

double distance_mm(const Point_mm& a, const Point_mm& b);

/// Length of the seam's polyline (mm).
double path_length_mm(const Seam& seam);

/// Whether the path ends where it began (within 1e-6 mm).
bool is_closed(const Seam& seam);

/// The runs of weld, as drawn: one for a continuous seam, n = floor((L + gap)/(length + gap)) for an
/// intermittent one. A closed seam's run ends overlap_mm beyond the path's end.
std::vector<WeldRun> weld_runs(const Seam& seam);

/// Sum of the runs (mm): what a pass lays.
double welded_length_mm(const Seam& seam);

/// The point at a distance along the path (mm); beyond the end of a closed path it goes round.
Point_mm point_at(const Seam& seam, double along_mm);

/// Whether the seam may be welded against its drawn direction: not in PF or PG, nor where drawn is demanded.
bool may_reverse(const Seam& seam);

/// Where a pass of the seam begins and ends when nothing else was ordered: odd passes as drawn, even ones
/// back where they may. The seam must have a run.
struct PassEnds {
  Point_mm begin, end;
};
PassEnds pass_ends(const Seam& seam, int pass);

/// Projection of a point on the path: the distance along it of the nearest point, and the distance to it.
struct Projection {
  double along_mm = 0, off_mm = 0;
};
Projection project(const Seam& seam, const Point_mm& point);

}  // namespace seamtakt
