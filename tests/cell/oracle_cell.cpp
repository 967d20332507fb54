#include "oracle_cell.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>
#include <sstream>

#include "cell_plan.hpp"
#include "oracle_torches.hpp"

namespace seamtakt::test {

namespace {

struct Kind {
  const char* words;
  int robots, least_seams, most_seams;
  bool zones = false, orientations = false, passes = false, wires = false, service = false, balance = false;
};

constexpr Kind kinds[] = {
    {"1 robot", 1, 7, 9},
    {"1 robot, passes with cooling", 1, 5, 6, false, false, true},
    {"1 robot, orientations", 1, 5, 7, false, true},
    {"1 robot, balance", 1, 6, 8, false, false, false, false, false, true},
    {"1 robot, wires and service", 1, 6, 8, false, false, false, true, true},
    {"2 robots, zones", 2, 5, 7, true},
    {"2 robots, passes with cooling", 2, 5, 5, false, false, true},
    {"2 robots, orientations", 2, 5, 6, false, true},
    {"2 robots, balance and zones", 2, 5, 6, true, false, false, false, false, true},
    {"2 robots, wires and service", 2, 5, 6, false, false, false, true, true},
};

const Kind& kind_of(int number) {
  return kinds[static_cast<std::size_t>(number) % std::size(kinds)];
}

bool travels(int number) {
  return number >= plain_oracle_cells;
}

class OraclePlan {
 public:
  explicit OraclePlan(int number)
      : kind_(kind_of(number)), travels_(travels(number)), random_(static_cast<unsigned>(9000 + number)) {}

  Plan plan() {
    Plan plan = plain_plan();
    plan.wires.resize(2);
    plan.wires[0].id = "W1";
    plan.wires[1].id = "W2";
    plan.schedules = {schedule_named("A", kind_.wires ? "W1" : ""), schedule_named("B", "W2"),
                      schedule_named("C")};
    Cell& cell = *plan.cell;
    cell.robots.clear();
    for (int i = 0; i < kind_.robots; ++i) cell.robots.push_back(robot(i));
    if (kind_.orientations) {
      cell.orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
      cell.orientation_change_s = integer(1, 12);
    }
    if (kind_.service)
      cell.torch_service = TorchService{double(integer(20, 60)), double(integer(3, 9)), {}, {}};
    const int seams = integer(kind_.least_seams, kind_.most_seams);
    for (int i = 0; i < seams; ++i) plan.weldments[0].seams.push_back(seam(i));
    if (kind_.passes)
      for (const int i : {0, 2}) plan.weldments[0].seams[i].schedules.assign(2, "A");
    if (kind_.zones) {
      cell.zones.push_back({"Z", {}, {}, {}});
      for (int i = 0; i < seams; ++i)
        if (chance(0.5)) cell.zones.back().seams.push_back("W/S" + std::to_string(i));
    }
    if (travels_) add_travel(plan);
    return plan;
  }

  Evaluation evaluation(const Plan& plan) {
    Evaluation evaluation = evaluation_of(plan);
    for (SeamEvaluation& seam : evaluation.seams)
      for (double& wait_s : seam.interpass_waits_s) wait_s = integer(5, 40);
    return evaluation;
  }

 private:
  int integer(int from, int to) {
    return from + static_cast<int>(random_() % static_cast<unsigned>(to - from + 1));
  }
  bool chance(double probability) { return (random_() >> 8) * 0x1p-24 < probability; }
  Point_mm point() { return {integer(0, 100) * 20.0, integer(0, 50) * 20.0, integer(0, 20) * 20.0}; }

