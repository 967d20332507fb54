#include "cell/timeline/balance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace seamtakt {

namespace {

constexpr double apart_mm = 1;

/// Extent of a seam's path.
struct Extent {
  Point_mm low{}, high{};
  double middle(std::size_t axis) const { return (low[axis] + high[axis]) / 2; }
};

Extent extent_of(const Seam& seam) {
  Extent extent{seam.path_mm.front(), seam.path_mm.front()};
  for (const Point_mm& point : seam.path_mm)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      extent.low[axis] = std::min(extent.low[axis], point[axis]);
      extent.high[axis] = std::max(extent.high[axis], point[axis]);
    }
  return extent;
}

struct Range {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  double width() const { return high - low; }
};

/// A side for each seam; all -1 where nothing separates them.
std::vector<int> sides_of(const std::vector<Extent>& extents) {
  Point_mm along{};
  std::array<Range, 3> middles;
  for (const Extent& extent : extents)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      along[axis] += extent.high[axis] - extent.low[axis];
      middles[axis].low = std::min(middles[axis].low, extent.middle(axis));
      middles[axis].high = std::max(middles[axis].high, extent.middle(axis));
    }
  const auto runs = static_cast<std::size_t>(std::max_element(along.begin(), along.end()) - along.begin());
  std::size_t axis = runs == 0 ? 1 : 0;
  for (std::size_t other = 0; other < 3; ++other)
    if (other != runs && middles[other].width() > middles[axis].width()) axis = other;
  if (middles[axis].width() < apart_mm) axis = runs;
  std::vector<int> sides(extents.size(), -1);
  if (middles[axis].width() < apart_mm) return sides;
  const double plane = (middles[axis].low + middles[axis].high) / 2;
  for (std::size_t i = 0; i < extents.size(); ++i) {
    const double off = extents[i].middle(axis) - plane;
    if (std::abs(off) >= apart_mm / 2) sides[i] = off > 0 ? 1 : 0;
  }
  return sides;
}

/// All seams that a seam comes after, directly or through others.
std::vector<int> all_before(const CellModel& model, int seam) {
  std::vector<int> found, open{seam};
  std::vector<char> seen(model.seams.size(), 0);
  while (!open.empty()) {
    const CellSeam& at = model.seams[open.back()];
    open.pop_back();
    for (int i = at.first_after; i < at.first_after + at.after_count; ++i) {
      const int before = model.after[i];
      if (seen[before]) continue;
      seen[before] = 1;
      found.push_back(before);
      open.push_back(before);
    }
  }
  return found;
}

/// The groups that a walk from a group along "has a member that comes after a member of" returns to.
std::set<int> circular_groups(const CellModel& model) {
  std::vector<std::set<int>> behind(model.groups.size());
  for (int i = 0; i < static_cast<int>(model.seams.size()); ++i)
    if (const int group = model.seams[i].group; group >= 0)
      for (const int before : all_before(model, i))
        if (const int other = model.seams[before].group; other >= 0 && other != group)
          behind[group].insert(other);
  std::set<int> circular;
  for (int root = 0; root < static_cast<int>(behind.size()); ++root) {
    std::set<int> seen;
    std::vector<int> open(behind[root].begin(), behind[root].end());
    while (!open.empty()) {
      const int at = open.back();
      open.pop_back();
      if (!seen.insert(at).second) continue;
      open.insert(open.end(), behind[at].begin(), behind[at].end());
    }
    if (seen.contains(root)) circular.insert(root);
  }
  return circular;
}

void add_awaited(CellModel& model) {
  for (int i = 0; i < static_cast<int>(model.seams.size()); ++i) {
    CellSeam& seam = model.seams[i];
    seam.first_awaited = static_cast<int>(model.awaited.size());
    if (seam.group < 0) continue;
    for (const int before : all_before(model, i))
      if (model.seams[before].group == seam.group) model.awaited.push_back(before);
    seam.awaited_count = static_cast<int>(model.awaited.size()) - seam.first_awaited;
  }
}

void say(Findings& findings, const char* rule, Severity severity, const std::string& where,
         Sentence sentence) {
  findings.push_back({rule, severity, where, {}, {}, "", std::move(sentence), "plan"});
}

}  // namespace

void add_balance_groups(const Weldment& weldment, CellModel& model, Findings& findings) {
  std::map<std::string_view, std::size_t> number_of;
  std::vector<std::vector<int>> members;
  const auto source = [&](int seam) -> const Seam& { return weldment.seams[model.seams[seam].source]; };
  for (int i = 0; i < static_cast<int>(model.seams.size()); ++i) {
    if (source(i).balance.empty()) continue;
    const auto [at, fresh] = number_of.try_emplace(source(i).balance, members.size());
    if (fresh) members.emplace_back();
    members[at->second].push_back(i);
  }
  for (const auto& seams : members) {
    std::vector<Extent> extents;
    for (const int seam : seams) extents.push_back(extent_of(source(seam)));
    const std::vector<int> sides = sides_of(extents);
    CellGroup group{model.seams[seams.front()].source, static_cast<int>(model.members.size()), 0};
    for (std::size_t i = 0; i < seams.size(); ++i) {
      if (sides[i] < 0) continue;
      model.seams[seams[i]].group = static_cast<int>(model.groups.size());
      model.seams[seams[i]].side = sides[i];
      model.members.push_back(seams[i]);
      ++group.member_count;
    }
    if (group.member_count > 0)
      model.groups.push_back(group);
    else if (seams.size() > 1)
      say(findings, "cycle.balance.no-sides", Severity::note, weldment.id + "/" + source(seams.front()).id,
          Sentence("cycle.balance.no-sides"_key, {{"group", source(seams.front()).balance}}));
  }
  for (const int group : circular_groups(model)) {
    const CellGroup& at = model.groups[group];
    for (int i = at.first_member; i < at.first_member + at.member_count; ++i) {
      model.seams[model.members[i]].group = -1;
      model.seams[model.members[i]].side = -1;
    }
    say(findings, "cycle.balance.circular", Severity::warn, weldment.id + "/" + weldment.seams[at.source].id,
        Sentence("cycle.balance.circular"_key, {{"group", weldment.seams[at.source].balance}}));
  }
  add_awaited(model);
}

Findings balance_findings(const Weldment& weldment, const CellModel& model,
                          const std::vector<BareMove>& moves) {
  Findings findings;
  std::set<int> said;
  for (const BalanceBreak& found : balance_breaks(model, moves)) {
    if (!said.insert(model.seams[found.seam].group).second) continue;
    const auto source = [&](int seam) -> const Seam& { return weldment.seams[model.seams[seam].source]; };
    say(findings, "cycle.balance.broken", Severity::warn, weldment.id + "/" + source(found.seam).id,
        Sentence("cycle.balance.broken"_key, {{"group", source(found.seam).balance},
                                              {"before", source(found.before).id},
                                              {"missed", source(found.missed).id}}));
  }
  return findings;
}

}  // namespace seamtakt
