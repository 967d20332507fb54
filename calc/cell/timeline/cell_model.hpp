#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "cell/travel/motion.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

class PlanIndex;
class WeldmentRows;

/// What a robot has loaded, or a pass needs: indices into the plan's lists; -1 where the plan doesn't say.
struct Package {
  std::int32_t wire = -1, gas = -1, power_source = -1;
};

/// Whether a pass that needs `need` can be welded with `have`. What the plan doesn't say always fits.
inline bool fits(const Package& have, const Package& need) {
  const auto same = [](std::int32_t a, std::int32_t b) { return a == b || a < 0 || b < 0; };
  return same(have.wire, need.wire) && same(have.gas, need.gas) && same(have.power_source, need.power_source);
}

/// The wire loaded after a change to `need`: what the pass doesn't specify stays unchanged.
inline Package changed(const Package& have, const Package& need) {
  return {need.wire < 0 ? have.wire : need.wire, need.gas < 0 ? have.gas : need.gas,
          need.power_source < 0 ? have.power_source : need.power_source};
}

struct CellRobot {
  int motion = 0;  ///< robots of equal air speed, acceleration and wrist time share one
  double sense_point_s = 0;
  double wire_change_s = -1;  ///< below 0: it can't change
  Package loaded;
  double tip_every_arc_s = 0, tip_change_s = 0;  ///< 0: tips aren't changed in a cycle
  double spool_g = 0, spool_change_s = 0;        ///< 0: nor spools
  double tracking_s = 0;                         ///< that tracking adds to a pass
};

/// One run of weld along a seam, as drawn.
struct CellRun {
  double share = 1;  ///< of the pass's arc time
  Point_mm begin, end;
  double from_mm = 0, to_mm = 0;         ///< along the seam's path
  int first_piece = 0, piece_count = 0;  ///< of its path; none where torches need no distance
};

/// A straight part of a run, as drawn.
struct CellPiece {
  Point_mm from, to;
  double from_share = 0, to_share = 0;  ///< of the run's length
};

struct CellPass {
  double arc_s = 0;             ///< all runs
  double interpass_wait_s = 0;  ///< from the end of the pass before; 0 for the first
  Package need;
  double wire_g = 0;     ///< all runs
  bool tracked = false;  ///< the seam is followed while it is welded
};

/// A seam that a robot welds. [first_x, first_x + x_count) are ranges of the model's lists.
struct CellSeam {
  int source = 0;  ///< index in Weldment::seams
  int first_pass = 0, pass_count = 0;
  int first_run = 0, run_count = 0;
  int first_after = 0, after_count = 0;
  int first_zone = 0, zone_count = 0;
  int first_robot = 0, robot_count = 0;      ///< robots that can weld it, in the order of its list
  std::uint64_t robot_mask = 0;              ///< the same as a set of bits
  int orientation = -1;                      ///< -1: any
  int group = -1;                            ///< balance group; -1: none
  int side = -1;                             ///< 0 or 1: of which side of its group; -1 where it has no group
  int first_awaited = 0, awaited_count = 0;  ///< seams of its group that it comes after, however far
  int sense_points = 0;
  bool reversible = true;
  int partner = -1;                    ///< seam that another robot begins together with it; -1: none
  int first_arc = 0;                   ///< of its arcs, [pass * run_count + run], among all seams'
  int first_near = 0, near_count = 0;  ///< seams whose torches may come too near
};

/// A balance group: its seams are on two sides and are begun alternately.
struct CellGroup {
  int source = 0;  ///< the weldment's seam that is its first member
  int first_member = 0, member_count = 0;
};

/// A box in which only one robot is at a time: [low, high].
struct CellBox {
  int zone = 0;
  Point_mm low{}, high{};
};

