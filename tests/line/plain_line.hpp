#pragma once

#include <algorithm>
#include <deque>
#include <optional>
#include <vector>

#include "line/line_model.hpp"

namespace seamtakt::test {

/// A line simulated without the program's calendar, as plainly as the rules can be written: look for the next
/// end, then let units move one by one, from the last stage to the first, until nothing moves any more.
class PlainLine {
 public:
  struct Unit {
    double start_s = 0, end_s = 0;
    bool scrapped = false;
    int reworks = 0;
  };

  PlainLine(const LineModel& model, std::uint64_t seed) : model_(model), dice_(model, seed) {
    const std::size_t stages = model.stages.size();
    units.resize(model.random_stream_id.size());
    blocked_s.assign(stages, 0);
    visits_.assign(units.size() * stages, 0);
    servers_.resize(stages);
    for (std::size_t j = 0; j < stages; ++j)
      servers_[j].resize(static_cast<std::size_t>(model.stages[j].servers));
    buffers_.resize(stages);
    sent_back_.resize(stages);
    for (std::size_t u = 0; u < units.size(); ++u) outside_.push_back(u);
    settle(0);
    while (const std::optional<double> next_s = earliest_end()) finish_one(*next_s);
  }

  std::vector<Unit> units;
  std::vector<double> blocked_s;

 private:
  struct Server {
    std::optional<std::size_t> unit;
    double end_s = 0;
    bool done = false;  ///< and can't get rid of its unit
    std::uint32_t visit = 0;
    long turn = 0;  ///< which of the blocked ones was first
  };

  struct Again {
    std::size_t unit = 0;
    double work_s = 0;
  };

  std::optional<double> earliest_end() const {
    std::optional<double> earliest;
    for (const auto& stage : servers_)
      for (const Server& server : stage)
        if (server.unit && !server.done && (!earliest || server.end_s < *earliest)) earliest = server.end_s;
    return earliest;
  }

  /// One at a time: of those that end now, of the last stage the first server.
  void finish_one(double now_s) {
    for (std::size_t j = servers_.size(); j-- > 0;)
      for (Server& server : servers_[j])
        if (server.unit && !server.done && server.end_s == now_s) {
          judge(j, server, now_s);
          settle(now_s);
          return;
        }
  }

  void judge(std::size_t j, Server& server, double now_s) {
    const std::size_t unit = *server.unit;
    if (dice_.right(j, model_.random_stream_id[unit], server.visit)) {
      server.done = true;
      server.turn = ++turns_;
      return;
    }
    if (model_.stages[j].rework_to < 0) {
      units[unit].scrapped = true;
      units[unit].end_s = now_s;
    } else {
      send_back(j, unit, now_s);
    }
    server.unit.reset();
  }

  /// A server that is free already takes it; the one that found it isn't yet.
  void send_back(std::size_t j, std::size_t unit, double now_s) {
    ++units[unit].reworks;
    const auto to = static_cast<std::size_t>(model_.stages[j].rework_to);
    if (Server* free = idle(to))
      begin(to, *free, unit, now_s, model_.stages[j].rework_s);
    else
      sent_back_[to].push_back({unit, model_.stages[j].rework_s});
  }

  void settle(double now_s) {
    for (bool moved = true; moved;) {
      moved = false;
      for (std::size_t j = servers_.size(); j-- > 0 && !moved;) moved = hand_over(j, now_s) || take(j, now_s);
    }
  }

  /// The unit of the longest waiting server of stage j goes to where there is room.
  bool hand_over(std::size_t j, double now_s) {
    Server* longest = nullptr;
    for (Server& server : servers_[j])
      if (server.done && (!longest || server.turn < longest->turn)) longest = &server;
    if (!longest) return false;
    const bool last = j + 1 == servers_.size();
    if (last) {
      units[*longest->unit].end_s = now_s;
    } else if (buffers_[j].empty() && sent_back_[j + 1].empty() && idle(j + 1)) {
      begin(j + 1, *idle(j + 1), *longest->unit, now_s, -1);
    } else if (buffers_[j].size() < static_cast<std::size_t>(model_.stages[j].buffer_after)) {
      buffers_[j].push_back(*longest->unit);
    } else {
      return false;
    }
    blocked_s[j] += now_s - longest->end_s;
    longest->unit.reset();
    longest->done = false;
    return true;
  }

  bool take(std::size_t j, double now_s) {
    Server* server = idle(j);
    if (!server) return false;
    if (!sent_back_[j].empty()) {
      const Again again = sent_back_[j].front();
      sent_back_[j].pop_front();
      begin(j, *server, again.unit, now_s, again.work_s);
      return true;
    }
    std::deque<std::size_t>& fresh = j == 0 ? outside_ : buffers_[j - 1];
    if (fresh.empty()) return false;
    const std::size_t unit = fresh.front();
    fresh.pop_front();
    if (j == 0) units[unit].start_s = now_s;
    begin(j, *server, unit, now_s, -1);
    return true;
  }

  Server* idle(std::size_t j) {
    for (Server& server : servers_[j])
      if (!server.unit) return &server;
    return nullptr;
  }

  void begin(std::size_t j, Server& server, std::size_t unit, double now_s, double again_s) {
    const std::size_t place = unit * servers_.size() + j;
    const double work_s = again_s >= 0 ? again_s : model_.work_s[place];
    server.unit = unit;
    server.done = false;
    server.visit = visits_[place]++;
    const bool changes =
        static_cast<int>(j) == model_.change_stage && server.visit == 0 && !model_.change_s.empty();
    const double stop_s = dice_.stop_s(j, model_.random_stream_id[unit], server.visit, work_s) +
                          (changes ? model_.change_s[unit] : 0);
    server.end_s = now_s + (work_s + stop_s);
  }

  const LineModel& model_;
  StopTimes dice_;
  std::vector<std::uint32_t> visits_;
  std::vector<std::vector<Server>> servers_;
  std::vector<std::deque<std::size_t>> buffers_;
  std::vector<std::deque<Again>> sent_back_;
  std::deque<std::size_t> outside_;
  long turns_ = 0;
};

}  // namespace seamtakt::test