  /// A load orientation, axes, tracks, ways over a clearance; torches apart where there are two. Seams are in
  /// rows then (oracle_torches.hpp). The solver's model has no turns together with wires or service.
  void add_travel(Plan& plan) {
    Cell& cell = *plan.cell;
    if (!kind_.wires && !kind_.service) add_load_pose(cell, plan.weldments[0].seams);
    for (Robot& robot : cell.robots) {
      robot.base_mm = Point_mm{robot.home_mm[0], -800, 0};
      robot.track = Track{"x", -1500, 1500, double(integer(1, 6) * 100), double(integer(2, 8) * 100), {}};
      if (chance(0.5)) robot.approach_mm = integer(1, 6) * 10;
      if (chance(0.5)) robot.clearance_mm = integer(2, 8) * 100;
    }
    if (kind_.robots < 2) return;
    cell.min_torch_distance_mm = oracle_torch_distance_mm;
    for (Seam& seam : plan.weldments[0].seams) put_in_a_row(seam);
  }
  void add_load_pose(Cell& cell, std::vector<Seam>& seams) {
    const auto lying = [](const char* id, std::vector<double> axes_deg) {
      Orientation orientation;
      orientation.id = id;
      orientation.axes_deg = std::move(axes_deg);
      return orientation;
    };
    cell.orientations = {lying("up", {0, 0}), lying("down", {180, 0}), lying("left", {90, 45})};
    cell.positioner = Positioner{};
    cell.positioner->load_orientation = "up";
    cell.positioner->axis_deg_s = {30, 10};
    cell.positioner->settle_s = 1;
    cell.positioner->turns = {{"down", "left", 9, {}}};
    for (Seam& seam : seams)
      seam.orientation = chance(0.4) ? "" : chance(0.4) ? "up" : chance(0.6) ? "down" : "left";
  }
  /// Near enough to each other to be in the way.
  void put_in_a_row(Seam& seam) {
    const double x = integer(0, 30) * 20.0, y = integer(0, 3) * oracle_row_mm, length = integer(3, 40) * 10;
    const bool back = chance(0.5);
    seam.path_mm = {{back ? x + length : x, y, 0}, {back ? x : x + length, y, 0}};
  }

  Robot robot(int number) {
    Robot robot = robot_at("R" + std::to_string(number), point());
    robot.loaded = Loaded{chance(0.5) ? "W1" : "W2", "", "", {}};
    robot.wire_change_s = kind_.wires ? std::optional<double>(integer(5, 30)) : std::nullopt;
    robot.air_speed_mm_s = integer(3, 12) * 50;
    return robot;
  }

  /// Along an axis, so that its length and arc time are round.
  Seam seam(int number) {
    const Point_mm begin = point();
    Point_mm end = begin;
    end[static_cast<std::size_t>(integer(0, 2))] += integer(3, 40) * 10;
    Seam seam = seam_along("S" + std::to_string(number), {begin, end});
    seam.schedules[0] = kind_.wires ? std::string(1, "ABC"[integer(0, 2)]) : "A";
    if (chance(0.2)) seam.direction = "as-drawn";
    if (kind_.orientations && chance(0.8)) seam.orientation = chance(0.5) ? "up" : "down";
    if (kind_.balance && chance(0.8)) seam.balance = "G";
    if (chance(0.3)) seam.sense_points = integer(1, 2);
    for (int before = 0; before < number; ++before)
      if (chance(0.12)) seam.after.push_back("S" + std::to_string(before));
    if (kind_.robots > 1 && chance(0.4)) seam.robots = {chance(0.5) ? "R0" : "R1"};
    return seam;
  }

  const Kind& kind_;
  bool travels_;
  std::mt19937 random_;  // its raw numbers alone: the library's distributions differ between machines
};

double tenths_up(double time_s) {
  return std::ceil(time_s * 10 - 1e-6) / 10;
}

/// The model's times as whole tenths.
void round_times(CellModel& model) {
  for (Motion& motion : model.motions)
    for (double& time_s : motion.air_s) time_s = tenths_up(time_s);
  for (double& time_s : model.back_s) time_s = tenths_up(time_s);
  for (double& time_s : model.turn_s) time_s = tenths_up(time_s);
}

long tenths(double time_s) {
  return std::lround(time_s * 10);
}

template <class List, class Text>
std::string listed(const List& list, Text text) {
  std::string joined;
  for (const auto& item : list) joined += (joined.empty() ? "" : ", ") + text(item);
  return "[" + joined + "]";
}

class DataWriter {
 public:
  explicit DataWriter(const CellModel& model) : model_(model) {
    for (int seam = 0; seam < static_cast<int>(model.seams.size()); ++seam)
      for (int pass = 0; pass < model.seams[seam].pass_count; ++pass) passes_.push_back({seam, pass});
  }

