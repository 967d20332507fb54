#include <set>

#include "base/csv.hpp"
#include "base/error.hpp"
#include "records/measure.hpp"

namespace seamtakt {

namespace {

std::vector<MeasuredPoint> points_of(const CsvTable& table) {
  const std::size_t name = table.require("point");
  const std::array<std::size_t, 3> axes = {table.require("x_mm"), table.require("y_mm"),
                                           table.require("z_mm")};
  const int part = table.column("part_C");
  std::vector<MeasuredPoint> points;
  std::set<std::string> seen;
  for (const CsvRow& row : table.rows) {
    const auto where = [&](std::size_t column) {
      return printable(table.file) + ":" + std::to_string(row.line) + ":" + std::to_string(column + 1);
    };
    const auto number = [&](std::size_t column) {
      double value = 0;
      if (!parse_number(row.fields[column], value, table.delimiter != ','))
        throw InputError(where(column), '"' + printable(row.fields[column], 60) + '"', "a number");
      return value;
    };
    MeasuredPoint point;
    point.id = row.fields[name];
    if (point.id.empty()) throw InputError(where(name), "no point", "the point's name");
    if (!seen.insert(point.id).second)
      throw InputError(where(name), "the point \"" + printable(point.id, 60) + "\" twice", "each point once");
    for (std::size_t axis = 0; axis < 3; ++axis) point.at_mm[axis] = number(axes[axis]);
    if (part >= 0 && !row.fields[static_cast<std::size_t>(part)].empty()) {
      point.part_C = number(static_cast<std::size_t>(part));
      if (point.part_C < -40 || point.part_C > 200)
        throw InputError(where(static_cast<std::size_t>(part)), row.fields[static_cast<std::size_t>(part)],
                         "a part temperature between -40 and 200 C");
    }
    points.push_back(point);
  }
  return points;
}

}  // namespace

std::vector<MeasuredPoint> load_measured_points(const std::string& path) {
  return points_of(read_csv(path));
}

std::vector<MeasuredPoint> parse_measured_points(std::string_view csv, const std::string& file) {
  return points_of(parse_csv(csv, file));
}

}  // namespace seamtakt
