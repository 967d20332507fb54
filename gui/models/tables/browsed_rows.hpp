#pragma once

#include "models/tables/value_model.hpp"
#include "records/keep/record_browse.hpp"

namespace seamtakt::desk {

/// Stored passes and manual seams that were looked for, one row each.
std::vector<GridColumn> browsed_columns();
std::vector<ValueModel::Row> browsed_rows(const std::vector<BrowsedRecord>& records);

/// "Record 70: AE-26-0101, BD/S05, pass 1": what a form is about.
QString browsed_text(const BrowsedRecord& record);

}  // namespace seamtakt::desk