  std::string data(double limit_s) {
    const long robots = model_.robot_count(), points = model_.point_count();
    scalar("passes", static_cast<long>(passes_.size()));
    scalar("robots", robots);
    scalar("points", points);
    scalar("kinds", 2);
    each("seam", [&](Pass p) { return std::to_string(p.seam + 1); });
    each("number", [&](Pass p) { return std::to_string(p.number + 1); });
    each("previous", [&](Pass p) { return std::to_string(p.number == 0 ? 0 : index(p)); });
    each("reach", [&](Pass p) { return reach(p.seam); });
    each("reversible", [&](Pass p) { return std::string(of(p).reversible ? "true" : "false"); });
    each("orientation", [&](Pass p) { return std::to_string(of(p).orientation + 1); });
    each("wait", [&](Pass p) { return std::to_string(tenths(pass_of(p).interpass_wait_s)); });
    each("arc", [&](Pass p) { return std::to_string(tenths(pass_of(p).arc_s)); });
    each("need", [&](Pass p) { return std::to_string(pass_of(p).need.wire + 1); });
    each("group", [&](Pass p) { return std::to_string(p.number == 0 ? of(p).group + 1 : 0); });
    each("side", [&](Pass p) { return std::to_string(of(p).side); });
    matrix("weld", [&](Pass p, int r) { return model_.weld_s[at(of(p).first_pass + p.number, r)]; });
    matrix("sense", [&](Pass p, int r) { return of(p).sense_points * model_.robots[r].sense_point_s; });
    matrix("back", [&](Pass p, int r) { return model_.back_s[at(p.seam, r)]; });
    ends("entry", [&](Pass p, bool reversed) { return model_.entry_point(p.seam, reversed); });
    ends("leaving", [&](Pass p, bool reversed) { return model_.exit_point(p.seam, reversed); });
    by_robot("home", [&](int r) { return model_.home_point(r) + 1L; });
    by_robot("loaded", [&](int r) { return model_.robots[r].loaded.wire + 1L; });
    by_robot("change", [&](int r) { return std::max(0L, tenths(model_.robots[r].wire_change_s)); });
    air(points);
    turns();
    scalar("service", tenths(model_.service_s));
    scalar("every", tenths(model_.service_every_arc_s));
    pairs();
    torches();
    scalar("limit", tenths(limit_s));
    return text_.str();
  }

 private:
  struct Pass {
    int seam, number;
  };
  const CellSeam& of(Pass p) const { return model_.seams[p.seam]; }
  const CellPass& pass_of(Pass p) const { return model_.passes[of(p).first_pass + p.number]; }
  std::size_t at(int i, int robot) const {
    return static_cast<std::size_t>(i) * model_.robots.size() + static_cast<std::size_t>(robot);
  }
  /// Passes count from 1 in the solver: this is the number of the pass before.
  int index(Pass p) const { return model_.seams[p.seam].first_pass + p.number; }
  int first(int seam) const { return model_.seams[seam].first_pass + 1; }
  int last(int seam) const { return model_.seams[seam].first_pass + model_.seams[seam].pass_count; }

