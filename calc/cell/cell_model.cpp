#include "cell/cell_model.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string_view>

#include "base/error.hpp"
#include "cell/motion.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// Above this many points a table of all air moves costs more memory than it saves time (4.5 MB a motion).
constexpr std::size_t table_points = 750;

template <class List>
int index_of(const List& list, std::string_view id) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (list[i].id == id) return static_cast<int>(i);
  return -1;
}

std::string place(const Weldment& weldment, const Seam& seam) { return weldment.id + "/" + seam.id; }

/// Compiles one weldment. The steps below are called in their order; each fills a part of the model.
class Compiler {
 public:
  Compiler(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation)
      : plan_(plan), weldment_(weldment), evaluation_(evaluation) {}

  CompiledCell compile() {
    add_robots();
    find_evaluated_passes();
    for (std::size_t i = 0; i < weldment_.seams.size(); ++i) source_of_id_.emplace(weldment_.seams[i].id, i);
    refuse_circular_after();
    for (std::size_t i = 0; i < weldment_.seams.size(); ++i) add_seam(i);
    for (auto& seam : model_.seams) add_after(seam);
    order_by_precedence();
    add_cell_rules();
    add_points();
    add_air_tables();
    add_times();
    return std::move(cell_);
  }

 private:
  const Seam& source(const CellSeam& seam) const { return weldment_.seams[seam.source]; }
  void add_robots();
  int motion_of(const Robot& robot);
  void find_evaluated_passes();
  void refuse_circular_after() const;
  void add_seam(std::size_t index);
  bool add_robots_of(const Seam& source, CellSeam& seam, const std::vector<Package>& needs);
  void add_runs(const Seam& source, const std::vector<WeldRun>& runs);
  void add_passes(const Seam& source, const std::vector<Package>& needs);
  const Schedule& schedule_of(const Seam& seam, std::size_t pass) const;
  Package package(const std::string& wire, const std::string& gas, const std::string& power_source) const;
  void add_after(CellSeam& seam);
  void order_by_precedence();
  void add_cell_rules();
  void add_zones(const Cell& cell);
  void add_points();
  void add_air_tables();
  void add_times();
  void add_pass_times(const CellSeam& seam, int pass);
  void note(const char* rule, Severity severity, const std::string& where, const std::string& text,
            const char* basis = "plan") {
    cell_.findings.push_back({rule, severity, where, {}, {}, "", text, basis});
  }

  const Plan& plan_;
  const Weldment& weldment_;
  const Evaluation& evaluation_;
  CompiledCell cell_;
  CellModel& model_ = cell_.model;
  std::map<std::string_view, std::size_t> source_of_id_;
  std::map<std::size_t, int> model_of_source_;
  std::map<std::pair<std::string_view, int>, const PassEvaluation*> pass_of_;
  std::map<std::string_view, const SeamEvaluation*> seam_of_;
};

int Compiler::motion_of(const Robot& robot) {
  const auto usable = [&](double value, const char* key) {
    if (!(value > 0) || !std::isfinite(value))
      throw InputError("cell/robots/" + robot.id + "/" + key, std::to_string(value), "a value above 0");
  };
  usable(robot.air_speed_mm_s, "air_speed_mm_s");
  usable(robot.air_acceleration_mm_s2, "air_acceleration_mm_s2");
  for (std::size_t i = 0; i < model_.motions.size(); ++i) {
    const Motion& motion = model_.motions[i];
    if (motion.speed_mm_s == robot.air_speed_mm_s && motion.acceleration_mm_s2 == robot.air_acceleration_mm_s2 &&
        motion.wrist_s == robot.wrist_s)
      return static_cast<int>(i);
  }
  model_.motions.push_back({robot.air_speed_mm_s, robot.air_acceleration_mm_s2, robot.wrist_s, {}});
  return static_cast<int>(model_.motions.size()) - 1;
}

void Compiler::add_robots() {
  if (!plan_.cell) return;
  const auto& robots = plan_.cell->robots;
  if (robots.size() > 64) throw InputError("cell/robots", std::to_string(robots.size()) + " robots", "at most 64");
  for (const Robot& robot : robots) {
    CellRobot compiled;
    compiled.motion = motion_of(robot);
    compiled.sense_point_s = robot.sense_point_s;
    compiled.wire_change_s = robot.wire_change_s.value_or(-1);
    if (robot.loaded)
      compiled.loaded = package(robot.loaded->wire, robot.loaded->gas, robot.loaded->power_source);
    model_.robots.push_back(compiled);
  }
}

