#pragma once

#include <vector>

#include "base/finding.hpp"
#include "cell/timeline/cell_model.hpp"
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// Balance groups: the seams of a group are begun alternately on its two sides, so that their shrinkage
/// balances.
///
/// Sides. Of the axes x, y, z of the drawing leave out the one along which the group's seams run most (sum of
/// their extents); of the others take the one along which the middles of the seams (of their extents) are
/// furthest apart. The plane half-way between the outermost middles separates the sides; a seam whose middle
/// is in it is free. Where the middles are less than 1 mm apart, the axis along the seams separates them;
/// where that doesn't either, there are no sides (`cycle.balance.no-sides`, a note).
///
/// Turns. In the order in which the group's seams are begun (first run of the first pass, all robots in one
/// list) each is on the other side than the one before, as long as the other side has a seam left that isn't
/// begun and doesn't come after (directly or through others) a seam of the group that isn't begun either. So
/// the last seams of the larger side follow one another, and `after` takes precedence over balance. Manual
/// seams and seams that no robot can weld don't count.
///
/// Groups whose members come after one another in a circle could block each other: they aren't alternated,
/// and `cycle.balance.circular` (warn) says so.
///
/// Source: common practice, no source (welds are placed alternately on both sides of the neutral axis).
void add_balance_groups(const Weldment& weldment, CellModel& model, Findings& findings);

/// A seam that was begun on the same side as the one before it although `missed` could have been.
struct BalanceBreak {
  int seam = 0, before = 0, missed = 0;
};

/// The breaks of a timeline, group by group in the order of time. Seams that begin together (within 1 ns)
/// count in the order that breaks the turns least often; of more than ten such, ten at a time.
std::vector<BalanceBreak> balance_breaks(const CellModel& model, const std::vector<BareMove>& moves);

/// The seams of a group in that order; those that never begin are left out.
std::vector<int> begun_by_turns(const CellModel& model, const CellGroup& group,
                                const std::vector<BareMove>& moves);

/// `cycle.balance.broken` (warn), one a group that the timeline doesn't hold.
Findings balance_findings(const Weldment& weldment, const CellModel& model,
                          const std::vector<BareMove>& moves);

}  // namespace seamtakt
