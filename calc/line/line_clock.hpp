#pragma once

#include <vector>

#include "line/line_model.hpp"
#include "line/line_result.hpp"
#include "line/line_run.hpp"
#include "line/orders.hpp"

namespace seamtakt {

/// Puts a run on the clock of its model's calendar, which it must have: readings beside the units' times,
/// orders that are late, and the units that aren't out by the end of the first day, those that wait among
/// them. `line` has the run's units, the figures over the runs and the makespan already.
///
/// line.due.late, one an order that is late in a run: fail where it is in half of the runs or more, else
/// warn.
void add_clock(const LineModel& model, const LineRun& run, const std::vector<Order>& orders,
               LineResult& line);

}  // namespace seamtakt
