#pragma once

#include <string>

#include "cell/timeline/cell_model.hpp"

namespace seamtakt::test {

/// One of 83 small cells for the outside solver: 5 to 9 seams, 1 or 2 robots, each with some of: reach,
/// precedence, directions, zones, orientations, cooling between passes, wire changes, torch service, balance
/// groups. The last 23 are of the same kinds and have tracks and ways over a clearance, a load orientation
/// with turns by axes, and a distance that the torches of two robots keep. All times are whole tenths of a
/// second (air moves and turns rounded up, so that a detour is never shorter).
CellModel oracle_cell(int number);
inline constexpr int plain_oracle_cells = 60, oracle_cells = 83;

/// What the cell has, in words, e.g. "2 robots, zones".
std::string oracle_kind(int number);

/// The cell as data of oracle/cell.mzn; `limit_s` is the makespan of a timeline that is known.
std::string minizinc_data(const CellModel& model, double limit_s);

}  // namespace seamtakt::test
