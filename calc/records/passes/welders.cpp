#include "records/passes/welders.hpp"

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/time/log_time.hpp"
#include "records/log/table_fields.hpp"

namespace seamtakt {

bool is_calendar_date(const std::string& text) {
  LogTime time;
  return text.size() == 10 && text[4] == '-' && text[7] == '-' && parse_iso8601(text + "T00:00:00Z", time);
}

std::vector<Welder> parse_welders(std::string_view csv, const std::string& file) {
  const CsvTable table = parse_csv(csv, file);
  const std::size_t name = table.require("welder"), until = table.require("valid_until");
  const int from = table.column("valid_from");
  std::vector<Welder> welders;
  for (const CsvRow& row : table.rows) {
    Welder welder{row.fields[name], optional_field(row, from), row.fields[until]};
    if (welder.name.empty()) refuse_field(csv, table, row, name, "a welder's name or number"_word);
    if (!welder.valid_from.empty() && !is_calendar_date(welder.valid_from))
      refuse_field(csv, table, row, static_cast<std::size_t>(from), "a date such as 2026-11-25"_word);
    if (!is_calendar_date(welder.valid_until) || welder.valid_until < welder.valid_from)
      refuse_field(csv, table, row, until, "a date such as 2026-11-25, not before valid_from"_word);
    welders.push_back(std::move(welder));
  }
  return welders;
}

std::vector<Welder> load_welders(const std::string& path) {
  return parse_welders(read_file(path, largest_small_table), path);
}

}  // namespace seamtakt
