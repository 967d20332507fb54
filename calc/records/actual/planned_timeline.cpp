#include "records/actual/planned_timeline.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

void add_run(const Move& arc, std::vector<PlannedArc>& passes, std::vector<PlannedArc>& runs) {
  const double time_s = arc.end_s - arc.start_s;
  const bool goes_on = !passes.empty() && passes.back().seam == arc.seam && passes.back().pass == arc.pass;
  if (!goes_on) passes.push_back({arc.robot, arc.seam, arc.pass, 0, arc.start_s, arc.end_s, 0, 0});
  PlannedArc& pass = passes.back();
  pass.end_s = arc.end_s;
  pass.arc_on_s += time_s;
  ++pass.arc_starts;
  runs.push_back(
      {arc.robot, arc.seam, arc.pass, static_cast<int>(pass.arc_starts), arc.start_s, arc.end_s, time_s, 1});
}

}  // namespace

PlannedTimeline::PlannedTimeline(CycleResult cycle) : cycle_(std::move(cycle)) {
  for (const Move& move : cycle_.moves)
    if (!move.robot.empty()) lanes_[move.robot].moves.push_back(&move);
  bool any = false;
  for (auto& [robot, lane] : lanes_) {
    std::stable_sort(lane.moves.begin(), lane.moves.end(),
                     [](const Move* a, const Move* b) { return a->start_s < b->start_s; });
    for (const Move* move : lane.moves)
      if (move->kind == MoveKind::arc) add_run(*move, lane.passes, lane.runs);
    for (const PlannedArc& pass : lane.passes)
      by_name_.emplace(std::pair(std::string_view(pass.seam), pass.pass), &pass);
    if (lane.passes.empty()) continue;
    const double first_s = lane.passes.front().start_s, last_s = lane.passes.back().end_s;
    first_arc_s_ = any ? std::min(first_arc_s_, first_s) : first_s;
    last_arc_s_ = any ? std::max(last_arc_s_, last_s) : last_s;
    any = true;
  }
}

const PlannedTimeline::Lane& PlannedTimeline::lane(std::string_view robot) const {
  static const Lane none;
  const auto at = lanes_.find(robot);
  return at == lanes_.end() ? none : at->second;
}

const std::vector<PlannedArc>& PlannedTimeline::passes(std::string_view robot) const {
  return lane(robot).passes;
}

const std::vector<PlannedArc>& PlannedTimeline::runs(std::string_view robot) const {
  return lane(robot).runs;
}

const PlannedArc* PlannedTimeline::pass(std::string_view seam, int number) const {
  const auto at = by_name_.find({seam, number});
  return at == by_name_.end() ? nullptr : at->second;
}

std::vector<const Move*> PlannedTimeline::moves(std::string_view robot, double from_s, double to_s) const {
  const std::vector<const Move*>& all = lane(robot).moves;
  auto at = std::lower_bound(all.begin(), all.end(), from_s,
                             [](const Move* move, double time_s) { return move->end_s <= time_s; });
  std::vector<const Move*> found;
  for (; at != all.end() && (*at)->start_s < to_s; ++at)
    if ((*at)->end_s > (*at)->start_s) found.push_back(*at);
  return found;
}

std::vector<PlannedPart> PlannedTimeline::parts(std::string_view robot, double from_s, double to_s) const {
  std::vector<PlannedPart> sums;
  for (const Move* move : moves(robot, from_s, to_s)) {
    const double time_s = std::min(move->end_s, to_s) - std::max(move->start_s, from_s);
    auto at = std::find_if(sums.begin(), sums.end(), [&](const PlannedPart& part) {
      return part.kind == move->kind && part.cause == move->cause;
    });
    if (at == sums.end()) at = sums.insert(at, {move->kind, move->cause, 0});
    at->time_s += time_s;
  }
  return sums;
}

}  // namespace seamtakt
