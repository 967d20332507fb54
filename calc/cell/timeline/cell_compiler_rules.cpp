#include <algorithm>

#include "cell/timeline/cell_compiler.hpp"

namespace seamtakt {

namespace {

/// Above this many points a table of all air moves costs more memory than it saves time (4.5 MB a motion).
constexpr std::size_t table_points = 750;

/// An air move that stays at its seam.
double inner_air_s(const Motion& motion, const Point_mm& from, const Point_mm& to) {
  if (motion.is_plain()) return CellModel::air_between_s(motion, from, to);
  return air_way_within_seam(motion, from, to).time_s;
}

}  // namespace

void CellCompiler::add_after(CellSeam& seam) {
  const Seam& at = source(seam);
  seam.first_after = static_cast<int>(model_.after.size());
  for (const std::string& id : at.after) {
    const std::size_t before = source_of_id_.at(id);
    if (const int compiled = model_of_source_[before]; compiled >= 0)
      model_.after.push_back(compiled);
    else if (weldment_.seams[before].by == "manual")
      note("cycle.after.manual", Severity::note, place(at),
           Sentence("cycle.after.manual"_key, {{"seam", id}}));
  }
  seam.after_count = static_cast<int>(model_.after.size()) - seam.first_after;
}

/// The file's order, but each seam after those it has to follow: depth first, so that it is linear in time.
void CellCompiler::order_by_precedence() {
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

void CellCompiler::add_cell_rules() {
  if (!plan_.cell) return;
  const Cell& cell = *plan_.cell;
  model_.orientation_count = static_cast<int>(cell.orientations.size());
  model_.orientation_change_s = cell.orientation_change_s;
  add_positioner(cell);
  if (cell.torch_service && cell.torch_service->every_arc_s > 0) {
    model_.service_every_arc_s = cell.torch_service->every_arc_s;
    model_.service_s = cell.torch_service->time_s;
  }
  add_zones(cell);
  if (cell.min_torch_distance_mm && model_.robot_count() > 1)
    model_.torch_distance_mm = *cell.min_torch_distance_mm;
}

void CellCompiler::add_zones(const Cell& cell) {
  std::map<std::string, std::vector<int>> zones_of_seam;
  for (const Zone& zone : cell.zones) {
    for (const std::string& id : zone.seams) zones_of_seam[id].push_back(model_.zone_count);
    if (zone.box_mm.size() == 2)
      for (const std::string& id : add_box(zone)) zones_of_seam[id].push_back(model_.zone_count);
    ++model_.zone_count;
  }
  for (CellSeam& seam : model_.seams) {
    seam.first_zone = static_cast<int>(model_.zones_of.size());
    const auto found = zones_of_seam.find(place(source(seam)));
    if (found == zones_of_seam.end()) continue;
    auto& zones = found->second;
    zones.erase(std::unique(zones.begin(), zones.end()), zones.end());  // a zone may name a seam twice
    model_.zones_of.insert(model_.zones_of.end(), zones.begin(), zones.end());
    seam.zone_count = static_cast<int>(zones.size());
  }
}

void CellCompiler::add_points() {
  for (const CellSeam& seam : model_.seams) {
    model_.points.push_back(model_.runs[seam.first_run].begin);
    model_.points.push_back(model_.runs[seam.first_run + seam.run_count - 1].end);
  }
  if (plan_.cell)
    for (const Robot& robot : plan_.cell->robots) model_.points.push_back(robot.home_mm);
  if (model_.service_every_arc_s > 0 && plan_.cell->torch_service->place_mm) {
    model_.service_point = model_.point_count();
    model_.points.push_back(*plan_.cell->torch_service->place_mm);
  }
}

void CellCompiler::add_air_tables() {
  const std::size_t count = model_.points.size();
  if (count > table_points) return;
  for (Motion& motion : model_.motions) {
    motion.air_s.resize(count * count);
    for (std::size_t from = 0; from < count; ++from)
      for (std::size_t to = 0; to < count; ++to)
        motion.air_s[from * count + to] =
            motion.is_plain()
                ? CellModel::air_between_s(motion, model_.points[from], model_.points[to])
                : air_way(motion, model_.place(static_cast<int>(from)), model_.place(static_cast<int>(to)))
                      .time_s;
  }
}

void CellCompiler::add_times() {
  const auto robots = model_.robots.size();
  model_.inner_air_s.resize(model_.runs.size() * robots);
  for (std::size_t i = 0; i < model_.seams.size(); ++i) {
    const CellSeam& seam = model_.seams[i];
    for (std::size_t robot = 0; robot < robots; ++robot) {
      const Motion& motion = model_.motions[model_.robots[robot].motion];
      for (int run = seam.first_run + 1; run < seam.first_run + seam.run_count; ++run)
        model_.inner_air_s[run * robots + robot] =
            inner_air_s(motion, model_.runs[run - 1].end, model_.runs[run].begin);
      const Point_mm &begin = model_.points[2 * i], &end = model_.points[2 * i + 1];
      const bool coincide = distance_mm(begin, end) < 1e-6;  // as is_closed has it
      model_.back_s.push_back(coincide ? 0 : inner_air_s(motion, begin, end));
    }
    for (int pass = 0; pass < seam.pass_count; ++pass) add_pass_times(seam, pass);
  }
}

void CellCompiler::add_pass_times(const CellSeam& seam, int pass) {
  const Schedule& schedule = *schedules_[static_cast<std::size_t>(seam.first_pass + pass)];
  const auto robots = model_.robots.size();
  for (std::size_t i = 0; i < robots; ++i) {
    const Robot& robot = plan_.cell->robots[i];
    const double start = schedule.arc_start_s.value_or(robot.arc_start_s);
    const double end = schedule.crater_fill_s.value_or(robot.crater_fill_s) + robot.post_flow_s;
    double weld = model_.passes[seam.first_pass + pass].arc_s + seam.run_count * (start + end);
    for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
      weld += model_.inner_air_s[run * robots + i];
    if (model_.passes[seam.first_pass + pass].tracked) weld += robot.tracking_s;
    model_.start_s.push_back(start);
    model_.end_s.push_back(end);
    model_.weld_s.push_back(weld);
  }
}

}  // namespace seamtakt
