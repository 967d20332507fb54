#include "cell/timeline/heat_history.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "formula/heat/temperature_field.hpp"
#include "plan/evaluate/cooling_case.hpp"

namespace seamtakt {

HeatHistory::HeatHistory(const Plan& plan, const Weldment& weldment, const CellModel& model) : model_(model) {
  for (std::size_t i = 0; i < model.seams.size(); ++i) {
    const Seam& seam = weldment.seams[static_cast<std::size_t>(model.seams[i].source)];
    if (!may_have_plates(weldment, seam)) continue;
    const SeamPlates plates = plates_of(weldment, seam);
    if (!plates.shape) continue;
    if (places_.empty()) {
      places_.resize(model.seams.size());
      base_C_.resize(model.passes.size());
      limit_C_.assign(model.passes.size(), std::numeric_limits<double>::infinity());
    }
    const int joint = joint_of(plan, weldment, seam, plates);
    places_[i] = {joint, along_line(*joints_[static_cast<std::size_t>(joint)].line, seam)};
    add_limits(plan, seam, model.seams[i]);
  }
  join_neighbours();
}

int HeatHistory::joint_of(const Plan& plan, const Weldment& weldment, const Seam& seam,
                          const SeamPlates& plates) {
  for (std::size_t i = 0; i < joints_.size(); ++i)
    if (same_joint(*joints_[i].line, joints_[i].plates, seam, plates)) return static_cast<int>(i);
  joints_.push_back({&seam, plates, JointField(*plates.shape, plan.heat_loss_W_m2K), {}, {}, {}, {}});
  for (std::size_t side = 0; side < 2; ++side)
    if (const int plate = plates.plate[side]; plate >= 0)
      joints_.back().boxes[side] = box_of(weldment.plates[static_cast<std::size_t>(plate)]);
  return static_cast<int>(joints_.size()) - 1;
}

void HeatHistory::join_neighbours() {
  std::map<int, std::vector<std::pair<std::size_t, std::size_t>>> joints_of;  // plate: joint, side
  for (std::size_t i = 0; i < joints_.size(); ++i)
    for (std::size_t side = 0; side < 2; ++side)
      if (const int plate = joints_[i].plates.plate[side]; plate >= 0) joints_of[plate].emplace_back(i, side);
  for (const auto& [plate, sharing] : joints_of)
    for (const auto& [joint, own_side] : sharing)
      for (const auto& [other, its_side] : sharing)
        if (other != joint) joints_[joint].neighbours.push_back({other, its_side, own_side});
}

void HeatHistory::add_limits(const Plan& plan, const Seam& seam, const CellSeam& compiled) {
  const auto schedule_of = [&](int pass) -> const Schedule* {
    return find_by_id(plan.schedules, seam.schedules[static_cast<std::size_t>(pass)]);
  };
  for (int pass = 0; pass < compiled.pass_count; ++pass) {
    const auto at = static_cast<std::size_t>(compiled.first_pass + pass);
    const Schedule* schedule = schedule_of(pass);
    if (!schedule) continue;
    const Schedule* before = pass > 0 ? schedule_of(pass - 1) : nullptr;
    base_C_[at] = before ? std::max(schedule->preheat_C, before->preheat_C) : schedule->preheat_C;
    if (const std::optional<double> upper = upper_interpass_C(*schedule)) {
      limit_C_[at] = *upper;
      has_limits_ = true;
    }
  }
}

void HeatHistory::clear() {
  for (Joint& joint : joints_) {
    joint.arcs.clear();
    for (std::vector<PlateArc>& arcs : joint.on_plate) arcs.clear();
  }
}

double HeatHistory::begin_mm(int seam, int run, bool reversed) const {
  const CellRun& drawn = model_.runs[static_cast<std::size_t>(run)];
  const AlongLine& line = places_[static_cast<std::size_t>(seam)].line;
  return line.offset_mm + line.sign * (reversed ? drawn.to_mm : drawn.from_mm);
}

void HeatHistory::add(int seam, int pass, int run, bool reversed, double begin_s, double end_s) {
  Joint& joint = joints_[static_cast<std::size_t>(places_[static_cast<std::size_t>(seam)].joint)];
  joint.arcs.push_back({begin_mm(seam, run, reversed), begin_mm(seam, run, !reversed), begin_s, end_s,
                        model_.heat_J_mm[index_of(seam, pass)]});
  if (joint.neighbours.empty()) return;
  const CellRun& drawn = model_.runs[static_cast<std::size_t>(run)];
  for (std::size_t side = 0; side < 2; ++side) {
    const PlatePoint begin = place_on(joint.boxes[side], drawn.begin),
                     end = place_on(joint.boxes[side], drawn.end);
    joint.on_plate[side].push_back({reversed ? end : begin, reversed ? begin : end, begin_s, end_s,
                                    model_.heat_J_mm[index_of(seam, pass)]});
  }
}

bool HeatHistory::is_cold(const Joint& joint) const {
  return joint.arcs.empty() &&
         std::all_of(joint.neighbours.begin(), joint.neighbours.end(),
                     [&](const Neighbour& neighbour) { return joints_[neighbour.joint].arcs.empty(); });
}

/// Where a run begins.
double HeatHistory::rise_K(int seam, int run, bool reversed, double at_s) const {
  const Joint& joint = joint_at(seam);
  double sum = joint.field.rise_K(begin_mm(seam, run, reversed), at_s, joint.arcs);
  const CellRun& drawn = model_.runs[static_cast<std::size_t>(run)];
  for (const Neighbour& near : joint.neighbours) {
    const Joint& other = joints_[near.joint];
    const PlateBox& box = joint.boxes[near.own_side];
    sum += neighbour_rise_K(box.size, {&other.field, near.its_side}, {&joint.field, near.own_side},
                            place_on(box, reversed ? drawn.end : drawn.begin), at_s,
                            other.on_plate[near.its_side]);
  }
  return sum;
}

double HeatHistory::cooled_s(int seam, int pass, bool reversed, double at_s) const {
  const Joint& joint = joint_at(seam);
  const std::size_t at = index_of(seam, pass);
  if (limit_C_[at] == std::numeric_limits<double>::infinity() || is_cold(joint)) return at_s;
  const CellSeam& compiled = model_.seams[static_cast<std::size_t>(seam)];
  const int first_run = compiled.first_run + (reversed ? compiled.run_count - 1 : 0);
  const double cooled_s =
      first_time_cooled_s([&](double time_s) { return rise_K(seam, first_run, reversed, time_s); },
                          limit_C_[at] - base_C_[at], at_s, longest_wait_s);
  return std::min(cooled_s, at_s + longest_wait_s);
}

double HeatHistory::start_C(int seam, int pass, int run, bool reversed, double at_s) const {
  return std::min(base_C_[index_of(seam, pass)] + rise_K(seam, run, reversed, at_s), steel_melting_C);
}

}  // namespace seamtakt
