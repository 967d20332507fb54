#include "cell/timeline/without_robot.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "cell/travel/reach.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

void refuse_unknown(const Plan& plan, std::string_view id, const std::string& where) {
  std::vector<std::string> ids;
  if (plan.cell)
    for (const Robot& robot : plan.cell->robots) ids.push_back(robot.id);
  if (std::find(ids.begin(), ids.end(), id) != ids.end()) return;
  throw InputError(where, "\"" + printable(id) + "\"",
                   ids.empty()
                       ? Phrase("a plan whose cell has robots"_word)
                       : Sentence("cell.refusal.one-of"_key, {{"robots", printable(comma_list(ids), 300)}}));
}

/// The first robot of the cell that reaches the seam; nullptr where none does.
const Robot* first_in_reach(const Cell& cell, const Seam& seam) {
  const auto found = std::find_if(cell.robots.begin(), cell.robots.end(),
                                  [&](const Robot& robot) { return reaches(robot, seam); });
  return found == cell.robots.end() ? nullptr : &*found;
}

/// What happens to a seam.
enum class Fate { untouched, taken_over, unreached };

Fate fate_of(Seam& seam, const Cell& before, const Cell& after, std::string_view id) {
  if (seam.by == "manual") return Fate::untouched;
  if (seam.robots.empty()) {
    const Robot* left = first_in_reach(after, seam);
    if (!left) return Fate::unreached;
    return left == find_by_id(after.robots, first_in_reach(before, seam)->id) ? Fate::untouched
                                                                              : Fate::taken_over;
  }
  if (std::find(seam.robots.begin(), seam.robots.end(), id) == seam.robots.end()) return Fate::untouched;
  const bool was_first = seam.robots.front() == id;
  std::vector<std::string> left;
  std::copy_if(seam.robots.begin(), seam.robots.end(), std::back_inserter(left),
               [&](const std::string& robot) { return robot != id; });
  if (left.empty()) return Fate::unreached;
  seam.robots = std::move(left);
  return was_first ? Fate::taken_over : Fate::untouched;
}

}  // namespace

PlanWithoutRobot without_robot(const Plan& plan, std::string_view id, const std::string& where) {
  refuse_unknown(plan, id, where);
  PlanWithoutRobot result;
  result.plan = plan;
  std::erase_if(result.plan.cell->robots, [&](const Robot& robot) { return robot.id == id; });
  for (Weldment& weldment : result.plan.weldments) {
    int taken_over = 0;
    std::erase_if(weldment.order, [&](const OrderStep& step) { return step.robot == id; });
    for (Seam& seam : weldment.seams) {
      const Fate fate = fate_of(seam, *plan.cell, *result.plan.cell, id);
      const std::string place = seam_place(weldment.id, seam.id);
      if (fate == Fate::taken_over) {
        ++taken_over;
        result.taken_over.push_back(place);
      } else if (fate == Fate::unreached) {
        result.unreached.push_back(place);
        result.findings.push_back({"cell.robot-out.unreached", Severity::fail, place, std::nullopt,
                                   std::nullopt, "",
                                   Sentence("cell.robot-out.unreached"_key, {{"robot", id}}), "plan"});
      }
    }
    if (taken_over > 0)
      result.findings.push_back(
          {"cell.robot-out.taken-over", Severity::note, weldment.id, taken_over, std::nullopt, "",
           Sentence("cell.robot-out.taken-over"_key, {{"robot", id}, {"seams", taken_over}}), "plan"});
  }
  return result;
}

}  // namespace seamtakt
