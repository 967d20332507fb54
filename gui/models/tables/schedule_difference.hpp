#pragma once

#include "models/tables/value_model.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

/// Columns and rows of a comparison of two schedules, field by field: those that differ, in the order of the
/// form.
std::vector<GridColumn> difference_columns();
std::vector<ValueModel::Row> difference_rows(const Schedule& one, const Schedule& other);

}  // namespace seamtakt::desk
