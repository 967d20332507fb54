#include "cell/bound/least_times.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "cell/bound/turn_bound.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t travel_seams = 700;
constexpr double unknown = std::numeric_limits<double>::infinity();

/// Shortest air move of a robot into a seam, from its home or from the end of another seam.
double way_in_s(const CellModel& model, int robot, int seam) {
  if (model.seams.size() > travel_seams) return model.motions[model.robots[robot].motion].wrist_s;
  double least = unknown;
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

}  // namespace

LeastTimes least_times(const CellModel& model) {
  LeastTimes least{std::vector<double>(model.seams.size(), unknown),
                   std::vector<double>(model.robots.size(), unknown), least_turns_s(model)};
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
  double way = unknown;
  for (std::size_t robot = 0; robot < least.way_home_s.size(); ++robot)
    if (robots >> robot & 1) way = std::min(way, least.way_home_s[robot]);
  return std::isfinite(way) ? way : 0;
}

double services_s(const CellModel& model, double capped_arc_s, int robots) {
  if (model.service_every_arc_s <= 0) return 0;
  const double parts = std::ceil(capped_arc_s / model.service_every_arc_s - 1e-6);
  return std::max(0.0, parts - robots) * model.least_service_s;
}

double capped_arc_s(const CellModel& model, const CellSeam& seam) {
  double arc = 0;
  for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
    for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
      arc += std::min(model.passes[pass].arc_s * model.runs[run].share, model.service_every_arc_s);
  return arc;
}

}  // namespace seamtakt
