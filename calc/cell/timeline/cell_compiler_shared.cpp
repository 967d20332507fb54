// CellCompiler: what robots share beside zones: the positioner, boxes, distance, seams begun together.
#include <algorithm>
#include <bit>
#include <limits>

#include "cell/timeline/cell_compiler.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline/pairs.hpp"
#include "cell/travel/box_crossing.hpp"
#include "cell/travel/turn_times.hpp"

namespace seamtakt {

namespace {

bool has_turn(const Positioner& positioner, const std::string& a, const std::string& b) {
  return std::any_of(positioner.turns.begin(), positioner.turns.end(), [&](const Turn& turn) {
    return (turn.from == a && turn.to == b) || (turn.from == b && turn.to == a);
  });
}

}  // namespace

void CellCompiler::add_positioner(const Cell& cell) {
  if (!cell.positioner) return;
  model_.turn_s = turn_times_s(cell);
  model_.load_orientation = index_of(cell.orientations, cell.positioner->load_orientation);
  judge_axes(cell);
}

/// A turn whose axes aren't known takes orientation_change_s.
void CellCompiler::judge_axes(const Cell& cell) {
  const Positioner& positioner = *cell.positioner;
  if (positioner.axis_deg_s.empty()) return;
  std::vector<char> used(cell.orientations.size(), 0);
  for (const CellSeam& seam : model_.seams)
    if (seam.orientation >= 0) used[static_cast<std::size_t>(seam.orientation)] = 1;
  if (model_.load_orientation >= 0) used[static_cast<std::size_t>(model_.load_orientation)] = 1;
  const auto lacks_axes = [&](std::size_t i) {
    return cell.orientations[i].axes_deg.size() != positioner.axis_deg_s.size();
  };
  for (std::size_t a = 0; a < used.size(); ++a)
    for (std::size_t b = 0; b < used.size(); ++b) {
      if (a == b || !used[a] || !used[b] || !lacks_axes(a)) continue;
      const std::string &lacking = cell.orientations[a].id, &other = cell.orientations[b].id;
      if (has_turn(positioner, lacking, other)) continue;
      cell_.findings.push_back(
          {"cycle.positioner.axes", Severity::warn, weldment_.id,
           static_cast<double>(cell.orientations[a].axes_deg.size()),
           static_cast<double>(positioner.axis_deg_s.size()), "",
           Sentence("cycle.positioner.axes"_key, {{"orientation", lacking},
                                                  {"other", other},
                                                  {"axes", positioner.axis_deg_s.size()},
                                                  {"time", UnitValue{cell.orientation_change_s, "s"}}}),
           "plan"});
      break;
    }
}

namespace {

bool leads_through_box(const AirWay& way, const CellBox& box) {
  for (int i = 0; i < way.count; ++i) {
    const AirLeg& leg = way.legs[static_cast<std::size_t>(i)];
    if (passes_through(leg.from, leg.to, box.low, box.high)) return true;
  }
  return false;
}

/// Whether a robot at the seam comes into the box: on the path, or on its ways from run to run and back.
bool leads_into(const CellModel& model, const CellSeam& seam, const Seam& source, const CellBox& box) {
  for (std::size_t i = 1; i < source.path_mm.size(); ++i)
    if (passes_through(source.path_mm[i - 1], source.path_mm[i], box.low, box.high)) return true;
  const int last = seam.first_run + seam.run_count - 1;
  for (const Motion& motion : model.motions) {
    for (int run = seam.first_run; run < last; ++run)
      if (leads_through_box(air_way_within_seam(motion, model.runs[run].end, model.runs[run + 1].begin), box))
        return true;
    if (seam.pass_count > 1 &&
        leads_through_box(air_way_within_seam(motion, model.runs[seam.first_run].begin, model.runs[last].end),
                          box))
      return true;
  }
  return false;
}

}  // namespace

/// The seams, as weldment/seam, that lead into the zone's box.
std::vector<std::string> CellCompiler::add_box(const Zone& zone) {
  CellBox box{model_.zone_count, zone.box_mm[0], zone.box_mm[1]};
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (box.low[axis] > box.high[axis]) std::swap(box.low[axis], box.high[axis]);
  model_.boxes.push_back(box);
  std::vector<std::string> inside;
  for (const CellSeam& seam : model_.seams)
    if (leads_into(model_, seam, source(seam), box)) inside.push_back(place(source(seam)));
  return inside;
}

/// What keeps two seams of the model from being begun together.
std::optional<SentenceKey> CellCompiler::pair_fault(int seam, int partner) const {
  if (partner < 0) return "cycle.with.impossible.unwelded"_key;
  if (partner == seam) return "cycle.with.impossible.itself"_key;
  const CellSeam &a = model_.seams[seam], &b = model_.seams[partner];
  if (a.partner >= 0 || b.partner >= 0) return "cycle.with.impossible.taken"_key;
  if (std::popcount(a.robot_mask | b.robot_mask) < 2) return "cycle.with.impossible.robots"_key;
  for (int i = a.first_zone; i < a.first_zone + a.zone_count; ++i)
    for (int k = b.first_zone; k < b.first_zone + b.zone_count; ++k)
      if (model_.zones_of[i] == model_.zones_of[k]) return "cycle.with.impossible.zone"_key;
  if (a.orientation >= 0 && b.orientation >= 0 && a.orientation != b.orientation)
    return "cycle.with.impossible.orientation"_key;
  if (has_to_follow(model_, seam, partner) || has_to_follow(model_, partner, seam))
    return "cycle.with.impossible.after"_key;
  return std::nullopt;
}

void CellCompiler::add_pairs() {
  for (int i = 0; i < static_cast<int>(model_.seams.size()); ++i) {
    CellSeam& seam = model_.seams[i];
    const Seam& at = source(seam);
    if (at.with.empty()) continue;
    const int named = index_of(weldment_.seams, at.with);
    const int partner = named >= 0 ? model_of_source_[static_cast<std::size_t>(named)] : -1;
    if (partner >= 0 && partner != i && model_.seams[partner].partner == i) continue;  // both name the other
    if (const auto fault = pair_fault(i, partner)) {
      note("cycle.with.impossible", Severity::fail, place(at), Sentence(*fault, {{"other", at.with}}));
      continue;
    }
    CellSeam& other = model_.seams[partner];
    seam.partner = partner;
    other.partner = i;
    // Else the positioner would have to turn between the two robots' ways in.
    if (seam.orientation < 0) seam.orientation = other.orientation;
    if (other.orientation < 0) other.orientation = seam.orientation;
    model_.has_pairs = true;
    note("cycle.with", Severity::note, place(at), Sentence("cycle.with"_key, {{"other", at.with}}));
  }
  if (model_.has_pairs && !model_.groups.empty()) await_with_pairs();
}

/// A seam of a balance group also comes after what is before the seam that is begun together with it.
void CellCompiler::await_with_pairs() {
  model_.awaited.clear();
  for (int i = 0; i < static_cast<int>(model_.seams.size()); ++i) {
    CellSeam& seam = model_.seams[i];
    seam.first_awaited = static_cast<int>(model_.awaited.size());
    if (seam.group >= 0) {
      const CellGroup& group = model_.groups[seam.group];
      for (int k = group.first_member; k < group.first_member + group.member_count; ++k) {
        const int member = model_.members[k];
        if (has_to_follow(model_, i, member) ||
            (seam.partner >= 0 && has_to_follow(model_, seam.partner, member)))
          model_.awaited.push_back(member);
      }
    }
    seam.awaited_count = static_cast<int>(model_.awaited.size()) - seam.first_awaited;
  }
}

/// For the bound: a robot is serviced where it ends a run, or at home.
void CellCompiler::add_service_way() {
  model_.least_service_s = model_.service_s;
  if (model_.service_point < 0 || model_.robots.empty()) return;
  const AirPlace cleaner = model_.place(model_.service_point);
  double shortest_s = std::numeric_limits<double>::infinity();
  for (const Motion& motion : model_.motions) {
    const auto add = [&](const AirPlace& place) {
      shortest_s = std::min(shortest_s,
                            air_way(motion, place, cleaner).time_s + air_way(motion, cleaner, place).time_s);
    };
    for (const CellRun& run : model_.runs) {
      add({run.begin, true});
      add({run.end, true});
    }
    for (int robot = 0; robot < model_.robot_count(); ++robot) add(model_.place(model_.home_point(robot)));
  }
  model_.least_service_s += shortest_s;
}

void CellCompiler::add_pieces(const Seam& source, CellRun& run) {
  const std::vector<Point_mm> points = path_between(source, run.from_mm, run.to_mm);
  run.first_piece = static_cast<int>(model_.pieces.size());
  run.piece_count = static_cast<int>(points.size()) - 1;
  double along_mm = 0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const double begin_mm = along_mm;
    along_mm += distance_mm(points[i - 1], points[i]);
    model_.pieces.push_back({points[i - 1], points[i], begin_mm, along_mm});
  }
  for (auto piece = model_.pieces.begin() + run.first_piece; piece != model_.pieces.end(); ++piece) {
    piece->from_share = along_mm > 0 ? piece->from_share / along_mm : 0;
    piece->to_share = along_mm > 0 ? piece->to_share / along_mm : 1;
  }
}

