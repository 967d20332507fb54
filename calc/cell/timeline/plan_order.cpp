#include "cell/timeline/plan_order.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

std::vector<SeamVisit> visits_of(const CycleResult& cycle, std::string_view robot) {
  std::vector<SeamVisit> visits;
  for (const Move& move : cycle.moves) {
    if (move.robot != robot || move.pass == 0) continue;
    const auto at = std::find_if(visits.begin(), visits.end(),
                                 [&](const SeamVisit& visit) { return visit.seam == move.seam; });
    if (at == visits.end())
      visits.push_back({move.seam, move.start_s, move.end_s});
    else
      at->end_s = std::max(at->end_s, move.end_s);
  }
  return visits;
}

std::string visit_after(const CycleResult& cycle, std::string_view robot, double at_s, std::string_view but) {
  for (const SeamVisit& visit : visits_of(cycle, robot))
    if (visit.seam != but && (visit.start_s + visit.end_s) / 2 > at_s) return visit.seam;
  return {};
}

std::string robot_of(const CycleResult& cycle, std::string_view seam) {
  for (const OrderStep& step : cycle.order)
    if (step.seam == seam) return step.robot;
  return {};
}

void take_order(Weldment& weldment, const CycleResult& cycle) {
  weldment.order = cycle.order;
}

namespace {

void refuse_unreached(const Cell& cell, const Seam& seam, const std::string& where, std::string_view robot) {
  std::vector<std::string> reach = seam.robots;
  if (reach.empty())
    for (const Robot& each : cell.robots) reach.push_back(each.id);
  if (std::find(reach.begin(), reach.end(), robot) == reach.end())
    throw InputError(where, Sentence("cell.refusal.robot"_key, {{"robot", printable(robot)}}),
                     Sentence("cell.refusal.robot-of-seam"_key, {{"robots", comma_list(reach)}}));
}

}  // namespace

void place_seam(const Cell& cell, Weldment& weldment, const CycleResult& now, std::string_view seam,
                std::string_view robot, std::string_view before) {
  const std::string where = seam_place(weldment.id, std::string(seam));
  const Seam* drawn = find_by_id(weldment.seams, std::string(seam));
  if (drawn == nullptr || robot_of(now, seam).empty())
    throw InputError(where, "a seam that no robot welds"_word, "a seam of the robots' order"_word);
  refuse_unreached(cell, *drawn, where, robot);
  std::vector<OrderStep> moved, order;
  for (const OrderStep& step : now.order) (step.seam == seam ? moved : order).push_back(step);
  for (OrderStep& step : moved) step.robot = robot;
  const auto at = before.empty() ? order.end()
                                 : std::find_if(order.begin(), order.end(),
                                                [&](const OrderStep& step) { return step.seam == before; });
  if (!before.empty() && at == order.end())
    throw InputError(where, Sentence("cell.refusal.place-before"_key, {{"seam", printable(before)}}),
                     "another seam of the robots' order"_word);
  order.insert(at, moved.begin(), moved.end());
  weldment.order = std::move(order);
}

}  // namespace seamtakt
