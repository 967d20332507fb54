#include "cell/bound/phase_bound.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <map>
#include <set>

#include "cell/bound/one_tree.hpp"
#include "cell/bound/turn_bound.hpp"

namespace seamtakt {

namespace {

/// nodes^2 * rounds of a 1-tree bound: about a tenth of a second.
constexpr double round_trip_work = 5e7;
constexpr std::size_t round_trip_nodes = 3000;

std::size_t per_robot(const CellModel& model, int index, int robot) {
  return static_cast<std::size_t>(index) * model.robots.size() + static_cast<std::size_t>(robot);
}

/// One end of a pass.
struct PassEnd {
  int seam = -1, point = 0;  ///< seam -1: home
  bool last = false;         ///< where the pass ends as drawn
};

/// A robot's air move between two ends of passes, or 0 within a seam if the torch is already there.
double way_s(const CellModel& model, int robot, const PassEnd& a, const PassEnd& b) {
  if (a.seam >= 0 && b.seam >= 0) {
    const bool both_fixed = !model.seams[a.seam].reversible && !model.seams[b.seam].reversible;
    if (both_fixed && a.last == b.last) return std::numeric_limits<double>::infinity();
    if (a.seam == b.seam) return a.last == b.last ? 0 : model.back_s[per_robot(model, a.seam, robot)];
  }
  return model.air_s(robot, a.point, b.point);
}

/// Whether no arc that the robot may weld is faster than the air move between the same points.
bool arcs_are_slow(const CellModel& model, int robot) {
  for (int i = 0; i < static_cast<int>(model.seams.size()); ++i) {
    const CellSeam& seam = model.seams[i];
    if (!(seam.robot_mask >> robot & 1)) continue;
    const double air_s = model.air_s(robot, model.entry_point(i, false), model.exit_point(i, false));
    for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
      if (model.weld_s[per_robot(model, pass, robot)] < air_s) return false;
  }
  return true;
}

double own_work_s(const CellModel& model, int robot, const CellSeam& seam) {
  double work = seam.sense_points * model.robots[robot].sense_point_s;
  for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
    work += model.weld_s[per_robot(model, pass, robot)];
  return work;
}

/// Wires (or gases, or sources) that a robot's own seams need in addition to the loaded ones: each is a
/// change.
template <class Member>
int changes_of(const CellModel& model, int robot, Member member) {
  const std::int32_t loaded = model.robots[robot].loaded.*member;
  if (loaded < 0) return 0;
  std::set<std::int32_t> others;
  for (const CellSeam& seam : model.seams) {
    if (seam.robot_mask != std::uint64_t{1} << robot) continue;
    for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
      if (const std::int32_t need = model.passes[pass].need.*member; need >= 0 && need != loaded)
        others.insert(need);
  }
  return static_cast<int>(others.size());
}

double changes_s(const CellModel& model, int robot) {
  const int changes =
      std::max({changes_of(model, robot, &Package::wire), changes_of(model, robot, &Package::gas),
                changes_of(model, robot, &Package::power_source)});
  return changes * std::max(0.0, model.robots[robot].wire_change_s);
}

class PhaseBound {
 public:
  PhaseBound(const CellModel& model, const LeastTimes& least) : model_(model), least_(least) {
    std::set<int> needed;
    for (const CellSeam& seam : model.seams)
      if (seam.orientation >= 0) needed.insert(seam.orientation);
    // Where nothing ever turns, all seams are one phase.
    for (const int orientation : needed) phases_.push_back({orientation, {}, {}});
    if (needed.size() < 2) phases_.assign(1, {-1, {}, {}});
    for (int i = 0; i < static_cast<int>(model.seams.size()); ++i) place(i, needed.size() < 2);
    for (Phase& phase : phases_)
      for (int robot = 0; robot < model.robot_count(); ++robot)
        phase.own_s.push_back(own_s(robot, phase.seams));
    for (int robot = 0; robot < model.robot_count(); ++robot) {
      free_s_.push_back(free_work_s(robot));
      beside_s_.push_back(changes_s(model, robot) + own_services_s(robot));
    }
  }

  double bound_s() const {
    const double turns = least_.turns_s;
    if (phases_.size() < 2) {
      if (turns <= 0) return sum_s(true, 0);
      // A seam may cool while the positioner turns.
      return std::max(sum_s(true, 0), sum_s(false, turns) + turns);
    }
    const double extra = least_return_s(model_);
    return std::min(sum_s(true, turns) + turns, sum_s(false, turns + extra) + turns + extra);
  }

 private:
  struct Phase {
    int orientation;
    std::vector<int> seams;
    std::vector<double> own_s;  ///< [robot] its own seams with their round trip
  };

  void place(int seam, bool one_phase) {
    const int orientation = model_.seams[seam].orientation;
    if (!one_phase && orientation < 0) return free_.push_back(seam);
    for (Phase& phase : phases_)
      if (one_phase || phase.orientation == orientation) phase.seams.push_back(seam);
  }

  bool is_own(int robot, int seam) const {
    return model_.seams[seam].robot_mask == std::uint64_t{1} << robot;
  }

  double own_s(int robot, const std::vector<int>& seams) const {
    std::vector<int> own;
    double work = 0, ways_in = 0;
    for (const int seam : seams)
      if (is_own(robot, seam)) {
        own.push_back(seam);
        work += own_work_s(model_, robot, model_.seams[seam]);
        ways_in += least_.work_s[seam] - own_work_s(model_, robot, model_.seams[seam]);
      }
    if (own.empty()) return 0;
    ways_in += least_way_home_s(least_, std::uint64_t{1} << robot);
    if (!arcs_are_slow(model_, robot)) return work + ways_in;
    return work + std::max(ways_in, round_trip_bound_s(model_, robot, own));
  }

