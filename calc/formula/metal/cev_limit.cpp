#include "formula/metal/cev_limit.hpp"

#include <functional>
#include <map>
#include <string>

#include "formula/reference_table.hpp"

namespace seamtakt {

namespace {

struct CevLimit {
  double cev_pct = 0, up_to_mm = 0;
};

using LimitBySteel = std::map<std::string, CevLimit, std::less<>>;

LimitBySteel read_limits() {
  const ReferenceTable table("steels.csv");
  LimitBySteel limits;
  for (std::size_t row = 0; row < table.size(); ++row) {
    if (!table.number_or_empty(row, "CEV_max_pct")) continue;
    const CevLimit limit{table.number_within(row, "CEV_max_pct", 0.1, 2), table.positive(row, "CEV_to_mm")};
    const std::string& id = table.text(row, "id");
    limits[id] = limit;
    limits[table.text(row, "standard") + ' ' + id] = limit;
  }
  return limits;
}

}  // namespace

std::optional<double> cev_limit_pct(std::string_view standard, double thickness_mm) {
  static const LimitBySteel limits = read_limits();
  const auto found = limits.find(standard);
  if (found == limits.end() || thickness_mm > found->second.up_to_mm) return std::nullopt;
  return found->second.cev_pct;
}

}  // namespace seamtakt
