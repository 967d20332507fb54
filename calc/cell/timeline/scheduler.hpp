#pragma once

#include <algorithm>
#include <cstdint>
#include <limits>
#include <vector>

#include "cell/timeline/sequence.hpp"
#include "cell/timeline/timeline.hpp"

namespace seamtakt {

class HeatHistory;

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
/// robots begin, all at home; the makespan is the last return home, and with it the positioner's return to
/// the load orientation where there is one.
///
/// A step, in this order:
///  1. wire change, where the loaded wire doesn't fit the pass; torch service, where its first run would pass
///     every_arc_s since the last service; a change of the tip or the spool, where its first run would pass
///     what they last. All at the torch's position; a service that has a place is there, with an air move to
///     it and back (else its time includes the way), so that the torch is then where it was.
///  2. Where the seam needs another orientation: every robot drives home as soon as it is free; when the last
///     has arrived, the positioner turns; no robot leaves before the turn has ended. With a load orientation
///     the cycle begins in it and, when all robots are home, ends with the turn back to it; else the first
///     orientation asked for is there at the beginning (set while the weldment is loaded).
///  3. The robot leaves for the seam when the seams this one comes after are done and no other robot is in
///     one of its zones. A zone is taken from this moment until the end of the last pass of the visit. A
///     robot that waits does so clear of the weldment (retracted; the retraction isn't timed). An air move
///     through a zone's box, the way home too, takes the zone for the whole move; ways within a seam are the
///     seam's, and ways to the torch service aren't watched.
///  4. Air move with wrist time; sensing before a seam's first pass; then the wait until the pass before has
///     cooled. Where balance is kept, a group's seams are begun in the order of the sequence: a robot that
///     arrives too early waits at its seam. Of two seams that are begun together the robot that arrives first
///     waits for the other. Where torches have to keep a distance, the step waits until no arc of it comes
///     nearer than that to an arc of the steps before: the torches' ways are straight pieces at constant
///     speed, and the delay is the least one to rounding. A torch without arc isn't counted.
///  5. In a pass that is tracked, the robot's tracking time, as sensing. Each run: torch service, tip and
///  spool
///     where it would pass what they last; air move from the run before, start, arc, end.
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

  /// Of moves that are recorded from now on, passes that `heat` covers wait for the temperature of their
  /// plates, in place of the model's interpass wait; it keeps their arcs. It must outlive the scheduler.
  void follow(HeatHistory& heat) { heat_ = &heat; }

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
    double tip_arc_s = 0, spool_g = 0;  ///< arc since the last tip, wire since the last spool
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
  /// A step that waits for the one that is begun together with it.
  struct Held {
    int seam = -1, robot = -1;
    bool reversed = false;
    double arrive_s = 0;
  };
  /// A robot's way home.
  struct HomeWay {
    double leave_s = 0, arrive_s = 0;
    WaitReason reason{};
  };
  /// A change of what wears, before a run.
  struct WearChange {
    bool tip = false, spool = false;
    double time_s = 0;
  };
  /// How a step would begin.
  struct Departure {
    bool possible = false, stays = false, changes_wire = false, serviced = false, turns = false;
    WearChange wear{};
    double ready_s = 0;       ///< after wire change and service
    double turn_start_s = 0;  ///< where it turns the positioner
    double leave_s = impossible;
  };

  std::size_t per_robot(int index, int robot) const {
    return static_cast<std::size_t>(index) * robots_.size() + static_cast<std::size_t>(robot);
  }
  bool allowed(const Step& step) const;
  bool may_begin_pair(const Step& step) const;
  bool follows_done(int seam) const;
  bool alternates(const CellSeam& seam) const;
  /// Arc times are sums: a run that ends on every_arc_s to within rounding doesn't pass it.
  static constexpr double service_tolerance_s = 1e-9;
  bool passes_service(double arc_s) const {
    return model_->service_every_arc_s > 0 && arc_s > model_->service_every_arc_s + service_tolerance_s;
  }
  /// Right after a service another one is of no use, however long the run.
  bool needs_service(double arc_s, double run_arc_s) const {
    return arc_s > 0 && passes_service(arc_s + run_arc_s);
  }
  double service_s(int robot, const AirPlace& place) const;
  /// Nobody drives to the torch service while the positioner turns.
  double serve_from_s(double at_s) const {
    return model_->service_point < 0 ? at_s : std::max(at_s, turned_s_);
  }
  WearChange wear_change(int robot, int pass, double share) const;
  bool wears_out(int robot, int pass) const;
  bool holds_zones(const CellSeam& seam, int robot) const;
  Departure departure(const Step& step) const;
  /// When a robot that is free at `from_s` has driven home, no box in its way.
  double home_s(int robot, double from_s) const {
    const int home = model_->home_point(robot);
    return robots_[robot].point == home ? from_s : from_s + model_->air_s(robot, robots_[robot].point, home);
  }
  double turn_start_s(const Step& step, double ready_s, std::vector<ZoneState>& zones) const;
  bool leads_through(int robot, int from, int to, const CellBox& box) const;
  void wait_for_boxes(int robot, int from, int to, const std::vector<ZoneState>& zones, double& leave_s,
                      WaitReason* reason = nullptr) const;
  void take_boxes(int robot, int from, int to, double until_s, std::vector<ZoneState>& zones) const;
  HomeWay home_way(int robot, double from_s, std::vector<ZoneState>& zones) const;
  void time_arcs(const Step& step);
  double apart_s(const Step& step, double at_s, WaitReason& reason) const;
  bool push_apart(const Step& step, int other, double& at_s) const;
  WaitReason reason_to_turn_later(const Step& step, const Departure& departure) const;
  WaitReason reason_to_leave_later(const Step& step) const;
  template <class Recorder>
  bool place(const Step& step, Recorder& recorder);
  template <class Recorder>
  void weld(const Step& step, double at_s, Recorder& recorder);
  template <class Recorder>
  void begin_pair(const Step& step, double arrive_s, Recorder& recorder);
  template <class Recorder>
  void drive_home(int robot, Recorder& recorder);
  template <class Recorder>
  void add_way(BareMove move, const AirWay& way, Recorder& recorder) const;
  template <class Recorder>
  void serve(const BareMove& pattern, const AirPlace& place, double& at_s, Recorder& recorder) const;
  template <class Recorder>
  void change_worn(const BareMove& pattern, const WearChange& wear, double& at_s, Recorder& recorder);
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
  HeatHistory* heat_ = nullptr;
  int orientation_ = -1;
  Held held_;
  std::vector<double> arc_start_s_;  ///< [CellSeam::first_arc + ...]; empty where torches need no distance
  std::vector<char> pass_reversed_;  ///< [pass], kept with it
  double turned_s_ = 0;              ///< when the positioner last came to rest
  std::size_t steps_needed_ = 0;
};

}  // namespace seamtakt