  /// Own seams that are in any orientation. Leaving them out saves a round trip elsewhere no more than the
  /// air move beside their arc.
  double free_work_s(int robot) const {
    double work = 0;
    for (const int seam : free_) {
      if (!is_own(robot, seam)) continue;
      work += own_work_s(model_, robot, model_.seams[seam]);
      const double air_s =
          model_.air_s(robot, model_.entry_point(seam, false), model_.exit_point(seam, false));
      work -= model_.seams[seam].pass_count * air_s;
    }
    return std::max(0.0, work);
  }

  double own_services_s(int robot) const {
    double arc = 0;
    for (int i = 0; i < static_cast<int>(model_.seams.size()); ++i)
      if (is_own(robot, i)) arc += capped_arc_s(model_, model_.seams[i]);
    return services_s(model_, arc, 1);
  }

  /// The seams that only robots of a set can weld, shared by them.
  double shared_s(const Phase& phase) const {
    std::set<std::uint64_t> sets{model_.robot_count() == 64 ? ~std::uint64_t{0}
                                                            : (std::uint64_t{1} << model_.robot_count()) - 1};
    for (const int seam : phase.seams) sets.insert(model_.seams[seam].robot_mask);
    double longest = 0;
    for (const std::uint64_t robots : sets) {
      double work = 0;
      for (const int seam : phase.seams)
        if (!(model_.seams[seam].robot_mask & ~robots)) work += least_.work_s[seam];
      if (work > 0)
        longest = std::max(longest, (work + least_way_home_s(least_, robots)) / std::popcount(robots));
    }
    return longest;
  }

  double zone_s(const Phase& phase) const {
    std::map<int, double> work_s;
    for (const int i : phase.seams) {
      const CellSeam& seam = model_.seams[i];
      for (int k = seam.first_zone; k < seam.first_zone + seam.zone_count; ++k)
        work_s[model_.zones_of[k]] += least_.work_s[i];
    }
    double longest = 0;
    for (const auto& [zone, work] : work_s)
      longest = std::max(longest, work + least_way_home_s(least_, ~std::uint64_t{0}));
    return longest;
  }

  /// The longest chain of `after`; only seams of the phase take time.
  double chain_s(const Phase& phase, bool with_waits) const {
    std::vector<char> inside(model_.seams.size(), 0);
    for (const int seam : phase.seams) inside[seam] = 1;
    std::vector<double> end_s(model_.seams.size(), 0);
    double longest = 0;
    for (const int i : model_.precedence_order) {
      const CellSeam& seam = model_.seams[i];
      for (int k = seam.first_after; k < seam.first_after + seam.after_count; ++k)
        end_s[i] = std::max(end_s[i], end_s[model_.after[k]]);
      if (!inside[i]) continue;
      end_s[i] += least_.work_s[i];
      for (int pass = seam.first_pass; with_waits && pass < seam.first_pass + seam.pass_count; ++pass)
        end_s[i] += model_.passes[pass].interpass_wait_s;
      longest = std::max(longest, end_s[i] + least_way_home_s(least_, seam.robot_mask));
    }
    return longest;
  }

  /// The phases one after another; `hidden_s` are turns in which robots may be serviced or changed.
  double sum_s(bool with_waits, double hidden_s) const {
    double sum = 0;
    std::vector<double> room_s(model_.robots.size(), 0);
    for (const Phase& phase : phases_) {
      // The load orientation is there twice, at the beginning and at the end.
      const bool waits = with_waits && (phases_.size() < 2 || phase.orientation != model_.load_orientation);
      double longest = std::max({shared_s(phase), zone_s(phase), chain_s(phase, waits)});
      for (const double own : phase.own_s) longest = std::max(longest, own);
      sum += longest;
      for (std::size_t robot = 0; robot < room_s.size(); ++robot)
        room_s[robot] += longest - phase.own_s[robot];
    }
    double beyond = 0;
    for (std::size_t robot = 0; robot < room_s.size(); ++robot) {
      const bool slow = arcs_are_slow(model_, static_cast<int>(robot));
      const double work = slow ? free_s_[robot] : 0;
      beyond = std::max(
          {beyond, work - room_s[robot], work + std::max(0.0, beside_s_[robot] - hidden_s) - room_s[robot]});
    }
    return sum + beyond;
  }

  const CellModel& model_;
  const LeastTimes& least_;
  std::vector<Phase> phases_;
  std::vector<int> free_;
  std::vector<double> free_s_, beside_s_;
};

}  // namespace

double round_trip_bound_s(const CellModel& model, int robot, const std::vector<int>& seams) {
  std::vector<PassEnd> ends{{-1, model.home_point(robot), false}};
  std::vector<int> partner{-1};
  for (const int seam : seams)
    for (int pass = 0; pass < model.seams[seam].pass_count; ++pass)
      for (const bool last : {false, true}) {
        partner.push_back(static_cast<int>(ends.size()) + (last ? -1 : 1));
        ends.push_back({seam, last ? model.exit_point(seam, false) : model.entry_point(seam, false), last});
      }
  if (ends.size() > round_trip_nodes) return 0;
  const auto cost = [&](int i, int j) { return way_s(model, robot, ends[i], ends[j]); };
  const double nodes = static_cast<double>(ends.size());
  const int rounds = std::clamp(static_cast<int>(round_trip_work / (nodes * nodes)), 10, 300);
  return OneTreeBound(std::move(partner), cost).bound(rounds);
}

double phase_bound_s(const CellModel& model, const LeastTimes& least) {
  if (model.seams.empty()) return 0;
  return PhaseBound(model, least).bound_s();
}

}  // namespace seamtakt
