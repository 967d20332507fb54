#include "line/line_calendar.hpp"

#include <algorithm>
#include <optional>

#include "line/end_times.hpp"
#include "line/entrance.hpp"
#include "line/people_queue.hpp"

namespace seamtakt {

namespace {

/// First in, first out, with a number of places.
class Ring {
 public:
  explicit Ring(std::size_t places) : places_(places), items_(places) {}
  bool empty() const { return count_ == 0; }
  bool full() const { return count_ == places_; }
  void push(std::uint32_t item) {
    std::size_t at = first_ + count_++;
    items_[at < places_ ? at : at - places_] = item;
  }
  std::uint32_t pop() {
    const std::uint32_t item = items_[first_];
    if (++first_ == places_) first_ = 0;
    --count_;
    return item;
  }

 private:
  std::size_t places_, first_ = 0, count_ = 0;
  std::vector<std::uint32_t> items_;
};

struct Server {
  std::int32_t stage = 0;
  std::uint32_t unit = 0;
  std::uint32_t visit = 0;
  std::int32_t activity = -1;
  double blocked_from_s = 0;
  double rework_s = -1;  ///< of the service that waits for a person; -1: the stage's own work
  bool idle = true;
};

struct SentBack {
  std::uint32_t unit = 0;
  double work_s = 0;
};

struct StageState {
  int first_server = 0;
  int idle_servers = 0;
  Ring buffer;                      ///< units after the stage
  Ring blocked;                     ///< its servers that can't get rid of their unit
  std::vector<SentBack> sent_back;  ///< to be reworked here
  std::size_t sent_back_taken = 0;

  StageState(std::size_t places, std::size_t servers) : buffer(places), blocked(servers) {}
};

template <bool traced>
class EventCalendar {
 public:
  EventCalendar(const LineModel& model, std::uint64_t seed, LineTrace* trace)
      : model_(model),
        stops_(model, seed),
        trace_(trace),
        last_(static_cast<int>(model.stage_count()) - 1),
        ends_(server_count(model)),
        entrance_(model),
        people_(model.people) {
    if (work_varies(model)) drawn_s_ = drawn_work_s(model, seed);
    work_s_ = drawn_s_.empty() ? model.work_s.data() : drawn_s_.data();
    run_.stages.resize(model.stage_count());
    run_.units.resize(model.unit_count());
    add_servers();
    const bool re_entrant = std::any_of(model.stages.begin(), model.stages.end(),
                                        [](const LineStage& stage) { return stage.rework_to >= 0; });
    if (re_entrant) visits_.assign(model.unit_count() * model.stage_count(), 0);
    if constexpr (traced) trace_->leaving.assign(model.unit_count(), -1);
  }

  LineRun run() {
    if (model_.pull) begin_takt(0, model_.pull->first_s);
    StageState& first = stages_[0];
    for (int s = first.first_server; s < first.first_server + model_.stages[0].servers; ++s) pull(s, 0);
    if (model_.people.empty() && model_.available_s.empty()) {
      while (ends_.end_s(ends_.first()) < EndTimes::never) complete(ends_.first());
      return std::move(run_);
    }
    give_out_people(0);
    for (double now_s = next_s(); now_s < EndTimes::never; now_s = next_s()) {
      while (ends_.end_s(ends_.first()) <= now_s) complete(ends_.first());
      let_in(now_s);
      give_out_people(now_s);
    }
    return std::move(run_);
  }

 private:
  static std::size_t server_count(const LineModel& model) {
    std::size_t count = 0;
    for (const LineStage& stage : model.stages) count += static_cast<std::size_t>(stage.servers);
    return count + (model.pull ? 1 : 0);
  }

  /// Numbered from the last stage, so that equal times are processed downstream first.
  void add_servers() {
    for (const LineStage& stage : model_.stages)
      stages_.emplace_back(std::min(static_cast<std::size_t>(stage.buffer_after), model_.unit_count()),
                           static_cast<std::size_t>(stage.servers));
    if (model_.pull) stages_.emplace_back(1, 1);
    for (int j = static_cast<int>(stages_.size()) - 1; j >= 0; --j) {
      StageState& state = stages_[static_cast<std::size_t>(j)];
      state.first_server = static_cast<int>(servers_.size());
      state.idle_servers = j > last_ ? 1 : model_.stages[static_cast<std::size_t>(j)].servers;
      servers_.resize(servers_.size() + static_cast<std::size_t>(state.idle_servers));
      for (std::size_t s = static_cast<std::size_t>(state.first_server); s < servers_.size(); ++s)
        servers_[s].stage = j;
    }
  }