void Compiler::find_evaluated_passes() {
  for (const PassEvaluation& pass : evaluation_.passes)
    if (pass.weldment == weldment_.id) pass_of_[{pass.seam, pass.pass}] = &pass;
  for (const SeamEvaluation& seam : evaluation_.seams)
    if (seam.weldment == weldment_.id) seam_of_[seam.seam] = &seam;
}

/// Depth first over the whole weldment, manual seams included.
void Compiler::refuse_circular_after() const {
  enum class Mark { fresh, open, closed };
  std::vector<Mark> marks(weldment_.seams.size(), Mark::fresh);
  std::vector<std::pair<std::size_t, std::size_t>> path;  // seam, next of its predecessors
  for (std::size_t root = 0; root < marks.size(); ++root) {
    if (marks[root] == Mark::fresh) path.emplace_back(root, 0);
    while (!path.empty()) {
      auto& [seam, next] = path.back();
      const Seam& at = weldment_.seams[seam];
      marks[seam] = Mark::open;
      if (next == at.after.size()) {
        marks[seam] = Mark::closed;
        path.pop_back();
        continue;
      }
      const std::string& id = at.after[next++];
      const std::string where = place(weldment_, at) + "/after";
      const auto before = source_of_id_.find(id);
      if (before == source_of_id_.end()) throw InputError(where, "\"" + printable(id) + "\"", "a seam of the weldment");
      if (marks[before->second] == Mark::open)
        throw InputError(where, "a circle through " + printable(id), "an order that can be welded");
      if (marks[before->second] == Mark::fresh) path.emplace_back(before->second, 0);
    }
  }
}

const Schedule& Compiler::schedule_of(const Seam& seam, std::size_t pass) const {
  const Schedule* schedule = find_by_id(plan_.schedules, seam.schedules[pass]);
  if (!schedule)
    throw InputError(place(weldment_, seam) + "/schedules", "\"" + printable(seam.schedules[pass]) + "\"",
                     "the id of a schedule");
  return *schedule;
}

Package Compiler::package(const std::string& wire, const std::string& gas,
                          const std::string& power_source) const {
  return {index_of(plan_.wires, wire), index_of(plan_.gases, gas), index_of(plan_.power_sources, power_source)};
}

void Compiler::add_seam(std::size_t index) {
  const Seam& source = weldment_.seams[index];
  if (source.by == "manual") return;
  const auto runs = weld_runs(source);
  if (source.schedules.empty() || runs.empty()) {
    note("cycle.seam.nothing-to-weld", Severity::fail, place(weldment_, source),
         source.schedules.empty() ? "The seam has no schedule: it isn't in the timeline."
                                  : "The seam is shorter than one of its runs: it isn't in the timeline.");
    return;
  }
  std::vector<Package> needs;
  for (std::size_t pass = 0; pass < source.schedules.size(); ++pass) {
    const Schedule& schedule = schedule_of(source, pass);
    needs.push_back(package(schedule.wire, schedule.gas, schedule.power_source));
  }
  CellSeam seam;
  if (!add_robots_of(source, seam, needs)) return;
  seam.source = static_cast<int>(index);
  seam.first_run = static_cast<int>(model_.runs.size());
  seam.run_count = static_cast<int>(runs.size());
  seam.first_pass = static_cast<int>(model_.passes.size());
  seam.pass_count = static_cast<int>(needs.size());
  seam.reversible = may_reverse(source);
  seam.sense_points = std::max(0, source.sense_points);
  if (plan_.cell) seam.orientation = index_of(plan_.cell->orientations, source.orientation);
  add_runs(source, runs);
  add_passes(source, needs);
  model_of_source_[index] = static_cast<int>(model_.seams.size());
  model_.seams.push_back(seam);
}

