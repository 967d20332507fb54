#include "formula/metal/material_group.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {

namespace {

/// Looked up for each pass: by a view, so that no text is copied.
using GroupBySteel = std::map<std::string, std::string, std::less<>>;

GroupBySteel read_steels() {
  const ReferenceTable table("steels.csv");
  GroupBySteel groups;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const std::string &id = table.text(row, "id"), &group = table.text(row, "group");
    groups[id] = group;
    groups[table.text(row, "standard") + ' ' + id] = group;
  }
  return groups;
}

struct CoveredGroup {
  std::string tested, used;
  bool is_yield_limited;
};

std::vector<CoveredGroup> read_covered() {
  const ReferenceTable table("qualified_groups.csv");
  std::vector<CoveredGroup> rows;
  for (std::size_t row = 0; row < table.size(); ++row)
    rows.push_back({table.text(row, "tested_group"), table.text(row, "used_group"),
                    table.number_within(row, "yield_limited", 0, 1) != 0});
  return rows;
}

const std::vector<CoveredGroup>& covered_groups() {
  static const std::vector<CoveredGroup> rows = read_covered();
  return rows;
}

std::string_view main_group(std::string_view group) {
  return group.substr(0, group.find('.'));
}

std::string_view sub_group(std::string_view group) {
  const std::size_t dot = group.find('.');
  return dot == std::string_view::npos ? "1" : group.substr(dot + 1);
}

/// Steels with improved resistance to corrosion: their group has any yield strength.
constexpr std::string_view any_yield_group = "1.4";

}  // namespace

std::string_view material_group_of(std::string_view standard) {
  static const GroupBySteel groups = read_steels();
  const auto found = groups.find(standard);
  return found == groups.end() ? std::string_view() : std::string_view(found->second);
}

GroupCover group_cover(std::string_view tested, std::string_view used) {
  if (tested == used) return GroupCover::covered;
  const auto& rows = covered_groups();
  const auto is_of_test = [&](const CoveredGroup& row) { return row.tested == main_group(tested); };
  if (std::none_of(rows.begin(), rows.end(), is_of_test)) return GroupCover::unknown;
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const CoveredGroup& each) {
    return is_of_test(each) && each.used == main_group(used);
  });
  if (row == rows.end()) return GroupCover::not_covered;
  if (!row->is_yield_limited) return GroupCover::covered;
  if (tested == any_yield_group || used == any_yield_group) return GroupCover::unknown;
  return sub_group(used) <= sub_group(tested) ? GroupCover::covered : GroupCover::not_covered;
}

}  // namespace seamtakt
