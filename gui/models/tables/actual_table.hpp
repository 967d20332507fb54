#pragma once

#include "models/tables/value_model.hpp"
#include "records/actual/cycle_actual.hpp"

namespace seamtakt::desk {

/// Units of imported logs beside their planned cycles: one row a unit, then one row an arc or a gap.
std::vector<GridColumn> actual_unit_grid();
std::vector<ValueModel::Row> actual_unit_grid_rows(const CycleActual& actual);
std::vector<GridColumn> actual_step_grid();
std::vector<ValueModel::Row> actual_step_grid_rows(const UnitActual& unit);

}  // namespace seamtakt::desk
