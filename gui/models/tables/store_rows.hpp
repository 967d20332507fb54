#pragma once

#include "jobs/store_job.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// Units of a store: state, verdicts, what is missing or open.
std::vector<GridColumn> store_unit_columns();
std::vector<ValueModel::Row> store_unit_rows(const std::vector<UnitStatus>& units);

/// What isn't as it was written.
std::vector<GridColumn> problem_columns();
std::vector<ValueModel::Row> problem_rows(const VerifyReport& report);

}  // namespace seamtakt::desk
