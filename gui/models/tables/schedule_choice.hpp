#pragma once

#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// The schedules of a plan as a seam may be welded with them, those that fit first: where they may be used,
/// and what calc finds against the seam welded with each.
std::vector<GridColumn> schedule_choice_columns();
std::vector<ValueModel::Row> schedule_choice_rows(const Plan& plan, const Weldment& weldment,
                                                  const Seam& seam);
inline constexpr int chosen_id_column = 1;

}  // namespace seamtakt::desk
