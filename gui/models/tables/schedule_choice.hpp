#pragma once

#include "jobs/schedule_trial.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// The schedules of a plan as a seam may be welded with them: where they may be used, and, once they are
/// `tried` (nullptr: not yet), what calc finds against the seam welded with each, those that fit first.
std::vector<GridColumn> schedule_choice_columns();
std::vector<ValueModel::Row> schedule_choice_rows(const Plan& plan, const TriedSchedules* tried);
inline constexpr int chosen_id_column = 1;

}  // namespace seamtakt::desk