/// False, with a finding, where no robot can weld the seam.
bool Compiler::add_robots_of(const Seam& source, CellSeam& seam, const std::vector<Package>& needs) {
  std::vector<int> listed;
  const std::vector<Robot> none;
  const auto& robots = plan_.cell ? plan_.cell->robots : none;
  if (source.robots.empty())
    for (int robot = 0; robot < model_.robot_count(); ++robot) listed.push_back(robot);
  for (const std::string& id : source.robots)
    if (const int robot = index_of(robots, id); robot >= 0) listed.push_back(robot);
  seam.first_robot = static_cast<int>(model_.robots_of.size());
  std::string refused;
  for (const int robot : listed) {
    const CellRobot& compiled = model_.robots[robot];
    const auto fit = [&](const Package& need) { return fits(compiled.loaded, need); };
    const std::uint64_t bit = std::uint64_t{1} << robot;
    if (seam.robot_mask & bit) continue;
    if (compiled.wire_change_s >= 0 || std::all_of(needs.begin(), needs.end(), fit)) {
      seam.robot_mask |= bit;
      model_.robots_of.push_back(robot);
    } else if (seam.robot_mask == 0) {
      refused += (refused.empty() ? "" : ", ") + robots[robot].id;
    }
  }
  seam.robot_count = static_cast<int>(model_.robots_of.size()) - seam.first_robot;
  if (seam.robot_count == 0) {
    note("cycle.robot.none", Severity::fail, place(weldment_, source),
         refused.empty() ? "No robot of the cell reaches the seam: it isn't in the timeline."
                         : "What is loaded on " + refused + " doesn't fit the seam's schedules and can't be changed, and "
                           "no other robot reaches it: it isn't in the timeline.");
    return false;
  }
  if (!refused.empty())
    note("cycle.robot.next", Severity::note, place(weldment_, source),
         "What is loaded on " + refused + " doesn't fit and can't be changed: " +
             robots[model_.robots_of[seam.first_robot]].id + " welds the seam.");
  return true;
}

void Compiler::add_runs(const Seam& source, const std::vector<WeldRun>& runs) {
  double total = 0;
  for (const WeldRun& run : runs) total += run.to_mm - run.from_mm;
  for (const WeldRun& run : runs) {
    CellRun compiled;
    compiled.share = total > 0 ? (run.to_mm - run.from_mm) / total : 1.0 / static_cast<double>(runs.size());
    compiled.from_mm = run.from_mm;
    compiled.to_mm = run.to_mm;
    compiled.begin = point_at(source, run.from_mm);
    compiled.end = point_at(source, run.to_mm);
    model_.runs.push_back(compiled);
  }
}

void Compiler::add_passes(const Seam& source, const std::vector<Package>& needs) {
  const auto evaluated_seam = seam_of_.find(source.id);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const auto evaluated = pass_of_.find({source.id, static_cast<int>(i) + 1});
    if (evaluated == pass_of_.end())
      throw std::invalid_argument("the evaluation lacks pass " + std::to_string(i + 1) + " of " +
                                  place(weldment_, source));
    CellPass pass;
    pass.arc_s = evaluated->second->arc_time_s;
    pass.need = needs[i];
    if (i > 0 && evaluated_seam != seam_of_.end()) {
      const auto& waits = evaluated_seam->second->interpass_waits_s;
      if (i - 1 < waits.size()) pass.interpass_wait_s = std::max(0.0, waits[i - 1]);
    }
    model_.passes.push_back(pass);
  }
}

void Compiler::add_after(CellSeam& seam) {
  const Seam& at = source(seam);
  seam.first_after = static_cast<int>(model_.after.size());
  for (const std::string& id : at.after) {
    const std::size_t before = source_of_id_.at(id);
    if (const auto compiled = model_of_source_.find(before); compiled != model_of_source_.end())
      model_.after.push_back(compiled->second);
    else if (weldment_.seams[before].by == "manual")
      note("cycle.after.manual", Severity::note, place(weldment_, at),
           "It comes after the manual seam " + id + ", which is taken as welded before the robots begin.");
  }
  seam.after_count = static_cast<int>(model_.after.size()) - seam.first_after;
}

/// The file's order, but each seam behind those it comes after: depth first, so that it is linear in time.
void Compiler::order_by_precedence() {
  std::vector<char> placed(model_.seams.size(), 0);
  std::vector<std::pair<int, int>> path;  // seam, next of its predecessors
  for (int root = 0; root < static_cast<int>(model_.seams.size()); ++root) {
    if (!placed[root]) path.emplace_back(root, 0);
    while (!path.empty()) {
      const int at = path.back().first;
      const CellSeam& seam = model_.seams[at];
      if (path.back().second < seam.after_count) {
        const int before = model_.after[seam.first_after + path.back().second++];
        if (!placed[before]) path.emplace_back(before, 0);
        continue;
      }
      if (!placed[at]) model_.precedence_order.push_back(at);
      placed[at] = 1;
      path.pop_back();
    }
  }
}

