#include "timeline_check.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>

namespace seamtakt::test {

namespace {

constexpr double slack_mm = 1e-5;

double apart_mm(const Point_mm& a, const Point_mm& b) {
  return std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

/// Time of a trapezoid of speed, by its area: accelerate until half the distance or the full speed is
/// reached.
double air_time_s(const Robot& robot, double distance_mm) {
  const double ramp_s = std::min(robot.air_speed_mm_s / robot.air_acceleration_mm_s2,
                                 std::sqrt(distance_mm / robot.air_acceleration_mm_s2));
  const double peak_mm_s = ramp_s * robot.air_acceleration_mm_s2;
  const double cruise_mm = distance_mm - peak_mm_s * ramp_s;
  return 2 * ramp_s + (cruise_mm > 0 && peak_mm_s > 0 ? cruise_mm / peak_mm_s : 0) + robot.wrist_s;
}

/// The same of a leg of an air move: straight up or down the wrist doesn't turn.
double leg_time_s(const Robot& robot, const Point_mm& from, const Point_mm& to) {
  const bool lifts =
      (robot.approach_mm || robot.clearance_mm) && from[2] != to[2] && from[0] == to[0] && from[1] == to[1];
  return air_time_s(robot, apart_mm(from, to)) - (lifts ? robot.wrist_s : 0);
}

/// A stay of a robot at a seam: from the beginning of the way in to the end of its last pass there.
struct Visit {
  std::string robot, seam;
  double start_s, end_s;
};

struct TurnBar {
  double start_s, end_s;
  std::string orientation;
};

class Checker {
 public:
  Checker(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation, const CycleResult& cycle,
          const std::vector<std::string>& left_out)
      : plan_(plan),
        weldment_(weldment),
        evaluation_(evaluation),
        cycle_(cycle),
        left_out_(left_out.begin(), left_out.end()) {}

  std::vector<std::string> check() {
    for (const Robot& robot : plan_.cell->robots) {
      std::vector<Move> moves;
      for (const Move& move : cycle_.moves)
        if (move.robot == robot.id) moves.push_back(move);
      check_one_thing_at_once(robot, moves);
      check_places(robot, moves);
      check_runs(robot, moves);
      check_service(moves);
      check_loaded(robot, moves);
      collect_visits(moves);
    }
    for (const Seam& seam : weldment_.seams) check_seam(seam);
    check_after();
    check_zones();
    check_turns();
    for (const auto& check : {check_sums, check_shared})
      for (std::string& sentence : check(plan_, weldment_, cycle_)) broken_.push_back(std::move(sentence));
    return std::move(broken_);
  }

 private:
  template <class... Parts>
  void say(const Parts&... parts) {
    std::ostringstream text;
    (text << ... << parts);
    broken_.push_back(text.str());
  }

  bool expected(const Seam& seam) const { return seam.by == "robot" && !left_out_.contains(seam.id); }

  const Schedule& schedule(const Move& move) const {
    const Seam* seam = find_by_id(weldment_.seams, move.seam);
    return *find_by_id(plan_.schedules, seam->schedules.at(static_cast<std::size_t>(move.pass) - 1));
  }

  void check_one_thing_at_once(const Robot& robot, const std::vector<Move>& moves) {
    double at_s = 0;
    for (const Move& move : moves) {
      if (!std::isfinite(move.start_s) || !std::isfinite(move.end_s) || move.end_s < move.start_s)
        say(robot.id, ": a move from ", move.start_s, " to ", move.end_s);
      if (std::abs(move.start_s - at_s) > slack_s)
        say(robot.id, ": ", to_string(move.kind), " begins at ", move.start_s, ", the move before ended at ",
            at_s);
      at_s = move.end_s;
    }
  }

  /// The torch is where the moves take it, no faster than it can, and home at both ends.
  void check_places(const Robot& robot, const std::vector<Move>& moves) {
    Point_mm at = robot.home_mm;
    for (const Move& move : moves) {
      if (move.points.empty()) return say(robot.id, ": a move without a place");
      if (apart_mm(at, move.points.front()) > slack_mm)
        say(robot.id, ": ", to_string(move.kind), " at ", move.start_s, " s begins elsewhere");
      const bool goes = move.kind == MoveKind::air || move.kind == MoveKind::arc;
      if (!goes && move.points.size() != 1) say(robot.id, ": ", to_string(move.kind), " moves the torch");
      if (move.kind == MoveKind::air) {
        const double needed_s = leg_time_s(robot, move.points.front(), move.points.back());
        const double took_s = move.end_s - move.start_s;
        if (robot.track ? took_s < needed_s - slack_s : std::abs(took_s - needed_s) > slack_s)
          say(robot.id, ": air move at ", move.start_s, " s takes ", move.end_s - move.start_s, ", needs ",
              needed_s);
      }
      at = move.points.back();
    }
    if (apart_mm(at, robot.home_mm) > slack_mm) say(robot.id, " doesn't end at home");
  }

  /// Each arc between its start and its end, of the right lengths.
  void check_runs(const Robot& robot, const std::vector<Move>& moves) {
    for (std::size_t i = 0; i < moves.size(); ++i) {
      if (moves[i].kind != MoveKind::arc) continue;
      const Schedule& schedule = this->schedule(moves[i]);
      const double start_s = schedule.arc_start_s.value_or(robot.arc_start_s);
      const double end_s = schedule.crater_fill_s.value_or(robot.crater_fill_s) + robot.post_flow_s;
      const auto beside = [&](std::size_t at, MoveKind kind, double duration_s) {
        if (duration_s <= 0) return true;  // a move of no duration isn't listed
        return at < moves.size() && moves[at].kind == kind && moves[at].seam == moves[i].seam &&
               moves[at].pass == moves[i].pass &&
               std::abs(moves[at].end_s - moves[at].start_s - duration_s) < slack_s;
      };
      if (!beside(i - 1, MoveKind::start, start_s)) say(moves[i].seam, ": an arc without its start");
      if (!beside(i + 1, MoveKind::end, end_s)) say(moves[i].seam, ": an arc without its end");
    }
  }

  void check_service(const std::vector<Move>& moves) {
    const auto& service = plan_.cell->torch_service;
    const double every_s = service && service->every_arc_s > 0 ? service->every_arc_s : INFINITY;
    double since_s = 0, before_service_s = -1;
    for (const Move& move : moves) {
      const double duration_s = move.end_s - move.start_s;
      if (move.kind == MoveKind::service) {
        if (!service || std::abs(duration_s - service->time_s) > slack_s)
          say("a torch service of ", duration_s, " s");
        before_service_s = since_s;
        since_s = 0;
      }
      if (move.kind != MoveKind::arc) continue;
      if (since_s > 0 && since_s + duration_s > every_s + slack_s)
        say(move.robot, ": ", since_s + duration_s, " s of arc without a torch service");
      if (before_service_s >= 0 && before_service_s + duration_s <= every_s)
        say(move.robot, ": a torch service too early, after ", before_service_s, " s of arc");
      before_service_s = -1;
      since_s += duration_s;
    }
  }

  void check_loaded(const Robot& robot, const std::vector<Move>& moves) {
    std::array<std::string, 3> loaded;
    if (robot.loaded) loaded = {robot.loaded->wire, robot.loaded->gas, robot.loaded->power_source};
    for (const Move& move : moves) {
      if (move.kind != MoveKind::arc && move.kind != MoveKind::wire_change) continue;
      const Schedule& schedule = this->schedule(move);
      const std::array<std::string, 3> need{schedule.wire, schedule.gas, schedule.power_source};
      bool fits = true;
      for (std::size_t i = 0; i < 3; ++i)
        fits = fits && (loaded[i].empty() || need[i].empty() || loaded[i] == need[i]);
      if (move.kind == MoveKind::arc && !fits)
        say(move.robot, " welds ", move.seam, " with the wrong wire or gas");
      if (move.kind != MoveKind::wire_change) continue;
      if (fits) say(move.robot, ": a wire change for nothing before ", move.seam);
      if (!robot.wire_change_s || std::abs(move.end_s - move.start_s - *robot.wire_change_s) > slack_s)
        say(move.robot, ": a wire change of ", move.end_s - move.start_s, " s");
      for (std::size_t i = 0; i < 3; ++i)
        if (!need[i].empty()) loaded[i] = need[i];
    }
  }

  /// Torch services, wire changes and waits that name no seam are spent outside the weldment.
  void collect_visits(const std::vector<Move>& moves) {
    std::optional<Visit> open;
    const auto close = [&] {
      if (open) visits_.push_back(*open);
      open.reset();
    };
    for (std::size_t i = 0; i < moves.size(); ++i) {
      const Move& move = moves[i];
      if (open && open->seam != move.seam) close();
      const bool there = move.kind != MoveKind::service && move.kind != MoveKind::wire_change &&
                         move.kind != MoveKind::orientation && move.kind != MoveKind::tip_change &&
                         move.kind != MoveKind::spool_change && !move.seam.empty();
      if (!there) close();
      if (!there) continue;
      if (!open) open = Visit{move.robot, move.seam, move.start_s, move.end_s};
      open->end_s = move.end_s;
    }
    close();
  }

  void check_seam(const Seam& seam) {
    std::map<int, std::vector<Move>> passes;
    std::set<std::string> robots;
    double sensed_s = 0;
    for (const Move& move : cycle_.moves) {
      if (move.seam != seam.id) continue;
      if (move.kind == MoveKind::sense) sensed_s += move.end_s - move.start_s;
      if (move.kind == MoveKind::arc) passes[move.pass].push_back(move);
      if (move.kind == MoveKind::arc) robots.insert(move.robot);
    }
    if (!expected(seam)) {
      if (!passes.empty()) say(seam.id, " is welded and shouldn't be");
      return;
    }
    if (robots.size() != 1) return say(seam.id, " is welded by ", robots.size(), " robots");
    const Robot& robot = *find_by_id(plan_.cell->robots, *robots.begin());
    if (!seam.robots.empty() && std::count(seam.robots.begin(), seam.robots.end(), robot.id) == 0)
      say(robot.id, " doesn't reach ", seam.id);
    const bool tracked = !seam.tracking.empty() && seam.tracking != "none";
    const double tracking_s = tracked ? robot.tracking_s * static_cast<double>(seam.schedules.size()) : 0;
    if (std::abs(sensed_s - seam.sense_points * robot.sense_point_s - tracking_s) > slack_s)
      say(seam.id, " is sensed for ", sensed_s, " s");
    if (passes.size() != seam.schedules.size()) say(seam.id, " has ", passes.size(), " passes");
    for (auto& [number, arcs] : passes) check_pass(seam, number, arcs);
    check_pass_times(seam, passes);
  }

  /// The arcs of a pass are end to end on the drawn path, in one direction, with the gaps of an intermittent
  /// seam.
  void check_pass(const Seam& seam, int number, std::vector<Move>& arcs) {
    std::sort(arcs.begin(), arcs.end(), [](const Move& a, const Move& b) { return a.start_s < b.start_s; });
    double arc_s = 0, length_mm = 0;
    for (const Move& arc : arcs) {
      arc_s += arc.end_s - arc.start_s;
      for (std::size_t i = 1; i < arc.points.size(); ++i)
        length_mm += apart_mm(arc.points[i - 1], arc.points[i]);
      if (arc.reversed != arcs.front().reversed) say(seam.id, ": a pass in two directions");
    }
    const bool reversed = arcs.front().reversed;
    const bool fixed = seam.direction == "as-drawn" || seam.position == "PF" || seam.position == "PG";
    if (reversed && fixed) say(seam.id, " is welded against its direction");
    const Point_mm& drawn_start = reversed ? arcs.back().points.back() : arcs.front().points.front();
    if (apart_mm(drawn_start, seam.path_mm.front()) > slack_mm)
      say(seam.id, " doesn't begin where it is drawn");
    if (seam.intermittent)
      for (std::size_t i = 1; i < arcs.size(); ++i) {
        const double gap_mm = apart_mm(arcs[i - 1].points.back(), arcs[i].points.front());
        if (seam.path_mm.size() == 2 && std::abs(gap_mm - seam.intermittent->gap_mm) > slack_mm)
          say(seam.id, ": a gap of ", gap_mm, " mm between two runs");
      }
    else if (arcs.size() != 1)
      say(seam.id, " has ", arcs.size(), " runs");
    for (const PassEvaluation& pass : evaluation_.passes) {
      if (pass.weldment != weldment_.id || pass.seam != seam.id || pass.pass != number) continue;
      if (std::abs(arc_s - pass.arc_time_s) > slack_s) say(seam.id, " pass ", number, ": arc time ", arc_s);
      if (std::abs(length_mm - pass.length_mm) > 1e-3) say(seam.id, " pass ", number, ": length ", length_mm);
    }
  }

  void check_pass_times(const Seam& seam, const std::map<int, std::vector<Move>>& passes) {
    std::vector<double> waits_s(seam.schedules.size(), 0);
    for (const SeamEvaluation& evaluated : evaluation_.seams)
      if (evaluated.weldment == weldment_.id && evaluated.seam == seam.id)
        std::copy(evaluated.interpass_waits_s.begin(), evaluated.interpass_waits_s.end(), waits_s.begin());
    double sense_end_s = 0;
    std::map<int, std::pair<double, double>>
        spans;  // start of the first run's start, end of the last run's end
    for (const Move& move : cycle_.moves) {
      if (move.seam != seam.id) continue;
      if (move.kind == MoveKind::sense && move.pass == 1) sense_end_s = std::max(sense_end_s, move.end_s);
      if (move.kind != MoveKind::start && move.kind != MoveKind::arc && move.kind != MoveKind::end) continue;
      auto [span, fresh] = spans.try_emplace(move.pass, move.start_s, move.end_s);
      span->second.first = std::min(span->second.first, move.start_s);
      span->second.second = std::max(span->second.second, move.end_s);
    }
    for (const auto& [number, span] : spans) {
      if (span.first < sense_end_s - slack_s) say(seam.id, " is welded before it is sensed");
      if (number == 1 || !spans.contains(number - 1)) continue;
      const double cold_s = spans[number - 1].second + waits_s[static_cast<std::size_t>(number) - 2];
      if (span.first < cold_s - slack_s)
        say(seam.id, " pass ", number, " begins ", cold_s - span.first, " s too early");
    }
    if (!passes.contains(1)) say(seam.id, " has no first pass");
  }

  double first_visit_s(const std::string& seam) const {
    double first_s = INFINITY;
    for (const Visit& visit : visits_)
      if (visit.seam == seam) first_s = std::min(first_s, visit.start_s);
    return first_s;
  }

  void check_after() {
    for (const Seam& seam : weldment_.seams) {
      if (!expected(seam)) continue;
      for (const std::string& before : seam.after)
        for (const Visit& visit : visits_)
          if (visit.seam == before && visit.end_s > first_visit_s(seam.id) + slack_s)
            say(seam.id, " is begun before ", before, " is done");
    }
  }

  void check_zones() {
    for (const Zone& zone : plan_.cell->zones) {
      std::vector<Visit> in_zone;
      for (const Visit& visit : visits_)
        if (std::count(zone.seams.begin(), zone.seams.end(), weldment_.id + "/" + visit.seam) > 0)
          in_zone.push_back(visit);
      for (const Visit& a : in_zone)
        for (const Visit& b : in_zone)
          if (a.robot < b.robot && a.start_s < b.end_s - slack_s && b.start_s < a.end_s - slack_s)
            say(a.robot, " and ", b.robot, " are in zone ", zone.id, " at once, at ", a.seam, " and ",
                b.seam);
    }
  }

  void check_turns() {
    const std::string load = plan_.cell->positioner ? plan_.cell->positioner->load_orientation : "";
    std::vector<TurnBar> turns;
    for (const Move& move : cycle_.moves)
      if (move.kind == MoveKind::orientation)
        turns.push_back(
            {move.start_s, move.end_s, move.seam.empty() ? load : asked_orientation(weldment_, move.seam)});
    std::sort(turns.begin(), turns.end(),
              [](const TurnBar& a, const TurnBar& b) { return a.start_s < b.start_s; });
    for (const TurnBar& turn : turns) check_away(turn);
    std::vector<Visit> visits = visits_;
    std::sort(visits.begin(), visits.end(),
              [](const Visit& a, const Visit& b) { return a.start_s < b.start_s; });
    std::string orientation =
        load;  // without a load orientation unknown until the first seam that asks for one
    std::size_t next = 0;
    const auto turn = [&] {
      const double took_s = turns[next].end_s - turns[next].start_s;
      if (std::abs(took_s - turn_s(*plan_.cell, orientation, turns[next].orientation)) > slack_s)
        say("a turn of ", took_s, " s from ", orientation, " to ", turns[next].orientation);
      orientation = turns[next++].orientation;
    };
    for (const Visit& visit : visits) {
      while (next < turns.size() && turns[next].end_s <= visit.start_s + slack_s) turn();
      const std::string& wanted = find_by_id(weldment_.seams, visit.seam)->orientation;
      if (wanted.empty()) continue;
      if (orientation.empty()) orientation = wanted;
      if (orientation != wanted) say(visit.seam, " is welded in orientation ", orientation);
      if (next < turns.size() && turns[next].start_s < visit.end_s - slack_s)
        say("a turn while at ", visit.seam);
    }
    while (next < turns.size()) turn();
    if (!load.empty() && !visits.empty() && orientation != load) say("unloaded in orientation ", orientation);
  }

  /// All robots at home, and none at work, while the positioner turns.
  void check_away(const TurnBar& turn) {
    std::map<std::string, Point_mm> place;
    for (const Robot& robot : plan_.cell->robots) place[robot.id] = robot.home_mm;
    for (const Move& move : cycle_.moves) {
      if (move.robot.empty()) continue;
      const bool during = move.start_s < turn.end_s - slack_s && move.end_s > turn.start_s + slack_s;
      const bool idle = move.kind == MoveKind::wait || move.kind == MoveKind::service ||
                        move.kind == MoveKind::wire_change || move.kind == MoveKind::orientation ||
                        move.kind == MoveKind::tip_change || move.kind == MoveKind::spool_change;
      if (during && !idle) say(move.robot, ": ", to_string(move.kind), " while the positioner turns");
      if (move.end_s <= turn.start_s + slack_s && !move.points.empty())
        place[move.robot] = move.points.back();
    }
    for (const Robot& robot : plan_.cell->robots)
      if (apart_mm(place[robot.id], robot.home_mm) > slack_mm)
        say(robot.id, " isn't home while the positioner turns");
  }

  const Plan& plan_;
  const Weldment& weldment_;
  const Evaluation& evaluation_;
  const CycleResult& cycle_;
  std::set<std::string> left_out_;
  std::vector<Visit> visits_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> check_timeline(const Plan& plan, const Weldment& weldment,
                                        const Evaluation& evaluation, const CycleResult& cycle,
                                        const std::vector<std::string>& left_out) {
  return Checker(plan, weldment, evaluation, cycle, left_out).check();
}

}  // namespace seamtakt::test