namespace {

/// The corners of the smallest box around a seam's runs.
struct SeamBox {
  Point_mm low, high;
};

SeamBox box_of(const CellModel& model, const CellSeam& seam) {
  SeamBox extent{model.runs[seam.first_run].begin, model.runs[seam.first_run].begin};
  for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
    for (int i = model.runs[run].first_piece; i < model.runs[run].first_piece + model.runs[run].piece_count;
         ++i)
      for (const Point_mm& point : {model.pieces[i].from, model.pieces[i].to})
        for (std::size_t axis = 0; axis < 3; ++axis) {
          extent.low[axis] = std::min(extent.low[axis], point[axis]);
          extent.high[axis] = std::max(extent.high[axis], point[axis]);
        }
  return extent;
}

bool is_near(const SeamBox& a, const SeamBox& b, double distance_mm) {
  double square = 0;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const double gap = std::max({0.0, a.low[axis] - b.high[axis], b.low[axis] - a.high[axis]});
    square += gap * gap;
  }
  return square < distance_mm * distance_mm;
}

}  // namespace

void CellCompiler::add_torch_distance() {
  if (model_.torch_distance_mm <= 0) return;
  std::vector<SeamBox> boxes;
  for (CellSeam& seam : model_.seams) {
    seam.first_arc = model_.arc_count;
    model_.arc_count += seam.pass_count * seam.run_count;
    for (int run = seam.first_run; run < seam.first_run + seam.run_count; ++run)
      add_pieces(source(seam), model_.runs[run]);
    boxes.push_back(box_of(model_, seam));
  }
  const int seams = static_cast<int>(model_.seams.size());
  for (int i = 0; i < seams; ++i) {
    CellSeam& seam = model_.seams[i];
    seam.first_near = static_cast<int>(model_.near_seams.size());
    for (int k = 0; k < seams; ++k)
      if (k != i && k != seam.partner &&
          is_near(boxes[static_cast<std::size_t>(i)], boxes[static_cast<std::size_t>(k)],
                  model_.torch_distance_mm))
        model_.near_seams.push_back(k);
    seam.near_count = static_cast<int>(model_.near_seams.size()) - seam.first_near;
  }
}

}  // namespace seamtakt
