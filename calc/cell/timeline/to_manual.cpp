#include "cell/timeline/to_manual.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "cell/timeline/cell_model.hpp"
#include "plan/manual_time.hpp"
#include "plan/plan_index.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// Indices of the seams that have something to weld and no robot.
std::vector<std::size_t> nobodys_seams(const Plan& plan, const Weldment& weldment,
                                       const Evaluation& evaluation) {
  std::vector<std::size_t> seams;
  for (const int index : compile_cell(plan, weldment, evaluation).unwelded) {
    const Seam& seam = weldment.seams[static_cast<std::size_t>(index)];
    if (!seam.schedules.empty() && !weld_runs(seam).empty()) seams.push_back(static_cast<std::size_t>(index));
  }
  return seams;
}

const ManualWork& manual_work(const Plan& plan, const std::string& where) {
  if (!plan.cell || !plan.cell->manual)
    throw InputError(where, "a cell without hand welding"_word,
                     "the arc share and the set-up of a seam under cell.manual"_word);
  return *plan.cell->manual;
}

Finding finding_of(const MovedSeam& moved, const ManualWork& work) {
  const UnitValue time{moved.hand_time_s / 3600, "h", 3};
  const std::string place = seam_place(moved.weldment, moved.seam);
  if (moved.schedule.empty())
    return {"cell.to-manual.no-schedule",
            Severity::fail,
            place,
            moved.hand_time_s / 3600,
            std::nullopt,
            "h",
            Sentence("cell.to-manual.no-schedule"_key, {{"time", time}}),
            "plan"};
  return {"cell.to-manual",
          Severity::note,
          place,
          moved.hand_time_s / 60,
          std::nullopt,
          "min",
          Sentence("cell.to-manual"_key, {{"time", UnitValue{moved.hand_time_s / 60, "min", 3}},
                                          {"schedule", moved.schedule},
                                          {"share", UnitValue{100 * work.arc_share, "%", 3}}}),
          "plan"};
}

MovedSeam move_to_hand(const Plan& plan, const ManualWork& work, Weldment& weldment, Seam& seam) {
  MovedSeam moved{weldment.id, seam.id, seam.manual_schedule, hand_time_s(plan, work, seam)};
  seam.by = "manual";
  seam.robots.clear();
  if (!seam.manual_schedule.empty()) seam.schedules.assign(seam.schedules.size(), seam.manual_schedule);
  std::erase_if(weldment.order, [&](const OrderStep& step) { return step.seam == seam.id; });
  if (weldment.manual_s) *weldment.manual_s += moved.hand_time_s;
  return moved;
}

}  // namespace

PlanToManual to_manual(const Plan& plan, const Evaluation& evaluation, const std::string& where) {
  PlanToManual result{plan, {}, {}};
  for (std::size_t i = 0; i < plan.weldments.size(); ++i)
    for (const std::size_t index : nobodys_seams(plan, plan.weldments[i], evaluation)) {
      const ManualWork& work = manual_work(plan, where);
      Weldment& weldment = result.plan.weldments[i];
      result.moved.push_back(move_to_hand(plan, work, weldment, weldment.seams[index]));
      result.findings.push_back(finding_of(result.moved.back(), work));
    }
  return result;
}

Plan without_absent_robots(Plan plan) {
  const auto is_absent = [&](const std::string& id) {
    return !plan.cell || !find_by_id(plan.cell->robots, id);
  };
  for (Weldment& weldment : plan.weldments)
    for (Seam& seam : weldment.seams) std::erase_if(seam.robots, is_absent);
  std::erase_if(plan.instruments, [&](const Instrument& instrument) {
    return !instrument.robot.empty() && is_absent(instrument.robot);
  });
  return plan;
}

}  // namespace seamtakt
