#include <cmath>
#include <set>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/limits.hpp"
#include "records/log/table_fields.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt {

namespace {

constexpr double lowest_part_C = -40, highest_part_C = 200;

}  // namespace

std::vector<MeasuredPoint> parse_measured_points(std::string_view csv, const std::string& file) {
  const CsvTable table = parse_csv(csv, file);
  const std::size_t name = table.require("point");
  const std::array<std::size_t, 3> axes = {table.require("x_mm"), table.require("y_mm"),
                                           table.require("z_mm")};
  const int part = table.column("part_C");
  std::vector<MeasuredPoint> points;
  std::set<std::string> seen;
  for (const CsvRow& row : table.rows) {
    const auto number = [&](std::size_t column) {
      double value = 0;
      if (!parse_number(row.fields[column], value, table.delimiter != ','))
        refuse_field(csv, table, row, column, "a number"_word);
      return value;
    };
    MeasuredPoint point;
    point.id = row.fields[name];
    if (point.id.empty()) refuse_field(csv, table, row, name, "the point's name"_word);
    if (!seen.insert(point.id).second)
      throw InputError(field_place(csv, table, row, name),
                       Sentence("measure.point.twice"_key, {{"point", printable(point.id, 60)}}),
                       "each point once"_word);
    for (std::size_t axis = 0; axis < 3; ++axis) {
      point.at_mm[axis] = number(axes[axis]);
      if (!(std::abs(point.at_mm[axis]) <= largest_coordinate_mm))
        refuse_field(
            csv, table, row, axes[axis],
            Sentence("measure.point.coordinate"_key, {{"least", UnitValue{-largest_coordinate_mm, "mm", 7}},
                                                      {"most", UnitValue{largest_coordinate_mm, "mm", 7}}}));
    }
    if (!optional_field(row, part).empty()) {
      point.part_C = number(static_cast<std::size_t>(part));
      if (point.part_C < lowest_part_C || point.part_C > highest_part_C)
        refuse_field(csv, table, row, static_cast<std::size_t>(part),
                     Sentence("measure.point.temperature"_key, {{"least", UnitValue{lowest_part_C, "C"}},
                                                                {"most", UnitValue{highest_part_C, "C"}}}));
    }
    points.push_back(point);
  }
  return points;
}

std::vector<MeasuredPoint> load_measured_points(const std::string& path) {
  return parse_measured_points(read_file(path, largest_small_table), path);
}

}  // namespace seamtakt
