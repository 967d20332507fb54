#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "timeline_check.hpp"

namespace seamtakt::test {

namespace {

using Vector = std::array<double, 3>;

struct Member {
  const Seam* seam;
  Vector middle{}, length{};
  double begun_s = INFINITY;
  bool high = false, sided = false;
};

void measure(Member& member) {
  for (std::size_t k = 0; k < 3; ++k) {
    double low = INFINITY, high = -INFINITY;
    for (const Point_mm& point : member.seam->path_mm) {
      low = std::min(low, point[k]);
      high = std::max(high, point[k]);
    }
    member.middle[k] = 0.5 * (low + high);
    member.length[k] = high - low;
  }
}

double spread(const std::vector<Member>& members, std::size_t k) {
  double low = INFINITY, high = -INFINITY;
  for (const Member& member : members) {
    low = std::min(low, member.middle[k]);
    high = std::max(high, member.middle[k]);
  }
  return high - low;
}

/// Across the seams, where they are furthest apart; along them only where nothing else separates them.
void part(std::vector<Member>& members) {
  Vector total{};
  for (Member& member : members) {
    measure(member);
    for (std::size_t k = 0; k < 3; ++k) total[k] += member.length[k];
  }
  std::size_t along = 0;
  for (std::size_t k = 1; k < 3; ++k)
    if (total[k] > total[along]) along = k;
  std::size_t across = along;
  double widest = -1;
  for (std::size_t k = 0; k < 3; ++k)
    if (k != along && spread(members, k) > widest) {
      widest = spread(members, k);
      across = k;
    }
  if (widest < 1) across = along;
  if (spread(members, across) < 1) return;
  double low = INFINITY, high = -INFINITY;
  for (const Member& member : members) {
    low = std::min(low, member.middle[across]);
    high = std::max(high, member.middle[across]);
  }
  for (Member& member : members) {
    const double off = member.middle[across] - 0.5 * (low + high);
    member.sided = std::abs(off) >= 0.5;
    member.high = off > 0;
  }
}

class BalanceChecker {
 public:
  BalanceChecker(const Weldment& weldment, const CycleResult& cycle, const std::vector<std::string>& left_out)
      : weldment_(weldment), cycle_(cycle), left_out_(left_out.begin(), left_out.end()) {}

  std::vector<std::string> check() {
    std::map<std::string, std::vector<Member>> groups;
    for (const Seam& seam : weldment_.seams)
      if (!seam.balance.empty() && seam.by == "robot" && !left_out_.contains(seam.id))
        groups[seam.balance].push_back({&seam, {}, {}, begun_s(seam), false, false});
    for (const Finding& finding : cycle_.findings)
      if (finding.rule == "cycle.balance.circular")
        groups.erase(find_by_id(weldment_.seams, finding.where.substr(finding.where.find('/') + 1))->balance);
    for (auto& [name, members] : groups) {
      part(members);
      std::erase_if(members, [](const Member& member) { return !member.sided; });
      check_group(name, members);
    }
    return std::move(broken_);
  }

 private:
  double begun_s(const Seam& seam) const {
    double begun = INFINITY;
    for (const Move& move : cycle_.moves)
      if (move.seam == seam.id && move.pass == 1 &&
          (move.kind == MoveKind::start || move.kind == MoveKind::arc))
        begun = std::min(begun, move.start_s);
    return begun;
  }

  bool comes_after(const Seam& seam, const std::string& other) const {
    for (const std::string& id : seam.after) {
      if (left_out_.contains(id) || find_by_id(weldment_.seams, id)->by != "robot") continue;
      if (id == other || comes_after(*find_by_id(weldment_.seams, id), other)) return true;
    }
    return false;
  }

  /// Whether the waiting seams, begun when they were, can be read as turns; of seams begun together in any
  /// order. Violations of the first reading go to `broken`.
  bool by_turns(const std::vector<const Member*>& waiting, const Member* last,
                std::vector<std::string>& broken) {
    if (waiting.empty()) return true;
    double first_s = INFINITY;
    for (const Member* member : waiting) first_s = std::min(first_s, member->begun_s);
    for (const Member* next : waiting) {
      if (next->begun_s > first_s + 1e-9) continue;
      const Member* missed = last && next->high == last->high ? could_have_been(waiting, *next) : nullptr;
      if (missed) {
        broken.push_back(next->seam->id + " after " + last->seam->id + " on one side, and " +
                         missed->seam->id + " could have been");
        continue;
      }
      std::vector<const Member*> rest = waiting;
      std::erase(rest, next);
      if (by_turns(rest, next, broken)) return true;
    }
    return false;
  }

  const Member* could_have_been(const std::vector<const Member*>& waiting, const Member& next) const {
    for (const Member* other : waiting) {
      bool waits = other->high == next.high;
      for (const Member* third : waiting) waits = waits || comes_after(*other->seam, third->seam->id);
      if (!waits) return other;
    }
    return nullptr;
  }

  void check_group(const std::string& name, const std::vector<Member>& members) {
    std::vector<const Member*> waiting;
    for (const Member& member : members) waiting.push_back(&member);
    std::vector<std::string> broken;
    if (!by_turns(waiting, nullptr, broken)) broken_.push_back("group " + name + ": " + broken.front());
  }

  const Weldment& weldment_;
  const CycleResult& cycle_;
  std::set<std::string> left_out_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> check_balance(const Weldment& weldment, const CycleResult& cycle,
                                       const std::vector<std::string>& left_out) {
  return BalanceChecker(weldment, cycle, left_out).check();
}

}  // namespace seamtakt::test