  void scalar(const char* name, long value) { text_ << name << " = " << value << ";\n"; }
  template <class Text>
  void each(const char* name, Text text) {
    text_ << name << " = " << listed(passes_, text) << ";\n";
  }
  std::string reach(int seam) const {
    std::string set;
    for (int robot = 0; robot < model_.robot_count(); ++robot)
      if (model_.seams[seam].robot_mask >> robot & 1)
        set += (set.empty() ? "" : ", ") + std::to_string(robot + 1);
    return "{" + set + "}";
  }
  template <class Time>
  void matrix(const char* name, Time time) {
    text_ << name << " = [|";
    for (const Pass p : passes_) {
      for (int robot = 0; robot < model_.robot_count(); ++robot)
        text_ << (robot ? ", " : " ") << tenths(time(p, robot));
      text_ << " |";
    }
    text_ << "];\n";
  }
  template <class Point>
  void ends(const char* name, Point point) {
    text_ << name << " = array2d(1.." << passes_.size() << ", 0..1, [";
    for (const Pass p : passes_) text_ << point(p, false) + 1 << ", " << point(p, true) + 1 << ", ";
    text_ << "]);\n";
  }
  template <class Value>
  void by_robot(const char* name, Value value) {
    text_ << name << " = [";
    for (int robot = 0; robot < model_.robot_count(); ++robot) text_ << (robot ? ", " : "") << value(robot);
    text_ << "];\n";
  }
  void air(long points) {
    text_ << "air = array3d(1.." << model_.robot_count() << ", 1.." << points << ", 1.." << points << ", [";
    for (int robot = 0; robot < model_.robot_count(); ++robot)
      for (int a = 0; a < points; ++a)
        for (int b = 0; b < points; ++b) text_ << tenths(model_.air_s(robot, a, b)) << ", ";
    text_ << "]);\n";
  }
  void list_of_pairs(const char* count, const char* name, const std::vector<std::pair<int, int>>& pairs) {
    scalar(count, static_cast<long>(pairs.size()));
    text_ << name << " = array2d(1.." << pairs.size() << ", 1..2, [";
    for (const auto& [a, b] : pairs) text_ << a << ", " << b << ", ";
    text_ << "]);\n";
  }
  void pairs() {
    std::vector<std::pair<int, int>> after, zone, awaited;
    const int seams = static_cast<int>(model_.seams.size());
    int turns = 0;
    for (int i = 0; i < seams; ++i) {
      const CellSeam& seam = model_.seams[i];
      for (int k = 0; k < seam.after_count; ++k)
        after.emplace_back(first(i), last(model_.after[seam.first_after + k]));
      for (int k = 0; k < seam.awaited_count; ++k)
        awaited.emplace_back(first(i), first(model_.awaited[seam.first_awaited + k]));
      for (int k = 0; k < i; ++k)
        if (seam.zone_count > 0 && model_.seams[k].zone_count > 0) zone.emplace_back(first(i), first(k));
      if (seam.orientation >= 0) ++turns;
    }
    list_of_pairs("orders", "after", after);
    list_of_pairs("conflicts", "zone", zone);
    list_of_pairs("awaits", "awaited", awaited);
    scalar("groups", static_cast<long>(model_.groups.size()));
    // Each oriented seam may be in a phase of its own, after one in which the weldment is loaded.
    scalar("phases", std::max(1, turns + (model_.load_orientation >= 0 ? 1 : 0)));
  }
  void turns() {
    const int poses = std::max(1, model_.orientation_count);
    scalar("poses", poses);
    scalar("load", model_.load_orientation + 1L);
    text_ << "turn = array2d(1.." << poses << ", 1.." << poses << ", [";
    for (int a = 0; a < poses; ++a)
      for (int b = 0; b < poses; ++b)
        text_ << (a == b || model_.orientation_count == 0 ? 0 : tenths(model_.turn_time_s(a, b))) << ", ";
    text_ << "]);\n";
  }
  void torches() {
    matrix("start", [&](Pass p, int r) { return model_.start_s[at(of(p).first_pass + p.number, r)]; });
    std::vector<std::pair<int, int>> near;
    std::vector<TooNear> delays;
    for (std::size_t a = 0; a < passes_.size() && model_.torch_distance_mm > 0; ++a)
      for (std::size_t b = 0; b < a; ++b) {
        if (passes_[a].seam == passes_[b].seam) continue;
        std::vector<TooNear> of_ways;
        for (const int ways : {0, 1, 2, 3})
          of_ways.push_back(too_near(line(passes_[a], ways / 2 == 1), line(passes_[b], ways % 2 == 1)));
        if (std::all_of(of_ways.begin(), of_ways.end(), [](const TooNear& way) { return way.never; }))
          continue;
        near.emplace_back(static_cast<int>(a) + 1, static_cast<int>(b) + 1);
        delays.insert(delays.end(), of_ways.begin(), of_ways.end());
      }
    list_of_pairs("nears", "near", near);
    const auto table = [&](const char* name, long TooNear::*delay) {
      text_ << name << " = array2d(1.." << near.size() << ", 0..3, "
            << listed(delays, [&](const TooNear& way) { return std::to_string(way.*delay); }) << ");\n";
    };
    table("late_by", &TooNear::late_by);
    table("early_by", &TooNear::early_by);
  }
  OracleLine line(Pass p, bool reversed) const {
    const Point_mm &from = model_.points[model_.entry_point(p.seam, reversed)],
                   &to = model_.points[model_.exit_point(p.seam, reversed)];
    return {std::lround(from[0]), std::lround(to[0]), std::lround(from[1])};
  }

  const CellModel& model_;
  std::vector<Pass> passes_;
  std::ostringstream text_;
};

}  // namespace

CellModel oracle_cell(int number) {
  OraclePlan draw(number);
  const Plan plan = draw.plan();
  CellModel model = compile_cell(plan, plan.weldments[0], draw.evaluation(plan)).model;
  round_times(model);
  return model;
}

std::string oracle_kind(int number) {
  return std::string(kind_of(number).words) + (travels(number) ? ", travel" : "");
}

std::string minizinc_data(const CellModel& model, double limit_s) {
  return DataWriter(model).data(limit_s);
}

}  // namespace seamtakt::test
