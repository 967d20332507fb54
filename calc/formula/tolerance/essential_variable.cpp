#include "formula/tolerance/essential_variable.hpp"

#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {

namespace {

struct VariableRow {
  std::string document, quantity;
  AllowedChange allowed;
};

std::vector<VariableRow> read_variable_rows() {
  const ReferenceTable table("essential_variables.csv");
  std::vector<VariableRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back({table.text(row, "basis_document"),
                    table.text(row, "quantity"),
                    {table.number_within(row, "decrease_pct", 0, 100),
                     table.number_within(row, "increase_pct", 0, 1000)}});
  return rows;
}

}  // namespace

std::optional<AllowedChange> allowed_change(std::string_view document, std::string_view quantity) {
  static const std::vector<VariableRow> rows = read_variable_rows();
  for (const VariableRow& row : rows)
    if (row.document == document && row.quantity == quantity) return row.allowed;
  return std::nullopt;
}

}  // namespace seamtakt
