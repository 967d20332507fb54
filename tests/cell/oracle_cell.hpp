#pragma once

#include <string>

#include "cell/timeline/cell_model.hpp"

namespace seamtakt::test {

/// One of sixty small cells for the outside solver: 5 to 9 seams, 1 or 2 robots, each with some of: reach,
/// precedence, directions, zones, orientations, cooling between passes, wire changes, torch service, balance
/// groups. All times are whole tenths of a second (air moves rounded up, so that a detour is never shorter).
CellModel oracle_cell(int number);
inline constexpr int oracle_cells = 60;

/// What the cell has, in words, e.g. "2 robots, zones".
std::string oracle_kind(int number);

/// The cell as data of oracle/cell.mzn; `limit_s` is the makespan of a timeline that is known.
std::string minizinc_data(const CellModel& model, double limit_s);

}  // namespace seamtakt::test
