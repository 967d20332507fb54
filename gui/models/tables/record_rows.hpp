#pragma once

#include "models/tables/value_model.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::desk {

/// Tables of imported logs: one row a unit, one row a pass.
std::vector<GridColumn> unit_columns();
std::vector<ValueModel::Row> unit_rows(const AuditResult& audit);

std::vector<GridColumn> record_columns();
ValueModel::Row record_row(const PassRecord& record);

/// A verdict in the user's language, and the severity whose mark it takes.
QString verdict_word(const std::optional<Verdict>& verdict);
std::optional<Severity> verdict_severity(const std::optional<Verdict>& verdict);

}  // namespace seamtakt::desk
