#pragma once

#include "models/tables/value_model.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::desk {

/// One row a schedule and logged quantity: its scatter, and its capability against its limits.
std::vector<GridColumn> statistics_columns();
std::vector<ValueModel::Row> statistics_rows(const AuditResult& audit);

/// A quantity of the statistics ("heat_input_kJ_mm") in the user's language.
QString quantity_word(std::string_view quantity);
QString runs_rule_word(RunsRule rule);

/// The limits that a schedule sets for such a quantity.
std::optional<Interval> limits_of(const Schedule* schedule, std::string_view quantity);

}  // namespace seamtakt::desk
