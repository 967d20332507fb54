#include "cell/timeline/robot_travel.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

/// The points at which the robot arrives and leaves when it welds all passes of a seam in a row.
struct Ends {
  int entry, exit;
};

Ends ends_of(const CellModel& model, int seam, bool reversed) {
  const bool ends_reversed =
      model.seams[seam].reversible && model.seams[seam].pass_count % 2 == 0 ? !reversed : reversed;
  return {model.entry_point(seam, reversed), model.exit_point(seam, ends_reversed)};
}

}  // namespace

RoutingProblem travel_of(const CellModel& model, int robot, const std::vector<int>& seams) {
  RoutingProblem problem;
  std::vector<Ends> ends{{model.home_point(robot), model.home_point(robot)}};
  std::vector<int> cluster_of(model.seams.size(), 0);
  problem.first_node.push_back(1);
  for (std::size_t i = 0; i < seams.size(); ++i) {
    cluster_of[seams[i]] = static_cast<int>(i) + 1;
    ends.push_back(ends_of(model, seams[i], false));
    if (model.seams[seams[i]].reversible) ends.push_back(ends_of(model, seams[i], true));
    problem.first_node.push_back(static_cast<int>(ends.size()));
  }
  problem.cost.reserve(ends.size() * ends.size());
  for (const Ends& from : ends)
    for (const Ends& to : ends) problem.cost.push_back(model.air_s(robot, from.exit, to.entry));
  for (std::size_t i = 0; i < seams.size(); ++i) {
    const CellSeam& seam = model.seams[seams[i]];
    for (int k = seam.first_after; k < seam.first_after + seam.after_count; ++k)
      if (const int before = cluster_of[model.after[k]]; before > 0)
        problem.before.emplace_back(before, static_cast<int>(i) + 1);
  }
  return problem;
}

Sequence steps_of(const CellModel& model, int robot, const std::vector<int>& seams, const Route& route) {
  Sequence sequence;
  std::vector<Step> first_steps{{-1, static_cast<std::int16_t>(robot), false}};
  for (const int seam : seams)
    for (int reversed = 0; reversed < (model.seams[seam].reversible ? 2 : 1); ++reversed)
      first_steps.push_back({seam, static_cast<std::int16_t>(robot), reversed == 1});
  for (const int node : route.nodes) {
    Step step = first_steps[node];
    if (step.seam < 0) continue;
    const CellSeam& seam = model.seams[step.seam];
    for (int pass = 0; pass < seam.pass_count; ++pass) {
      sequence.push_back(step);
      step.reversed = seam.reversible ? !step.reversed : step.reversed;
    }
  }
  return sequence;
}

bool travel_decides(const CellModel& model) {
  if (model.robot_count() != 1 || !model.groups.empty() || model.service_every_arc_s > 0 || model.has_wear)
    return false;
  int orientation = model.load_orientation;
  for (const CellSeam& seam : model.seams) {
    if (seam.orientation >= 0 && orientation >= 0 && seam.orientation != orientation) return false;
    orientation = std::max(orientation, seam.orientation);
    if (seam.pass_count > 1 && !seam.reversible) return false;
  }
  for (const CellPass& pass : model.passes)
    if (pass.interpass_wait_s > 0 || !fits(model.robots[0].loaded, pass.need)) return false;
  return true;
}

}  // namespace seamtakt
