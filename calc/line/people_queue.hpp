#pragma once

#include <cstdint>
#include <queue>
#include <tuple>
#include <vector>

#include "line/line_model.hpp"

namespace seamtakt {

/// Services that are ready but for a person, by group. A person goes to the service that has been ready
/// longest; of equal ones to that of the later stage, then to the one that came first. People are given out
/// when nothing else happens any more at a moment, so that the rule sees all that are ready then.
class PeopleQueue {
 public:
  struct Ready {
    double ready_s = 0;
    int stage = 0, server = 0;
    std::uint64_t turn = 0;
    std::int32_t trigger = -1;  ///< by whose end it became ready

    bool after(const Ready& other) const {
      return std::tuple(ready_s, -stage, turn) > std::tuple(other.ready_s, -other.stage, other.turn);
    }
  };

  explicit PeopleQueue(const std::vector<LinePeople>& groups) {
    for (const LinePeople& group : groups) groups_.push_back({group.count, {}, -1});
  }

  void add(int group, Ready ready) {
    ready.turn = turns_++;
    of(group).ready.push(ready);
  }
  /// A person is free again, by the end of this activity.
  void release(int group, std::int32_t activity) {
    ++of(group).free;
    of(group).freed_by = activity;
  }
  /// Calls begin(ready, trigger) for each service that a person goes to now.
  template <class Begin>
  void give_out(double now_s, const Begin& begin) {
    for (Group& group : groups_)
      for (; group.free > 0 && !group.ready.empty(); --group.free) {
        const Ready next = group.ready.top();
        group.ready.pop();
        begin(next, next.ready_s < now_s ? group.freed_by : next.trigger);
      }
  }

 private:
  struct Later {
    bool operator()(const Ready& a, const Ready& b) const { return a.after(b); }
  };
  struct Group {
    int free = 0;
    std::priority_queue<Ready, std::vector<Ready>, Later> ready;
    std::int32_t freed_by = -1;
  };
  Group& of(int group) { return groups_[static_cast<std::size_t>(group)]; }

  std::vector<Group> groups_;
  std::uint64_t turns_ = 0;
};

}  // namespace seamtakt
