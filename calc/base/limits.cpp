#include "base/limits.hpp"

#include "base/csv/csv.hpp"
#include "base/json/json_node.hpp"
#include "base/text/text_table.hpp"

namespace seamtakt {

std::string limits_text() {
  const JsonLimits json;
  const CsvLimits csv;
  TextTable table({{"limit", "", true}, {"at most", ""}, {"", "", true}});
  table.cell("JSON text").cell(json.bytes).cell("bytes");
  table.cell("JSON nesting").cell(json.depth).cell("levels");
  table.cell("JSON string").cell(json.string_bytes).cell("bytes");
  table.cell("JSON array or object").cell(json.members).cell("members");
  table.cell("JSON text").cell(json.values).cell("values");
  table.cell("CSV field").cell(csv.field_bytes).cell("bytes");
  table.cell("CSV record").cell(csv.record_bytes).cell("bytes");
  table.cell("CSV record").cell(csv.columns).cell("columns");
  return table.text();
}

}  // namespace seamtakt