/// A weldment in its cell, compiled for scheduling: indices and plain numbers, no strings.
///
/// Points are numbered: seam i begins at 2i and ends at 2i + 1 (as drawn); robot r's home is 2*seams + r;
/// where the torch is serviced at a place, that is the last one. Per-robot times are at [index * robot_count
/// + robot].
struct CellModel {
  std::vector<CellRobot> robots;
  std::vector<Motion> motions;
  std::vector<CellSeam> seams;
  std::vector<CellPass> passes;
  std::vector<double> heat_J_mm;  ///< [pass] heat input; for a timeline on plates of finite size
  std::vector<CellRun> runs;
  std::vector<int> after;      ///< seams that must be done before
  std::vector<int> zones_of;   ///< zones a seam is in
  std::vector<int> robots_of;  ///< robots that can weld a seam
  std::vector<CellGroup> groups;
  std::vector<int> members;           ///< seams of a balance group
  std::vector<int> awaited;           ///< seams of its own group that a seam comes after
  std::vector<int> precedence_order;  ///< all seams, each after those it has to follow, else in file order
  int zone_count = 0, orientation_count = 0;
  double orientation_change_s = 0;
  double service_every_arc_s = 0;  ///< 0: no torch service
  double service_s = 0;
  double least_service_s = 0;     ///< with the shortest way to its place and back
  int service_point = -1;         ///< where the torch is serviced; -1: where it is
  std::vector<double> turn_s;     ///< [from * orientations + to]; empty: orientation_change_s each
  int load_orientation = -1;      ///< in which a cycle begins and ends; -1: any
  std::vector<CellBox> boxes;     ///< for air moves; seams in them are in their zones
  double torch_distance_mm = 0;   ///< between two arcs at least; 0: any
  std::vector<CellPiece> pieces;  ///< of runs
  std::vector<int> near_seams;    ///< whose torches may come too near
  int arc_count = 0;              ///< runs of all passes
  bool has_pairs = false;         ///< a seam has a partner
  bool has_wear = false;          ///< a robot changes tips or spools
  std::vector<Point_mm> points;
  std::vector<double> start_s;  ///< [pass, robot] arc start of one run
  std::vector<double> end_s;    ///< [pass, robot] crater fill and post-flow of one run
  std::vector<double> weld_s;   ///< [pass, robot] all runs of a pass with the air moves between, no service
  std::vector<double> inner_air_s;  ///< [run, robot] air move from the run before, as drawn; 0 for the first
  std::vector<double> back_s;  ///< [seam, robot] air move from one end to the other; 0 where they coincide

  int robot_count() const { return static_cast<int>(robots.size()); }
  int point_count() const { return static_cast<int>(points.size()); }
  int home_point(int robot) const { return 2 * static_cast<int>(seams.size()) + robot; }
  int entry_point(int seam, bool reversed) const { return 2 * seam + (reversed ? 1 : 0); }
  int exit_point(int seam, bool reversed) const { return 2 * seam + (reversed ? 0 : 1); }

  /// Time of an air move between two points, wrist included (s).
  double air_s(int robot, int from, int to) const {
    const Motion& motion = motions[robots[robot].motion];
    if (motion.air_s.empty()) return air_on_demand_s(motion, from, to);
    return motion.air_s[static_cast<std::size_t>(from) * points.size() + static_cast<std::size_t>(to)];
  }

  /// The same with its legs.
  AirWay air_way_between(int robot, int from, int to) const {
    return air_way(motions[robots[robot].motion], place(from), place(to));
  }
  AirPlace place(int point) const { return {points[point], point < 2 * static_cast<int>(seams.size())}; }

  /// Time of a turn of the positioner (s).
  double turn_time_s(int from, int to) const {
    if (turn_s.empty()) return orientation_change_s;
    return turn_s[static_cast<std::size_t>(from) * static_cast<std::size_t>(orientation_count) +
                  static_cast<std::size_t>(to)];
  }

  /// Time of a straight move from rest to rest, wrist included (s).
  static double air_between_s(const Motion& motion, const Point_mm& from, const Point_mm& to);

 private:
  double air_on_demand_s(const Motion& motion, int from, int to) const;
};

struct CompiledCell {
  CellModel model;
  Findings findings;
  int robot_seams = 0;        ///< seams that aren't manual
  std::vector<int> unwelded;  ///< those of them that aren't in the model: index in Weldment::seams
};

/// Compiles a weldment's robot seams for the plan's cell. A seam that no robot can weld, or that has nothing
/// to weld, is a fail finding, is listed in `unwelded` and isn't in the model; seams that come after it don't
/// wait for it, nor do seams that come after a manual one (a note): manual work is assumed to be done before
/// the robots begin. InputError: `after` is circular or names no seam, a schedule is unknown, an air speed or
/// acceleration isn't above 0, more than 64 robots. std::invalid_argument: `evaluation` lacks a pass, so it
/// isn't of this plan.
CompiledCell compile_cell(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation);

/// The same for one timeline of one weldment of many: the plan's index is made once, the rows are the
/// weldment's own, and air moves are computed on demand.
CompiledCell compile_cell(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                          const WeldmentRows& rows);

}  // namespace seamtakt
