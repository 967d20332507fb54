#include "cell/timeline/planned_order.hpp"

#include <algorithm>
#include <map>

#include "base/text/comma_list.hpp"
#include "cell/timeline/pairs.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t named_seams = 8;

/// What the finding says of steps that can't be done and of seams that follow at the end.
std::vector<Sentence> mendings(std::size_t left_out, std::vector<std::string> completed) {
  std::vector<Sentence> sentences;
  if (left_out > 0) sentences.push_back(Sentence("cycle.order.mended.left-out"_key, {{"steps", left_out}}));
  if (completed.empty()) return sentences;
  const std::size_t count = completed.size();
  completed.resize(std::min(count, named_seams));
  const std::string seams = comma_list(completed);
  sentences.push_back(
      count > named_seams
          ? Sentence("cycle.order.mended.completed.more"_key, {{"seams", seams}})
          : Sentence("cycle.order.mended.completed"_key, {{"seams", seams}, {"count", count}}));
  return sentences;
}

/// Replays the plan's steps and completes what they leave open.
class OrderReader {
 public:
  OrderReader(const Plan& plan, const Weldment& weldment, const CellModel& model)
      : weldment_(weldment), model_(model), scheduler_(model), robot_of_(model.seams.size(), -1) {
    for (int seam = 0; seam < static_cast<int>(model.seams.size()); ++seam)
      seam_of_id_[weldment.seams[model.seams[seam].source].id] = seam;
    for (int robot = 0; robot < model.robot_count(); ++robot)
      robot_of_id_[plan.cell->robots[robot].id] = robot;
  }

  Sequence read(Findings& findings) {
    std::size_t left_out = 0;
    for (const OrderStep& step : weldment_.order) left_out += take(step) ? 0 : 1;
    std::vector<std::string> completed;
    for (const int seam : model_.precedence_order)
      if (complete(seam)) completed.push_back(weldment_.seams[model_.seams[seam].source].id);
    if (left_out == 0 && completed.empty()) return std::move(sequence_);
    findings.push_back({"cycle.order.mended", Severity::warn, weldment_.id,
                        static_cast<double>(left_out + completed.size()), std::nullopt, "",
                        Sentence("cycle.order.mended"_key, {{"mendings", mendings(left_out, completed)}}),
                        "plan"});
    return std::move(sequence_);
  }

 private:
  bool append(int seam, int robot, bool reversed) {
    const Step step{seam, static_cast<std::int16_t>(robot), reversed && model_.seams[seam].reversible};
    if (scheduler_.done(seam) || !scheduler_.append(step)) return false;
    robot_of_[seam] = robot;
    sequence_.push_back(step);
    return true;
  }

  bool take(const OrderStep& step) {
    const auto seam = seam_of_id_.find(step.seam);
    const auto robot = robot_of_id_.find(step.robot);
    if (seam == seam_of_id_.end() || robot == robot_of_id_.end()) return false;
    return append(seam->second, robot->second, step.direction == "reversed");
  }

  /// Whether there was something left of the seam.
  bool complete(int seam) {
    if (scheduler_.done(seam)) return false;
    const int robot =
        robot_of_[seam] >= 0 ? robot_of_[seam] : model_.robots_of[model_.seams[seam].first_robot];
    for (bool reversed = false; !scheduler_.done(seam); reversed = !reversed)
      if (!append(seam, robot, reversed)) break;
    return true;
  }

  const Weldment& weldment_;
  const CellModel& model_;
  Scheduler scheduler_;
  std::vector<int> robot_of_;
  std::map<std::string_view, int> seam_of_id_, robot_of_id_;
  Sequence sequence_;
};

Sequence order_of_plan(const Plan& plan, const Weldment& weldment, CompiledCell& compiled) {
  const CellModel& model = compiled.model;
  if (!model.has_pairs) return OrderReader(plan, weldment, model).read(compiled.findings);
  const CellModel unpaired = without_pairs(model);
  return paired_order(model, OrderReader(plan, weldment, unpaired).read(compiled.findings));
}

}  // namespace

PlannedOrder planned_order(const Plan& plan, const Weldment& weldment, CompiledCell& compiled) {
  const CellModel& model = compiled.model;
  if (!weldment.order.empty()) {
    PlannedOrder planned{order_of_plan(plan, weldment, compiled), Balance::kept};
    if (Scheduler(model, Balance::kept).makespan_s(planned.sequence) == Scheduler::impossible)
      planned.balance = Balance::ignored;
    return planned;
  }
  std::vector<int> overtaken;
  PlannedOrder planned{sequence_given(model, &overtaken), Balance::ignored};
  for (const int seam : overtaken)
    compiled.findings.push_back({"cycle.order.after", Severity::note,
                                 weldment.id + "/" + weldment.seams[model.seams[seam].source].id,
                                 std::nullopt, std::nullopt, "", Sentence("cycle.order.after"_key), "plan"});
  return planned;
}

}  // namespace seamtakt
