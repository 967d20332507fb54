#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "cell/timeline/sequence.hpp"
#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// What a wait ends with. Indices are the model's; -1 where there is none.
struct WaitReason {
  WaitCause cause = WaitCause::none;
  int seam = -1, zone = -1, robot = -1;
};

/// A move as the scheduler makes it. Indices are the model's; -1 where it belongs to none.
struct BareMove {
  int robot = -1, seam = -1;
  int pass = 0;  ///< counts from 1
  int run = -1;  ///< index in CellModel::runs (arc, start, end)
  bool reversed = false;
  MoveKind kind = MoveKind::air;
  double start_s = 0, end_s = 0;
  Point_mm from{}, to{};
  WaitReason reason{};
};

/// When the arc of one run burns. Indices are the model's.
struct ArcTime {
  int robot = -1;
  int pass = -1;  ///< in CellModel::passes
  double start_s = 0, end_s = 0;
};

/// Whether the seams of a balance group must alternate (see balance.hpp). A given order is taken unchanged;
/// an order that is chosen alternates them.
enum class Balance { ignored, kept };

/// Schedules a sequence step by step, each as early as the steps before it allow. Time 0 is when the
/// robots begin, all at home; the makespan is the last return home.
///
/// A step, in this order:
///  1. wire change, where the loaded wire doesn't fit the pass; torch service, where its first run would pass
///     every_arc_s since the last service (the service's time includes the way there and back, so that the
///     torch is then where it was). Both at the torch's position.
///  2. Where the seam needs another orientation: every robot drives home as soon as it is free; when the last
///     has arrived, the positioner turns; no robot leaves before the turn has ended. The first orientation
///     asked for is there at the beginning (set while the weldment is loaded).
///  3. The robot leaves for the seam when the seams this one comes after are done and no other robot is in
///     one of its zones. A zone is taken from this moment until the end of the last pass of the visit. A
///     robot that waits does so clear of the weldment (retracted; the retraction isn't timed).
///  4. Air move with wrist time; sensing before a seam's first pass; then the wait until the pass before has
///     cooled. Where balance is kept, a group's seams are begun in the order of the sequence: a robot that
///     arrives too early waits at its seam.
///  5. Each run: torch service where it would pass every_arc_s, air move from the run before, start, arc,
///     end.
/// The next pass of the same seam by the same robot stays within the visit (no leaving, no wrist time where
/// the torch is already at its start) unless another robot has taken one of the seam's zones or the
/// positioner has turned.
class Scheduler {
 public:
  static constexpr double impossible = std::numeric_limits<double>::infinity();

  explicit Scheduler(const CellModel& model, Balance balance = Balance::ignored);

  /// Makespan (s) of a sequence that holds every pass once; `impossible` where a step isn't allowed in its
  /// place: a seam before one that it comes after, a robot that can't weld it, two robots on one seam, a
  /// direction that the seam forbids, a pass too many or missing. `moves` are the moves by robot in the order
  /// of time.
  double makespan_s(const Sequence& sequence);
  double makespan_s(const Sequence& sequence, std::vector<BareMove>& moves);
  /// The same with the arcs alone, each robot's in the order of time.
  double makespan_s(const Sequence& sequence, std::vector<ArcTime>& arcs);

  /// For building a sequence one step at a time.
  void restart();
  /// When the robot would leave for this step as the next one (s), or `impossible`.
  double departure_s(const Step& step) const;
  /// Takes the step as the next one; false, and nothing changed, where it is impossible.
  bool append(const Step& step);
  /// Whether all passes of a seam have been taken.
  bool done(int seam) const { return seams_[seam].passes_done == model_->seams[seam].pass_count; }
  /// Makespan if all robots drove home now.
  double makespan_so_far_s() const;

  /// What a step would be as the next one.
  struct Preview {
    bool possible = false, turns = false, changes_wire = false;
    double leave_s = impossible, arrive_s = impossible;  ///< arrive: when the torch is at the first run
  };
  Preview preview(const Step& step) const;

  /// Sum of the ends (s) of all steps of the sequence scheduled last: how early the work is done.
  double flow_s() const { return flow_s_; }

 private:
  struct RobotState {
    double free_s = 0;
    double arc_s = 0;  ///< since the last torch service
    int point = 0;
    int seam = -1;  ///< whose visit it is in
    Package loaded;
  };
  struct SeamState {
    double end_s = 0;  ///< of the last pass taken
    int passes_done = 0;
    int robot = -1;
  };
  struct ZoneState {
    double free_s = 0;
    int robot = -1;
  };
  struct GroupState {
    double begun_s = 0;  ///< when its last seam was begun
    int side = -1;       ///< of that seam
  };
  /// How a step would begin.
  struct Departure {
    bool possible = false, stays = false, changes_wire = false, serviced = false, turns = false;
    double ready_s = 0;       ///< after wire change and service
    double turn_start_s = 0;  ///< where it turns the positioner
    double leave_s = impossible;
  };

  std::size_t per_robot(int index, int robot) const {
    return static_cast<std::size_t>(index) * robots_.size() + static_cast<std::size_t>(robot);
  }
  bool allowed(const Step& step) const;
  bool alternates(const CellSeam& seam) const;
  bool passes_service(double arc_s) const;
  bool needs_service(double arc_s, double run_arc_s) const;
  bool holds_zones(const CellSeam& seam, int robot) const;
  Departure departure(const Step& step) const;
  double home_s(int robot, double from_s) const;
  WaitReason reason_to_turn_later(const Step& step, const Departure& departure) const;
  WaitReason reason_to_leave_later(const Step& step) const;
  template <class Recorder>
  bool place(const Step& step, Recorder& recorder);
  template <class Recorder>
  void prepare(const Step& step, const Departure& departure, Recorder& recorder);
  template <class Recorder>
  void turn(const Step& step, const Departure& departure, Recorder& recorder);
  template <class Recorder>
  double arrive_s(const Step& step, const Departure& departure, Recorder& recorder);
  template <class Recorder>
  double run_s(const Step& step, int index, double at_s, Recorder& recorder);
  template <class Recorder>
  double weld_s(const Step& step, double at_s, Recorder& recorder);
  template <class Recorder>
  double finish_s(Recorder& recorder);
  template <class Recorder>
  double lay_out_s(const Sequence& sequence, Recorder& recorder);

  const CellModel* model_;
  std::vector<RobotState> robots_;
  std::vector<SeamState> seams_;
  std::vector<ZoneState> zones_;
  std::vector<GroupState> groups_;
  Balance balance_ = Balance::ignored;
  double flow_s_ = 0;
  int orientation_ = -1;
  double turned_s_ = 0;  ///< when the positioner last came to rest
  std::size_t steps_needed_ = 0;
};

}  // namespace seamtakt
