#include "formula/heat/process_efficiency.hpp"

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

std::vector<ProcessEfficiency> read_efficiencies() {
  const ReferenceTable table("processes.csv");
  std::vector<ProcessEfficiency> list;
  for (std::size_t row = 0; row < table.size(); ++row) {
    if (table.text(row, "thermal_efficiency").empty()) continue;
    const double k = table.positive(row, "thermal_efficiency");
    if (k > 1) table.refuse(row, "thermal_efficiency", "a number above 0, at most 1");
    list.push_back({table.text(row, "number"), k});
  }
  return list;
}

}  // namespace

const std::vector<ProcessEfficiency>& process_efficiencies() {
  static const std::vector<ProcessEfficiency> list = read_efficiencies();
  return list;
}

std::optional<double> thermal_efficiency_of(std::string_view process) {
  for (const ProcessEfficiency& known : process_efficiencies())
    if (known.process == process) return known.thermal_efficiency;
  return std::nullopt;
}

}  // namespace seamtakt
