#pragma once

#include <array>
#include <vector>

#include "cell/timeline/cell_model.hpp"
#include "plan/evaluate/plate_waits.hpp"

namespace seamtakt {

/// The heat that a timeline has brought into plates of finite size, and what a pass finds there: the rises of
/// all earlier arcs of its joint, added, whichever robot laid them. A joint is two plates: seams on both
/// sides of it share it. Where the plan has the plates themselves (Weldment::plates), heat of the other
/// joints of its two plates counts too (neighbour_rise_K), not that of joints further on. Seams for which the
/// plan gives no usable sizes aren't covered. Formula and accuracy: JointField.
///
/// Seams and runs are the model's; passes count from 1 within their seam.
class HeatHistory {
 public:
  /// `plan`, `weldment` and `model` must outlive it.
  HeatHistory(const Plan& plan, const Weldment& weldment, const CellModel& model);

  bool is_empty() const { return joints_.empty(); }
  bool covers(int seam) const {
    return !joints_.empty() && places_[static_cast<std::size_t>(seam)].joint >= 0;
  }
  /// Whether a pass of a covered seam has an upper interpass limit, so that it may have to wait.
  bool has_limits() const { return has_limits_; }
  /// Upper interpass temperature of a pass (degC); infinity where it has none.
  double limit_C(int seam, int pass) const { return limit_C_[index_of(seam, pass)]; }

  /// Forgets all arcs.
  void clear();
  /// An arc of a covered seam.
  void add(int seam, int pass, int run, bool reversed, double begin_s, double end_s);

  /// From at_s on, when the place where the pass begins has cooled to its limit; at most longest_wait_s
  /// later.
  double cooled_s(int seam, int pass, bool reversed, double at_s) const;
  /// degC where a run begins, at most the steel's melting temperature.
  double start_C(int seam, int pass, int run, bool reversed, double at_s) const;

 private:
  /// Another joint of one of a joint's plates.
  struct Neighbour {
    std::size_t joint = 0, its_side = 0, own_side = 0;
  };
  struct Joint {
    const Seam* line;  ///< along which its places count
    SeamPlates plates;
    JointField field;
    std::vector<ArcHeat> arcs;
    std::array<PlateBox, 2> boxes{};                ///< of its plates, where the weldment has them
    std::array<std::vector<PlateArc>, 2> on_plate;  ///< the same arcs as its plates have them
    std::vector<Neighbour> neighbours;
  };
  struct SeamOnJoint {
    int joint = -1;
    AlongLine line;
  };

  int joint_of(const Plan& plan, const Weldment& weldment, const Seam& seam, const SeamPlates& plates);
  void join_neighbours();
  double rise_K(int seam, int run, bool reversed, double at_s) const;
  bool is_cold(const Joint& joint) const;
  void add_limits(const Plan& plan, const Seam& seam, const CellSeam& compiled);
  double begin_mm(int seam, int run, bool reversed) const;
  std::size_t index_of(int seam, int pass) const {
    return static_cast<std::size_t>(model_.seams[static_cast<std::size_t>(seam)].first_pass + pass - 1);
  }
  const Joint& joint_at(int seam) const {
    return joints_[static_cast<std::size_t>(places_[static_cast<std::size_t>(seam)].joint)];
  }

  const CellModel& model_;
  std::vector<Joint> joints_;
  std::vector<SeamOnJoint> places_;       ///< of the model's seams; empty where there are no joints
  std::vector<double> base_C_, limit_C_;  ///< of the model's passes
  bool has_limits_ = false;
};

}  // namespace seamtakt
