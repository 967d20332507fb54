#include "cell/timeline/hot_timeline.hpp"

#include <algorithm>
#include <limits>
#include <string>

#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

constexpr int most_rounds = 4;

/// The steps by the time at which their first arc is struck.
Sequence by_first_arc(const CellModel& model, const Sequence& sequence, const std::vector<BareMove>& moves) {
  std::vector<double> begin_s(model.passes.size(), std::numeric_limits<double>::infinity());
  for (const BareMove& move : moves)
    if (move.kind == MoveKind::arc) {
      double& first_s = begin_s[static_cast<std::size_t>(
          model.seams[static_cast<std::size_t>(move.seam)].first_pass + move.pass - 1)];
      first_s = std::min(first_s, move.start_s);
    }
  struct Timed {
    double begin_s;
    Step step;
  };
  std::vector<Timed> timed;
  std::vector<int> done(model.seams.size(), 0);
  for (const Step& step : sequence) {
    const auto seam = static_cast<std::size_t>(step.seam);
    timed.push_back({begin_s[static_cast<std::size_t>(model.seams[seam].first_pass + done[seam]++)], step});
  }
  std::stable_sort(timed.begin(), timed.end(),
                   [](const Timed& a, const Timed& b) { return a.begin_s < b.begin_s; });
  Sequence sorted;
  for (const Timed& each : timed) sorted.push_back(each.step);
  return sorted;
}

bool are_equal(const Sequence& a, const Sequence& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Step& x, const Step& y) {
    return x.seam == y.seam && x.robot == y.robot && x.reversed == y.reversed;
  });
}

bool is_covered_arc(const HeatHistory& heat, const BareMove& move) {
  return move.kind == MoveKind::arc && heat.covers(move.seam);
}

std::string place_of(const Weldment& weldment, const CellModel& model, const BareMove& move) {
  const int source = model.seams[static_cast<std::size_t>(move.seam)].source;
  return pass_place(weldment.id, weldment.seams[static_cast<std::size_t>(source)].id, move.pass);
}

void judge_long_cooling(const Weldment& weldment, const CellModel& model, const HeatHistory& heat,
                        const std::vector<BareMove>& moves, Findings& findings) {
  for (const BareMove& move : moves) {
    if (move.kind != MoveKind::wait || move.reason.cause != WaitCause::cooling || !heat.covers(move.seam))
      continue;
    const double wait_s = move.end_s - move.start_s;
    const int pass = model.seams[static_cast<std::size_t>(move.seam)].first_pass + move.pass - 1;
    if (wait_s <= never_above_s ||
        model.passes[static_cast<std::size_t>(pass)].interpass_wait_s > never_above_s)
      continue;
    findings.push_back(
        {"cycle.interpass.never", Severity::fail, place_of(weldment, model, move), wait_s, never_above_s, "s",
         Sentence("cycle.interpass.never"_key, {{"limit", UnitValue{heat.limit_C(move.seam, move.pass), "C"}},
                                                {"wait", UnitValue{wait_s / 3600, "h"}}}),
         "common practice, no source"});
  }
}

void judge_hot_starts(const Weldment& weldment, const CellModel& model, const HeatHistory& heat,
                      const std::vector<BareMove>& moves, Findings& findings) {
  constexpr double rounding_K = 1;
  for (std::size_t i = 0; i < moves.size(); ++i) {
    const BareMove& move = moves[i];
    if (!is_covered_arc(heat, move)) continue;
    const double limit_C = heat.limit_C(move.seam, move.pass);
    if (limit_C == std::numeric_limits<double>::infinity()) continue;
    const double start_C = heat.start_C(move.seam, move.pass, move.run, move.reversed, move.start_s);
    const std::string where = place_of(weldment, model, move);
    const bool is_named = std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) {
      return finding.rule == "cycle.interpass.above" && finding.where == where;
    });
    if (start_C <= limit_C + rounding_K || is_named) continue;
    findings.push_back({"cycle.interpass.above", Severity::warn, where, start_C, limit_C, "C",
                        Sentence("cycle.interpass.above"_key,
                                 {{"start", UnitValue{start_C, "C", 3}}, {"limit", UnitValue{limit_C, "C"}}}),
                        "plan limit"});
  }
}

}  // namespace

double makespan_on_plates_s(const CellModel& model, Balance balance, HeatHistory& heat, Sequence& sequence,
                            std::vector<BareMove>& moves) {
  Scheduler scheduler(model, balance);
  scheduler.follow(heat);
  double makespan_s = scheduler.makespan_s(sequence, moves);
  if (model.robot_count() < 2 || !heat.has_limits() || makespan_s == Scheduler::impossible) return makespan_s;
  for (int round = 0; round < most_rounds; ++round) {
    Sequence sorted = by_first_arc(model, sequence, moves);
    if (are_equal(sorted, sequence)) break;
    std::vector<BareMove> tried;
    const double tried_s = scheduler.makespan_s(sorted, tried);
    if (tried_s == Scheduler::impossible) return scheduler.makespan_s(sequence, moves);
    sequence = std::move(sorted);
    moves = std::move(tried);
    makespan_s = tried_s;
  }
  return makespan_s;
}

CellModel without_covered_waits(const CellModel& model, const HeatHistory& heat) {
  CellModel bare = model;
  for (std::size_t i = 0; i < bare.seams.size(); ++i) {
    const CellSeam& seam = bare.seams[i];
    if (!heat.covers(static_cast<int>(i))) continue;
    for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
      bare.passes[static_cast<std::size_t>(pass)].interpass_wait_s = 0;
  }
  return bare;
}

void judge_heat(const Weldment& weldment, const CellModel& model, const HeatHistory& heat,
                const std::vector<BareMove>& moves, Findings& findings) {
  if (!heat.has_limits()) return;
  findings.push_back({"cycle.bound.heat",
                      Severity::note,
                      weldment.id,
                      {},
                      {},
                      "",
                      Sentence("cycle.bound.heat"_key),
                      "common practice, no source"});
  judge_long_cooling(weldment, model, heat, moves, findings);
  judge_hot_starts(weldment, model, heat, moves, findings);
}

}  // namespace seamtakt
