#include "cell/lower_bound.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <set>

namespace seamtakt {

namespace {

constexpr std::size_t travel_seams = 700;
constexpr double none = std::numeric_limits<double>::infinity();

/// The least times of the seams, over all robots, directions and orders.
struct LeastTimes {
  std::vector<double> work_s;      ///< [seam]
  std::vector<double> way_home_s;  ///< [robot] from the nearest seam that it can weld
};

/// Shortest air move of a robot into a seam, from its home or from the end of another seam.
double way_in_s(const CellModel& model, int robot, int seam) {
  if (model.seams.size() > travel_seams) return model.motions[model.robots[robot].motion].wrist_s;
  double least = none;
  for (int to = 0; to < (model.seams[seam].reversible ? 2 : 1); ++to) {
    const int entry = model.entry_point(seam, to == 1);
    least = std::min(least, model.air_s(robot, model.home_point(robot), entry));
    for (int other = 0; other < static_cast<int>(model.seams.size()); ++other) {
      if (other == seam || !(model.seams[other].robot_mask >> robot & 1)) continue;
      least = std::min(least, model.air_s(robot, model.exit_point(other, false), entry));
      if (model.seams[other].reversible)
        least = std::min(least, model.air_s(robot, model.exit_point(other, true), entry));
    }
  }
  return least;
}

double work_s(const CellModel& model, int robot, int seam) {
  const CellSeam& at = model.seams[seam];
  double work = way_in_s(model, robot, seam) + at.sense_points * model.robots[robot].sense_point_s;
  for (int pass = at.first_pass; pass < at.first_pass + at.pass_count; ++pass)
    work +=
        model.weld_s[static_cast<std::size_t>(pass) * model.robots.size() + static_cast<std::size_t>(robot)];
  return work;
}

LeastTimes least_times(const CellModel& model) {
  LeastTimes least{std::vector<double>(model.seams.size(), none),
                   std::vector<double>(model.robots.size(), none)};
  for (int seam = 0; seam < static_cast<int>(model.seams.size()); ++seam) {
    const CellSeam& at = model.seams[seam];
    for (int i = at.first_robot; i < at.first_robot + at.robot_count; ++i) {
      const int robot = model.robots_of[i], home = model.home_point(robot);
      double& way_home = least.way_home_s[robot];
      least.work_s[seam] = std::min(least.work_s[seam], work_s(model, robot, seam));
      way_home = std::min(way_home, model.air_s(robot, model.exit_point(seam, false), home));
      if (at.reversible)
        way_home = std::min(way_home, model.air_s(robot, model.exit_point(seam, true), home));
    }
  }
  return least;
}

double least_way_home_s(const LeastTimes& least, std::uint64_t robots) {
  double way = none;
  for (std::size_t robot = 0; robot < least.way_home_s.size(); ++robot)
    if (robots >> robot & 1) way = std::min(way, least.way_home_s[robot]);
  return std::isfinite(way) ? way : 0;
}

/// Turns of the positioner that nothing can save: each orientation but the first.
double turns_s(const CellModel& model) {
  std::set<int> needed;
  for (const CellSeam& seam : model.seams)
    if (seam.orientation >= 0) needed.insert(seam.orientation);
  return needed.empty() ? 0 : static_cast<double>(needed.size() - 1) * model.orientation_change_s;
}

/// Between two services lies every_arc_s of arc at most, or one run that is longer.
double services_s(const CellModel& model, double capped_arc_s, int robots) {
  if (model.service_every_arc_s <= 0) return 0;
  const double parts = std::ceil(capped_arc_s / model.service_every_arc_s - 1e-6);
  return std::max(0.0, parts - robots) * model.service_s;
}

double capped_arc_s(const CellModel& model, const CellSeam& seam) {
  double arc = 0;
  for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
    for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
      arc += std::min(model.passes[pass].arc_s * model.runs[run].share, model.service_every_arc_s);
  return arc;
}

double load_bound_s(const CellModel& model, const LeastTimes& least, std::uint64_t robots) {
  double work = 0, arc = 0;
  for (std::size_t i = 0; i < model.seams.size(); ++i) {
    if (model.seams[i].robot_mask & ~robots) continue;
    work += least.work_s[i];
    arc += capped_arc_s(model, model.seams[i]);
  }
  if (work <= 0) return 0;
  const int count = std::popcount(robots);
  work += least_way_home_s(least, robots);
  return std::max(work / count + turns_s(model), (work + services_s(model, arc, count)) / count);
}

double chain_bound_s(const CellModel& model, const LeastTimes& least) {
  std::vector<double> end_s(model.seams.size(), 0);
  double bound = 0;
  for (const int i : model.precedence_order) {
    const CellSeam& seam = model.seams[i];
    for (int k = seam.first_after; k < seam.first_after + seam.after_count; ++k)
      end_s[i] = std::max(end_s[i], end_s[model.after[k]]);
    end_s[i] += least.work_s[i];
    for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
      end_s[i] += model.passes[pass].interpass_wait_s;
    bound = std::max(bound, end_s[i] + least_way_home_s(least, seam.robot_mask));
  }
  return bound;
}

double zone_bound_s(const CellModel& model, const LeastTimes& least) {
  std::vector<double> work_s(static_cast<std::size_t>(model.zone_count), 0);
  for (std::size_t i = 0; i < model.seams.size(); ++i) {
    const CellSeam& seam = model.seams[i];
    for (int k = seam.first_zone; k < seam.first_zone + seam.zone_count; ++k)
      work_s[model.zones_of[k]] += least.work_s[i];
  }
  double bound = 0;
  for (const double work : work_s)
    if (work > 0) bound = std::max(bound, work + turns_s(model) + least_way_home_s(least, ~std::uint64_t{0}));
  return bound;
}

}  // namespace

double makespan_bound_s(const CellModel& model) {
  if (model.seams.empty()) return 0;
  const LeastTimes least = least_times(model);
  const int count = model.robot_count();
  std::set<std::uint64_t> sets{count == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1};
  for (const CellSeam& seam : model.seams) sets.insert(seam.robot_mask);
  double bound = std::max(chain_bound_s(model, least), zone_bound_s(model, least));
  for (const std::uint64_t robots : sets) bound = std::max(bound, load_bound_s(model, least, robots));
  return bound;
}

double station_cycle_s(int stations, double weld_s, double load_s, double unload_s, double index_s) {
  if (stations < 2) return load_s + weld_s + unload_s;
  return std::max(weld_s + index_s, load_s + unload_s + index_s);
}

}  // namespace seamtakt
