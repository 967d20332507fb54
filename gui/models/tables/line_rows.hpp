#pragma once

#include "line/line_result.hpp"
#include "models/tables/value_model.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

std::vector<GridColumn> stage_columns();
std::vector<ValueModel::Row> stage_rows(const Line& line);

std::vector<GridColumn> line_unit_columns();
/// Released units in their order, then those that wait.
std::vector<ValueModel::Row> line_unit_rows(const LineResult& line);

std::vector<GridColumn> cure_columns();
std::vector<ValueModel::Row> cure_rows(const LineResult& line);

}  // namespace seamtakt::desk