  Server& server(int s) { return servers_[static_cast<std::size_t>(s)]; }
  StageState& state(int stage) { return stages_[static_cast<std::size_t>(stage)]; }

  /// `rework_s`: work of a unit that was sent back; -1: the stage's own.
  void start(int s, std::uint32_t unit, double now_s, double rework_s = -1) {
    Server& server = this->server(s);
    if (server.stage > last_) return take_to_assembly(s, unit, now_s);
    const auto stage = static_cast<std::size_t>(server.stage);
    server.unit = unit;
    server.visit = visits_.empty() ? 0 : visits_[unit * model_.stage_count() + stage]++;
    if (server.idle) {
      server.idle = false;
      --stages_[stage].idle_servers;
    }
    if (const int group = model_.stages[stage].people; group >= 0) {
      server.rework_s = rework_s;
      ends_.set(s, EndTimes::never);
      people_.add(group, {now_s, server.stage, s, 0, trigger_});
      return;
    }
    begin_service(s, now_s, rework_s);
  }

  void begin_service(int s, double now_s, double rework_s) {
    Server& server = this->server(s);
    const auto stage = static_cast<std::size_t>(server.stage);
    const std::uint32_t unit = server.unit;
    const double work_s = rework_s >= 0 ? rework_s : work_s_[unit * model_.stage_count() + stage];
    const double repair_s = stops_.stop_s(stage, model_.random_stream_id[unit], server.visit, work_s);
    const bool changes = server.stage == model_.change_stage && server.visit == 0 && !model_.change_s.empty();
    const double change_s = changes ? model_.change_s[unit] : 0;
    const double stop_s = repair_s + change_s;
    const double end_s = now_s + (work_s + stop_s);
    run_.stages[stage].work_s += work_s;
    run_.stages[stage].stop_s += stop_s;
    if constexpr (traced) {
      server.activity = static_cast<std::int32_t>(trace_->activities.size());
      trace_->activities.push_back({unit, server.stage, rework_s >= 0 || server.visit > 0, now_s, end_s,
                                    work_s, repair_s, change_s, trigger_});
    }
    ends_.set(s, end_s);
  }

  /// When something happens next: a service ends, or a free first stage gets a unit that is complete.
  double next_s() const {
    const double end_s = ends_.end_s(ends_.first());
    return stages_[0].idle_servers > 0 ? std::min(end_s, entrance_.next_s()) : end_s;
  }

  /// Units that have become complete, into the first stage's free servers.
  void let_in(double now_s) {
    if (entrance_.next_s() > now_s) return;
    trigger_ = -1;
    for (int s = idle_server(0); s >= 0 && enter_line(s, now_s);) s = idle_server(0);
  }

  void give_out_people(double now_s) {
    people_.give_out(now_s, [&](const PeopleQueue::Ready& ready, std::int32_t trigger) {
      run_.stages[static_cast<std::size_t>(ready.stage)].no_person_s += now_s - ready.ready_s;
      trigger_ = trigger;
      begin_service(ready.server, now_s, server(ready.server).rework_s);
    });
  }

  /// False where no unit is complete.
  bool enter_line(int s, double now_s) {
    const std::optional<std::uint32_t> unit = entrance_.take(now_s);
    if (!unit) return false;
    run_.units[*unit].start_s = now_s;
    count_in_line(now_s, +1);
    start(s, *unit, now_s);
    return true;
  }

  /// The assembly line has the unit for a takt and then wants the next.
  void take_to_assembly(int s, std::uint32_t unit, double now_s) {
    leave_line(unit, now_s, false);
    server(s).unit = unit;
    begin_takt(s, now_s + model_.pull->takt_s, now_s);
  }

  void begin_takt(int s, double end_s, double now_s = 0) {
    Server& server = this->server(s);
    if (server.idle) {
      server.idle = false;
      --state(server.stage).idle_servers;
    }
    if constexpr (traced) {
      server.activity = static_cast<std::int32_t>(trace_->activities.size());
      trace_->activities.push_back(
          {server.unit, server.stage, false, now_s, end_s, end_s - now_s, 0, 0, trigger_});
    }
    ends_.set(s, end_s);
  }

  void leave_line(std::uint32_t unit, double now_s, bool scrapped) {
    run_.units[unit].end_s = now_s;
    run_.units[unit].scrapped = scrapped;
    run_.makespan_s = std::max(run_.makespan_s, now_s);
    count_in_line(now_s, -1);
    if constexpr (traced) trace_->leaving[unit] = trigger_;
  }

