#include <algorithm>
#include <array>
#include <limits>
#include <optional>

#include "cell/timeline/balance.hpp"

namespace seamtakt {

namespace {

constexpr double together_s = 1e-9;
constexpr std::size_t most_together = 10;  ///< 2^10 subsets; more robots than that don't begin at once

/// When each seam's first run begins.
std::vector<double> begun_s(const CellModel& model, const std::vector<BareMove>& moves) {
  std::vector<double> begun(model.seams.size(), std::numeric_limits<double>::infinity());
  for (const BareMove& move : moves)
    if (move.run >= 0 && move.pass == 1) begun[move.seam] = std::min(begun[move.seam], move.start_s);
  return begun;
}

/// One way to count the seams begun so far in a row, and what it breaks.
struct Row {
  std::vector<int> seams;
  std::vector<BalanceBreak> breaks;
};

/// The row with the fewest breaks for each side of its last seam (and for the empty row); later breaks depend
/// on nothing else of the past.
using Rows = std::array<std::optional<Row>, 3>;

void keep_fewest(std::optional<Row>& kept, Row row) {
  if (!kept || row.breaks.size() < kept->breaks.size()) kept = std::move(row);
}

/// The seams of one group, taken away in the order in which they are begun.
class GroupRow {
 public:
  GroupRow(const CellModel& model, const CellGroup& group, const std::vector<double>& begun)
      : model_(model), begun_(begun) {
    for (int i = group.first_member; i < group.first_member + group.member_count; ++i)
      if (const int seam = model.members[i];
          model.seams[seam].group >= 0 && begun[seam] < Scheduler::impossible)
        left_.push_back(seam);
    std::stable_sort(left_.begin(), left_.end(), [&](int a, int b) { return begun_[a] < begun_[b]; });
  }

  Row fewest_breaks() {
    rows_[0] = Row{};
    while (!left_.empty()) take(begun_together());
    const auto fewest = std::min_element(rows_.begin(), rows_.end(), [](const auto& a, const auto& b) {
      return a && (!b || a->breaks.size() < b->breaks.size());
    });
    return **fewest;
  }

 private:
  std::size_t begun_together() const {
    std::size_t count = 1;
    while (count < std::min(left_.size(), most_together) &&
           begun_[left_[count]] <= begun_[left_.front()] + together_s)
      ++count;
    return count;
  }

  /// Takes the first `count` seams in every order, by the subsets taken already.
  void take(std::size_t count) {
    std::vector<Rows> rows(std::size_t{1} << count);
    rows[0] = std::move(rows_);
    for (std::size_t taken = 0; taken + 1 < rows.size(); ++taken)
      for (const std::optional<Row>& row : rows[taken])
        for (std::size_t i = 0; row && i < count; ++i)
          if (!(taken >> i & 1))
            keep_fewest(rows[taken | std::size_t{1} << i][side_of(left_[i]) + 1],
                        grown(*row, left_[i], taken));
    rows_ = std::move(rows.back());
    left_.erase(left_.begin(), left_.begin() + static_cast<std::ptrdiff_t>(count));
  }

  Row grown(const Row& row, int seam, std::size_t taken) const {
    Row next = row;
    next.seams.push_back(seam);
    if (!row.seams.empty() && side_of(row.seams.back()) == side_of(seam))
      if (const int missed = missed_on_other_side(seam, taken); missed >= 0)
        next.breaks.push_back({seam, row.seams.back(), missed});
    return next;
  }

  /// A seam of the other side that could have been begun in place of this one; -1 where there is none.
  int missed_on_other_side(int seam, std::size_t taken) const {
    const auto waits = [&](std::size_t i) { return i >= most_together || !(taken >> i & 1); };
    for (std::size_t i = 0; i < left_.size(); ++i) {
      if (!waits(i) || side_of(left_[i]) == side_of(seam)) continue;
      bool blocked = false;
      for (std::size_t k = 0; k < left_.size(); ++k)
        blocked = blocked || (waits(k) && comes_after(left_[i], left_[k]));
      if (!blocked) return left_[i];
    }
    return -1;
  }

  bool comes_after(int seam, int other) const {
    const auto awaited = model_.awaited.begin() + model_.seams[seam].first_awaited;
    return std::find(awaited, awaited + model_.seams[seam].awaited_count, other) !=
           awaited + model_.seams[seam].awaited_count;
  }

  std::size_t side_of(int seam) const { return static_cast<std::size_t>(model_.seams[seam].side); }

  const CellModel& model_;
  const std::vector<double>& begun_;
  std::vector<int> left_;
  Rows rows_;
};

}  // namespace

std::vector<BalanceBreak> balance_breaks(const CellModel& model, const std::vector<BareMove>& moves) {
  const std::vector<double> begun = begun_s(model, moves);
  std::vector<BalanceBreak> breaks;
  for (const CellGroup& group : model.groups)
    for (const BalanceBreak& found : GroupRow(model, group, begun).fewest_breaks().breaks)
      breaks.push_back(found);
  return breaks;
}

std::vector<int> begun_by_turns(const CellModel& model, const CellGroup& group,
                                const std::vector<BareMove>& moves) {
  const std::vector<double> begun = begun_s(model, moves);
  return GroupRow(model, group, begun).fewest_breaks().seams;
}

}  // namespace seamtakt
