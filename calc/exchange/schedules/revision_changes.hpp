#pragma once

#include <vector>

#include "exchange/sheets/cell.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// The revision of the same family that came before this one: the highest number below its own; of two with
/// the same number, the later one in the plan. nullptr where the plan has none.
const Schedule* earlier_revision(const Plan& plan, const Schedule& schedule);

/// A field that two revisions state differently.
struct RevisionChange {
  SheetCell field;          ///< "travel speed", "limits: current"
  SheetCell before, after;  ///< with units; "not stated"
};

/// All that is welded differently, in the order of the form: without ids, revision numbers, status and who
/// approved it.
std::vector<RevisionChange> revision_changes(const Schedule& before, const Schedule& after);

}  // namespace seamtakt