  void count_in_line(double now_s, int change) {
    if constexpr (traced) {
      trace_->units_in_line_s += in_line_ * (now_s - counted_s_);
      counted_s_ = now_s;
      in_line_ += change;
    }
  }

  int idle_server(int stage) {
    const StageState& state = this->state(stage);
    if (state.idle_servers == 0) return -1;
    int s = state.first_server;
    while (!server(s).idle) ++s;
    return s;
  }

  /// Hands the unit on; false where there is no room.
  bool hand_on(int stage, std::uint32_t unit, double now_s) {
    if (stage == last_ && !model_.pull) {
      leave_line(unit, now_s, false);
      return true;
    }
    if (const int next = idle_server(stage + 1); next >= 0) {
      start(next, unit, now_s);
      return true;
    }
    if (state(stage).buffer.full()) return false;
    state(stage).buffer.push(unit);
    return true;
  }

  void send_back(int from, std::uint32_t unit, double now_s) {
    ++run_.units[unit].reworks;
    const LineStage& stage = model_.stages[static_cast<std::size_t>(from)];
    if (const int s = idle_server(stage.rework_to); s >= 0)
      start(s, unit, now_s, stage.rework_s);
    else
      state(stage.rework_to).sent_back.push_back({unit, stage.rework_s});
  }

  void complete(int s) {
    Server& server = this->server(s);
    const double now_s = ends_.end_s(s);
    const int stage = server.stage;
    const std::uint32_t unit = server.unit;
    if constexpr (traced) trigger_ = server.activity;
    if (stage > last_) {
      pull(s, now_s);
      if (server.idle) ends_.set(s, EndTimes::never);
      return;
    }
    if (const int group = model_.stages[static_cast<std::size_t>(stage)].people; group >= 0)
      people_.release(group, server.activity);
    if (!stops_.right(static_cast<std::size_t>(stage), model_.random_stream_id[unit], server.visit)) {
      if (model_.stages[static_cast<std::size_t>(stage)].rework_to < 0)
        leave_line(unit, now_s, true);
      else
        send_back(stage, unit, now_s);
    } else if (!hand_on(stage, unit, now_s)) {
      server.blocked_from_s = now_s;
      state(stage).blocked.push(static_cast<std::uint32_t>(s));
      ends_.set(s, EndTimes::never);
      return;
    }
    pull(s, now_s);
    if (server.idle) ends_.set(s, EndTimes::never);
  }

  /// The next unit for a server that is free, and the units that then move up.
  void pull(int s, double now_s) {
    Server& server = this->server(s);
    StageState& state = this->state(server.stage);
    if (state.sent_back_taken < state.sent_back.size()) {
      const SentBack& again = state.sent_back[state.sent_back_taken++];
      start(s, again.unit, now_s, again.work_s);
    } else if (server.stage == 0) {
      if (!enter_line(s, now_s)) set_idle(server);
    } else if (StageState& before = this->state(server.stage - 1); !before.buffer.empty()) {
      start(s, before.buffer.pop(), now_s);
      if (!before.blocked.empty()) {
        const int freed = unblock(before, now_s);
        before.buffer.push(this->server(freed).unit);
        pull(freed, now_s);
      }
    } else if (!before.blocked.empty()) {
      const int freed = unblock(before, now_s);
      start(s, this->server(freed).unit, now_s);
      pull(freed, now_s);
    } else {
      set_idle(server);
    }
  }

  int unblock(StageState& state, double now_s) {
    const int s = static_cast<int>(state.blocked.pop());
    run_.stages[static_cast<std::size_t>(server(s).stage)].blocked_s += now_s - server(s).blocked_from_s;
    return s;
  }

  void set_idle(Server& server) {
    if (server.idle) return;
    server.idle = true;
    ++state(server.stage).idle_servers;
  }

  const LineModel& model_;
  StopTimes stops_;
  LineTrace* trace_;
  int last_;
  EndTimes ends_;
  Entrance entrance_;
  PeopleQueue people_;
  std::vector<double> drawn_s_;  ///< work where it varies
  const double* work_s_ = nullptr;
  std::vector<Server> servers_;
  std::vector<StageState> stages_;
  std::vector<std::uint16_t> visits_;
  LineRun run_;
  std::int32_t trigger_ = -1;
  int in_line_ = 0;
  double counted_s_ = 0;
};

}  // namespace

LineRun run_calendar(const LineModel& model, std::uint64_t seed) {
  return EventCalendar<false>(model, seed, nullptr).run();
}

LineRun run_calendar(const LineModel& model, std::uint64_t seed, LineTrace& trace) {
  trace = {};
  return EventCalendar<true>(model, seed, &trace).run();
}

}  // namespace seamtakt
