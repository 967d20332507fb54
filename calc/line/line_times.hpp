#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "cell/timeline/timeline.hpp"
#include "line/line_model.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// What robots use up and a person has to change, while the cell waits. 0: not regarded.
struct ConsumableChanges {
  double tip_every_arc_s = 0, tip_change_s = 0;           ///< contact tip, by arc time of its robot
  double wire_package_kg = 0, wire_package_change_s = 0;  ///< spool or drum, by what its robot has fed
};

/// A weldment's times in the cell, from its timeline.
struct CellLoad {
  CycleResult cycle;
  double change_back_s = 0;            ///< to what the robots had loaded: the next unit begins with it
  std::vector<double> arc_s, wire_kg;  ///< per robot of the cell
};

/// The plan's line with the times of its weldments, from which the model of any sequence of units follows.
/// Assembly pulls at the takt to plan to, first when a mean unit has passed an empty line (takt_goal). A
/// stage's time range replaces its time by the mean of the three. Times of a stage by name: kit 0 (the cart
/// is the condition of release), load, tack, measure and inspect the weldment's, manual by manual_stage_s,
/// cell by the cycle:
///   one station: load + weld + unload (without load where the line has a stage for it);
///   two: max(weld + index, unload + the load of the unit that follows + index).
/// With several cells the unit that follows is the one `servers` later. Deviations from the shop: the first
/// unit of the run is assumed to be loaded already, and a unit that the cell waits for to be loaded in
/// parallel with the one before.
class LineTimes {
 public:
  /// `cycle_of` gives a weldment's cycle (order given or best). InputError: the plan has no line, or its line
  /// no stage. Findings of cycles and times are added to `findings`.
  template <class CycleOf>
  LineTimes(const Plan& plan, const Evaluation& evaluation, const std::vector<std::string>& weldments,
            CycleOf&& cycle_of, Findings& findings)
      : LineTimes(plan, weldments) {
    for (std::size_t i = 0; i < weldments_.size(); ++i) {
      if (has_cell()) add_cell_load(evaluation, cycle_of(*weldments_[i]), findings);
      note_times(*weldments_[i], findings);
    }
    note_stages(findings);
  }

  /// The model for units in this order: indices into the `weldments` of the constructor, and each unit's
  /// number in the random streams. What is loaded meanwhile and what fixtures are changed for follow this
  /// order, also where a unit that isn't complete is passed by others.
  LineModel model(const std::vector<int>& weldment_of_unit,
                  const std::vector<std::uint32_t>& random_stream_id, const ConsumableChanges& changes) const;

  const std::vector<CellLoad>& cell_loads() const { return cell_loads_; }
  const std::vector<LineStage>& stages() const { return stages_; }
  /// The calendar's; nullptr without one.
  const std::shared_ptr<const WorkHours>& hours() const { return hours_; }
  /// Work (s) of a weldment at a stage, the load of the next unit being its own.
  double alone_s(int weldment, int stage) const { return work_s(weldment, weldment, stage); }

 private:
  LineTimes(const Plan& plan, const std::vector<std::string>& weldments);
  bool has_cell() const { return cell_stage_ >= 0; }
  void add_stages();
  void add_cell_load(const Evaluation& evaluation, CycleResult cycle, Findings& findings);
  void note_times(const Weldment& weldment, Findings& findings) const;
  void note_stages(Findings& findings) const;
  /// `next`: the weldment loaded meanwhile; -1: none.
  double work_s(int weldment, int next, int stage) const;
  double cell_work_s(int weldment, int next) const;
  void add_changeovers(const std::vector<int>& weldment_of_unit, LineModel& model) const;
  void add_changes(const std::vector<int>& weldment_of_unit, const ConsumableChanges& changes,
                   LineModel& model) const;

  const Plan* plan_;
  Cell cell_;
  std::vector<const Weldment*> weldments_;
  std::vector<double> manual_s_;  ///< of each weldment, by hand
  std::vector<LineStage> stages_;
  std::vector<LinePeople> people_;
  std::shared_ptr<const WorkHours> hours_;
  int cell_stage_ = -1;  ///< the first of them
  bool has_load_stage_ = false;
  std::vector<CellLoad> cell_loads_;
};

}  // namespace seamtakt
