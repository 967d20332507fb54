#include "routing_instance.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

namespace seamtakt::test {

namespace {

using Point = std::array<double, 3>;

/// The file as header and sections; a section's text is split at blanks.
struct LibraryFile {
  std::map<std::string, std::string> header;
  std::map<std::string, std::vector<std::string>> sections;

  std::string field(const std::string& key, const std::string& otherwise = "") const {
    const auto at = header.find(key);
    return at == header.end() ? otherwise : at->second;
  }
  std::vector<double> numbers(const std::string& section) const {
    const auto at = sections.find(section);
    if (at == sections.end()) throw std::runtime_error("no " + section);
    std::vector<double> numbers;
    for (const std::string& word : at->second) {
      double number = 0;
      const char* first = word.data() + (word.front() == '+' ? 1 : 0);
      const auto [end, error] = std::from_chars(first, word.data() + word.size(), number);
      if (error != std::errc() || end != word.data() + word.size())
        throw std::runtime_error("\"" + word + "\" in " + section + ", expected a number");
      numbers.push_back(number);
    }
    return numbers;
  }
};

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t\r");
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

bool is_section(const std::string& word) {
  for (const char* name : {"_SECTION", "_ORDERING"})
    if (word.size() > 8 && word.find(name) != std::string::npos) return true;
  return false;
}

LibraryFile read_file(const std::string& path) {
  std::ifstream stream(path);
  if (!stream) throw std::runtime_error("it can't be opened");
  LibraryFile file;
  std::vector<std::string>* section = nullptr;
  for (std::string line; std::getline(stream, line);) {
    const std::string text = trimmed(line);
    if (text.empty()) continue;
    if (text == "EOF") break;
    const std::string key = trimmed(text.substr(0, text.find(':')));
    const bool word = std::isalpha(static_cast<unsigned char>(text.front())) != 0;
    if (word && is_section(key)) {
      section = &file.sections[key];
      continue;
    }
    if (word && text.find(':') != std::string::npos) {
      file.header.try_emplace(key, trimmed(text.substr(text.find(':') + 1)));
      section = nullptr;
      continue;
    }
    if (!section) throw std::runtime_error("\"" + text.substr(0, 40) + "\" outside a section");
    std::istringstream words(text);
    for (std::string part; words >> part;) section->push_back(part);
  }
  return file;
}

int nearest(double value) {
  return static_cast<int>(value + 0.5);
}

/// Degrees and minutes to radians, with the library's own value of pi.
double geo_radians(double value) {
  const double degrees = std::trunc(value), minutes = value - degrees;
  return 3.141592 * (degrees + 5 * minutes / 3) / 180;
}

/// Distances after TSPLIB 95 (Reinelt), section 2.
double distance(const std::string& type, const Point& a, const Point& b) {
  const double x = a[0] - b[0], y = a[1] - b[1], z = a[2] - b[2];
  if (type == "EUC_2D" || type == "EUC_3D") return nearest(std::sqrt(x * x + y * y + z * z));
  if (type == "CEIL_2D") return std::ceil(std::sqrt(x * x + y * y));
  if (type == "MAN_2D" || type == "MAN_3D") return nearest(std::abs(x) + std::abs(y) + std::abs(z));
  if (type == "MAX_2D" || type == "MAX_3D")
    return std::max({nearest(std::abs(x)), nearest(std::abs(y)), nearest(std::abs(z))});
  if (type == "ATT") {
    const double real = std::sqrt((x * x + y * y) / 10);
    const int whole = nearest(real);
    return whole < real ? whole + 1 : whole;
  }
  if (type == "GEO") {
    const double q1 = std::cos(geo_radians(a[1]) - geo_radians(b[1])),
                 q2 = std::cos(geo_radians(a[0]) - geo_radians(b[0])),
                 q3 = std::cos(geo_radians(a[0]) + geo_radians(b[0]));
    return static_cast<int>(6378.388 * std::acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
  }
  throw std::runtime_error("EDGE_WEIGHT_TYPE " + type + " isn't known here");
}

std::vector<double> from_points(const LibraryFile& file, const std::string& type, std::size_t count) {
  const std::size_t width = type.find("3D") != std::string::npos ? 4 : 3;
  const std::vector<double> numbers = file.numbers("NODE_COORD_SECTION");
  if (numbers.size() != count * width)
    throw std::runtime_error("NODE_COORD_SECTION of another size than DIMENSION");
  std::vector<Point> points(count);
  for (std::size_t i = 0; i < count; ++i) {
    const auto number = static_cast<std::size_t>(numbers[i * width]);
    if (number < 1 || number > count) throw std::runtime_error("a node number outside DIMENSION");
    points[number - 1] = {numbers[i * width + 1], numbers[i * width + 2],
                          width == 4 ? numbers[i * width + 3] : 0};
  }
  std::vector<double> cost(count * count);
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t k = 0; k < count; ++k)
      cost[i * count + k] = i == k ? 0 : distance(type, points[i], points[k]);
  return cost;
}

/// Rows and columns that a format lists of row i: [from, to).
std::pair<std::size_t, std::size_t> listed_columns(const std::string& format, std::size_t i,
                                                   std::size_t count) {
  if (format == "FULL_MATRIX") return {0, count};
  if (format == "UPPER_ROW" || format == "LOWER_COL") return {i + 1, count};
  if (format == "LOWER_ROW" || format == "UPPER_COL") return {0, i};
  if (format == "UPPER_DIAG_ROW" || format == "LOWER_DIAG_COL") return {i, count};
  if (format == "LOWER_DIAG_ROW" || format == "UPPER_DIAG_COL") return {0, i + 1};
  throw std::runtime_error("EDGE_WEIGHT_FORMAT " + format + " isn't known here");
}

std::vector<double> from_matrix(const LibraryFile& file, const std::string& format, std::size_t count) {
  const std::vector<double> numbers = file.numbers("EDGE_WEIGHT_SECTION");
  std::size_t needed = 0, at = 0;
  for (std::size_t i = 0; i < count; ++i)
    needed += listed_columns(format, i, count).second - listed_columns(format, i, count).first;
  // SOP files write the dimension before the matrix.
  if (numbers.size() == needed + 1 && numbers.front() == static_cast<double>(count)) at = 1;
  if (numbers.size() != needed + at)
    throw std::runtime_error("EDGE_WEIGHT_SECTION of another size than DIMENSION");
  std::vector<double> cost(count * count);
  for (std::size_t i = 0; i < count; ++i) {
    const auto [from, to] = listed_columns(format, i, count);
    for (std::size_t k = from; k < to; ++k) {
      cost[i * count + k] = numbers[at++];
      if (format != "FULL_MATRIX") cost[k * count + i] = cost[i * count + k];
    }
  }
  return cost;
}

/// Lists that end with -1, the first number of each being its name.
std::vector<std::vector<int>> lists_of(const LibraryFile& file, const std::string& section) {
  std::vector<std::vector<int>> lists;
  if (!file.sections.contains(section)) return lists;
  bool open = false;
  for (const double number : file.numbers(section)) {
    if (!open) lists.emplace_back();
    open = number >= 0;
    if (open) lists.back().push_back(static_cast<int>(number));
  }
  std::erase_if(lists, [](const std::vector<int>& list) { return list.empty(); });
  return lists;
}

/// Sets in the order of the file, the start group first; nodes are renumbered by set.
void cluster(const LibraryFile& file, const std::vector<double>& cost, RoutingInstance& instance) {
  const auto sets = lists_of(file, "GTSP_SET_SECTION");
  const auto count = static_cast<std::size_t>(instance.nodes);
  const auto start_at = file.sections.find("START_GROUP_SECTION");
  const int start = start_at == file.sections.end() || start_at->second.empty()
                        ? sets.front().front()
                        : static_cast<int>(file.numbers("START_GROUP_SECTION").front());
  std::map<int, int> cluster_of;
  std::vector<std::vector<int>> ordered;
  for (const bool first : {true, false})
    for (const auto& set : sets)
      if ((set.front() == start) == first) {
        cluster_of[set.front()] = static_cast<int>(ordered.size());
        ordered.emplace_back(set.begin() + 1, set.end());
      }
  RoutingProblem& problem = instance.problem;
  instance.original.clear();
  for (const auto& set : ordered) {
    instance.original.insert(instance.original.end(), set.begin(), set.end());
    problem.first_node.push_back(static_cast<int>(instance.original.size()));
  }
  const std::size_t used = instance.original.size();
  problem.cost.resize(used * used);
  for (std::size_t i = 0; i < used; ++i)
    for (std::size_t k = 0; k < used; ++k) {
      const auto from = static_cast<std::size_t>(instance.original[i] - 1),
                 to = static_cast<std::size_t>(instance.original[k] - 1);
      if (from >= count || to >= count) throw std::runtime_error("a set names a node outside DIMENSION");
      problem.cost[i * used + k] = cost[from * count + to];
    }
  for (const auto& list : lists_of(file, "GTSP_SET_ORDERING"))
    for (std::size_t i = 1; i < list.size(); ++i)
      if (cluster_of.at(list.front()) != 0)
        problem.before.emplace_back(cluster_of.at(list.front()), cluster_of.at(list[i]));
}

/// Home is node 1; the last node comes after all others and the way back from it is free.
void order(const std::vector<double>& cost, RoutingProblem& problem) {
  const int count = problem.cluster_count();
  problem.cost = cost;
  for (int i = 0; i < count; ++i)
    for (int k = 0; k < count; ++k) {
      double& at = problem.cost[static_cast<std::size_t>(i * count + k)];
      if (i != k && at < 0 && i > 0 && k > 0) problem.before.emplace_back(k, i);
      if (at < 0 || k == 0) at = k == 0 ? 0 : 1e9;
    }
  for (int i = 1; i + 1 < count; ++i) problem.before.emplace_back(i, count - 1);
}

}  // namespace

RoutingInstance read_routing_instance(const std::string& path) {
  const LibraryFile file = read_file(path);
  RoutingInstance instance;
  // The file's own NAME may be a path on somebody's disk, or leave out which variant it is.
  instance.name = std::filesystem::path(path).stem().string();
  instance.type = file.field("TYPE");
  instance.type = instance.type.substr(0, instance.type.find(' '));
  if (file.sections.contains("GTSP_SET_SECTION")) instance.type = "PCGTSP";
  instance.nodes = std::atoi(file.field("DIMENSION").c_str());
  if (instance.nodes < 1) throw std::runtime_error("no DIMENSION above 0");
  if (instance.nodes > 12000)
    throw std::runtime_error("more than 12000 nodes: the matrix would not fit in memory");
  if (file.sections.contains("FIXED_EDGES_SECTION"))
    throw std::runtime_error("fixed edges aren't known here");
  const auto count = static_cast<std::size_t>(instance.nodes);
  const std::string weights = file.field("EDGE_WEIGHT_TYPE");
  std::vector<double> cost = weights == "EXPLICIT"
                                 ? from_matrix(file, file.field("EDGE_WEIGHT_FORMAT", "FULL_MATRIX"), count)
                                 : from_points(file, weights, count);
  if (file.sections.contains("GTSP_SET_SECTION")) {
    cluster(file, cost, instance);
    return instance;
  }
  RoutingProblem& problem = instance.problem;
  for (int i = 1; i <= instance.nodes; ++i) {
    problem.first_node.push_back(i);
    instance.original.push_back(i);
  }
  if (instance.type == "SOP")
    order(cost, problem);
  else
    problem.cost = std::move(cost);
  return instance;
}

std::vector<int> read_tour(const std::string& path) {
  std::vector<int> tour;
  for (const double number : read_file(path).numbers("TOUR_SECTION"))
    if (number > 0) tour.push_back(static_cast<int>(number));
  return tour;
}

}  // namespace seamtakt::test
