#pragma once

#include <string>

#include "exchange/lists/list_columns.hpp"
#include "exchange/sheets/sheet.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A plan's seams or schedules as the table that import_list() reads again without a change: a row each, all
/// columns of list_columns(), numbers in the plan file's units, lists as "8; 12". `weldment`: of the seams
/// alone that are its own; empty: all.
Sheet list_sheet(const Plan& plan, ListKind kind, const std::string& weldment = {});

/// Refuses a text that a workbook's cell can't hold, 32,767 characters: it would be cut. InputError naming
/// the row's id and the column.
void check_workbook_cells(const Sheet& list);

}  // namespace seamtakt
