#include <cmath>
#include <set>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/limits.hpp"
#include "records/log/table_fields.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt {

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
        refuse_field(csv, table, row, column, "a number");
      return value;
    };
    MeasuredPoint point;
    point.id = row.fields[name];
    if (point.id.empty()) refuse_field(csv, table, row, name, "the point's name");
    if (!seen.insert(point.id).second)
      throw InputError(field_place(csv, table, row, name),
                       "the point \"" + printable(point.id, 60) + "\" twice", "each point once");
    for (std::size_t axis = 0; axis < 3; ++axis) {
      point.at_mm[axis] = number(axes[axis]);
      if (!(std::abs(point.at_mm[axis]) <= largest_coordinate_mm))
        refuse_field(csv, table, row, axes[axis], "a coordinate from -1000000 to 1000000 mm");
    }
    if (!optional_field(row, part).empty()) {
      point.part_C = number(static_cast<std::size_t>(part));
      if (point.part_C < -40 || point.part_C > 200)
        refuse_field(csv, table, row, static_cast<std::size_t>(part),
                     "a part temperature between -40 and 200 C");
    }
    points.push_back(point);
  }
  return points;
}

std::vector<MeasuredPoint> load_measured_points(const std::string& path) {
  return parse_measured_points(read_file(path, largest_small_table), path);
}

}  // namespace seamtakt
