#pragma once

#include "models/tables/value_model.hpp"
#include "plan/fit/fit.hpp"

namespace seamtakt::desk {

/// What a fit changes, a row a seam: each value before and after, and what holds it back. `only_existing`:
/// only seams that take a schedule of the plan as it stands are changed.
std::vector<GridColumn> fit_columns();
std::vector<ValueModel::Row> fit_rows(const Plan& plan, const FitResult& result, bool only_existing);

/// How many seams the fit changes.
int changed_seams(const FitResult& result, bool only_existing);

}  // namespace seamtakt::desk
