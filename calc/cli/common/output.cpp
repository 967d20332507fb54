#include "cli/common/output.hpp"

#include <algorithm>

#include "base/units/units.hpp"

namespace seamtakt::cli {

void write_provenance(JsonWriter& json, const Provenance& provenance) {
  json.key("provenance").begin_object();
  json.member("program", "seamtakt " + provenance.program_version);
  json.member("catalogue_sha256", provenance.catalogue_sha256);
  if (!provenance.plan_file.empty())
    json.member("plan", provenance.plan_file).member("plan_sha256", provenance.plan_sha256);
  json.end_object();
}

std::string rounded_pair(const std::array<double, 2>& pair, int digits) {
  return rounded_text(pair[0], digits) + " to " + rounded_text(pair[1], digits);
}

void add_cell(TextTable& table, const ColumnValue& value, int digits) {
  const auto add_count = [&](auto count) {
    if (digits > 0)
      table.cell(count);
    else
      table.cell(std::to_string(count));
  };
  if (const double* number = std::get_if<double>(&value))
    table.cell(*number);
  else if (const int* whole = std::get_if<int>(&value))
    add_count(*whole);
  else if (const auto* count = std::get_if<std::uint64_t>(&value))
    add_count(*count);
  else if (const auto* text = std::get_if<std::string_view>(&value))
    table.cell(*text);
  else if (const bool* truth = std::get_if<bool>(&value))
    table.cell(*truth ? "yes" : "no");
  else if (const auto* pair = std::get_if<std::array<double, 2>>(&value))
    table.cell(rounded_pair(*pair, digits));
  else
    table.cell(std::optional<double>());
}

std::string findings_text(const Findings& findings) {
  if (findings.empty()) return "No findings.\n";
  std::vector<const Finding*> sorted;
  for (const Finding& finding : findings) sorted.push_back(&finding);
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Finding* a, const Finding* b) { return a->severity > b->severity; });
  TextTable table(
      {{"Severity", "", true, 0}, {"Where", "", true, 0}, {"Finding", "", true, 0}, {"Rule", "", true, 0}});
  for (const Finding* finding : sorted)
    table.cell(to_string(finding->severity)).cell(finding->where).cell(finding->text).cell(finding->rule);
  return table.text();
}

std::string findings_count(const Findings& findings) {
  std::size_t counts[3] = {};
  for (const Finding& finding : findings) ++counts[static_cast<std::size_t>(finding.severity)];
  return std::to_string(counts[2]) + " fail, " + std::to_string(counts[1]) + " warn, " +
         std::to_string(counts[0]) + " note";
}

}  // namespace seamtakt::cli