void Compiler::add_cell_rules() {
  if (!plan_.cell) return;
  const Cell& cell = *plan_.cell;
  model_.orientation_count = static_cast<int>(cell.orientations.size());
  model_.orientation_change_s = cell.orientation_change_s;
  if (cell.torch_service && cell.torch_service->every_arc_s > 0) {
    model_.service_every_arc_s = cell.torch_service->every_arc_s;
    model_.service_s = cell.torch_service->time_s;
  }
  add_zones(cell);
}

void Compiler::add_zones(const Cell& cell) {
  std::map<std::string, std::vector<int>> zones_of_seam;
  for (const Zone& zone : cell.zones) {
    for (const std::string& id : zone.seams) zones_of_seam[id].push_back(model_.zone_count);
    ++model_.zone_count;
  }
  for (CellSeam& seam : model_.seams) {
    seam.first_zone = static_cast<int>(model_.zones_of.size());
    const auto found = zones_of_seam.find(place(weldment_, source(seam)));
    if (found == zones_of_seam.end()) continue;
    auto& zones = found->second;
    zones.erase(std::unique(zones.begin(), zones.end()), zones.end());  // a zone may name a seam twice
    model_.zones_of.insert(model_.zones_of.end(), zones.begin(), zones.end());
    seam.zone_count = static_cast<int>(zones.size());
  }
}

void Compiler::add_points() {
  for (const CellSeam& seam : model_.seams) {
    model_.points.push_back(model_.runs[seam.first_run].begin);
    model_.points.push_back(model_.runs[seam.first_run + seam.run_count - 1].end);
  }
  if (plan_.cell)
    for (const Robot& robot : plan_.cell->robots) model_.points.push_back(robot.home_mm);
}

void Compiler::add_air_tables() {
  const std::size_t count = model_.points.size();
  if (count > table_points) return;
  for (Motion& motion : model_.motions) {
    motion.air_s.resize(count * count);
    for (std::size_t from = 0; from < count; ++from)
      for (std::size_t to = 0; to < count; ++to)
        motion.air_s[from * count + to] =
            CellModel::air_between_s(motion, model_.points[from], model_.points[to]);
  }
}

void Compiler::add_times() {
  const auto robots = model_.robots.size();
  model_.inner_air_s.resize(model_.runs.size() * robots);
  for (std::size_t i = 0; i < model_.seams.size(); ++i) {
    const CellSeam& seam = model_.seams[i];
    for (std::size_t robot = 0; robot < robots; ++robot) {
      const Motion& motion = model_.motions[model_.robots[robot].motion];
      for (int run = seam.first_run + 1; run < seam.first_run + seam.run_count; ++run)
        model_.inner_air_s[run * robots + robot] =
            CellModel::air_between_s(motion, model_.runs[run - 1].end, model_.runs[run].begin);
      const Point_mm &begin = model_.points[2 * i], &end = model_.points[2 * i + 1];
      const bool coincide = distance_mm(begin, end) < 1e-6;  // as is_closed has it
      model_.back_s.push_back(coincide ? 0 : CellModel::air_between_s(motion, begin, end));
    }
    for (int pass = 0; pass < seam.pass_count; ++pass) add_pass_times(seam, pass);
  }
}

void Compiler::add_pass_times(const CellSeam& seam, int pass) {
  const Schedule& schedule = schedule_of(source(seam), static_cast<std::size_t>(pass));
  const auto robots = model_.robots.size();
  for (std::size_t i = 0; i < robots; ++i) {
    const Robot& robot = plan_.cell->robots[i];
    const double start = schedule.arc_start_s.value_or(robot.arc_start_s);
    const double end = schedule.crater_fill_s.value_or(robot.crater_fill_s) + robot.post_flow_s;
    double weld = model_.passes[seam.first_pass + pass].arc_s + seam.run_count * (start + end);
    for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
      weld += model_.inner_air_s[run * robots + i];
    model_.start_s.push_back(start);
    model_.end_s.push_back(end);
    model_.weld_s.push_back(weld);
  }
}

}  // namespace

double CellModel::air_between_s(const Motion& motion, const Point_mm& from, const Point_mm& to) {
  return move_time_s(distance_mm(from, to), motion.speed_mm_s, motion.acceleration_mm_s2) + motion.wrist_s;
}

bool may_reverse(const Seam& seam) {
  return seam.direction != "as-drawn" && seam.position != "PF" && seam.position != "PG";
}

CompiledCell compile_cell(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation) {
  return Compiler(plan, weldment, evaluation).compile();
}

}  // namespace seamtakt
