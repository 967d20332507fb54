#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

#include "timeline_check.hpp"

namespace seamtakt::test {

namespace {}  // namespace

std::vector<std::string> check_sums(const Plan& plan, const Weldment& weldment, const CycleResult& cycle) {
  std::vector<std::string> broken;
  const auto say = [&](const auto&... parts) {
    std::ostringstream text;
    (text << ... << parts);
    broken.push_back(text.str());
  };
  std::map<MoveKind, double> sum_s;
  double last_s = 0;
  for (const Move& move : cycle.moves) {
    sum_s[move.kind] += move.end_s - move.start_s;
    if (!move.robot.empty()) last_s = std::max(last_s, move.end_s);
    if (move.end_s > cycle.cycle_time_s + slack_s) say("a move ends after the cycle");
  }
  const auto agree = [&](const char* name, double got, double expected) {
    if (!(std::abs(got - expected) <= slack_s)) say(name, " is ", got, ", the moves give ", expected);
  };
  agree("arc_on_s", cycle.arc_on_s, sum_s[MoveKind::arc]);
  agree("air_s", cycle.air_s, sum_s[MoveKind::air]);
  agree("sense_s", cycle.sense_s, sum_s[MoveKind::sense]);
  agree("start_end_s", cycle.start_end_s, sum_s[MoveKind::start] + sum_s[MoveKind::end]);
  agree("wait_s", cycle.wait_s, sum_s[MoveKind::wait]);
  agree("orientation_s", cycle.orientation_s, sum_s[MoveKind::orientation]);
  agree("service_s", cycle.service_s, sum_s[MoveKind::service]);
  agree("wire_change_s", cycle.wire_change_s, sum_s[MoveKind::wire_change]);
  agree("tip_change_s", cycle.tip_change_s, sum_s[MoveKind::tip_change]);
  agree("spool_change_s", cycle.spool_change_s, sum_s[MoveKind::spool_change]);
  agree("load_unload_s", cycle.load_unload_s, weldment.load_s + weldment.unload_s);
  agree("weld_s", cycle.weld_s, last_s);
  const double load_unload_s = weldment.load_s + weldment.unload_s, index_s = plan.cell->index_s;
  agree("cycle_time_s", cycle.cycle_time_s,
        plan.cell->stations == 1 ? last_s + load_unload_s : std::max(last_s, load_unload_s) + index_s);
  const double robots = static_cast<double>(plan.cell->robots.size());
  if (cycle.cycle_time_s > 0)
    agree("arc_on_ratio", cycle.arc_on_ratio, sum_s[MoveKind::arc] / (robots * cycle.cycle_time_s));
  if (!cycle.lower_bound_s || *cycle.lower_bound_s > cycle.cycle_time_s) say("the bound is above the cycle");
  return broken;
}

}  // namespace seamtakt::test
