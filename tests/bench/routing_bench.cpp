// Runs instances of the public routing libraries (TSP, ATSP, SOP, precedence-constrained generalised) through
// the sequencing code's own routing search, one core, and prints a JSON line a file:
//   instance, type, nodes, length, bound, seconds
// `seconds` is when that length was first reached, from the moment the instance had been read. `bound` is
// proven (1-tree or assignment), rounded up where all costs are whole.
//   routing_bench FILE… [--seconds S] [--seed N] [--target LENGTH] [--tour]

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/json/json_writer.hpp"
#include "base/units/units.hpp"
#include "cell/routing_instance.hpp"

namespace {

using namespace seamtakt;

struct Options {
  std::vector<std::string> files;
  double seconds = 1, target = 0;
  std::uint64_t seed = 1;
  bool tour = false;
};

Options options_of(int count, char** arguments) {
  Options options;
  for (int i = 1; i < count; ++i) {
    const std::string argument = arguments[i];
    const auto value = [&] {
      if (i + 1 >= count) throw std::runtime_error(argument + " needs a value");
      return std::string(arguments[++i]);
    };
    if (argument == "--seconds")
      options.seconds = parse_quantity(value(), *find_unit("s"), argument);
    else if (argument == "--target")
      options.target = parse_quantity(value(), *find_unit(""), argument);
    else if (argument == "--seed")
      options.seed = std::stoull(value());
    else if (argument == "--tour")
      options.tour = true;
    else if (argument.starts_with("--"))
      throw std::runtime_error("unknown option " + argument);
    else
      options.files.push_back(argument);
  }
  if (options.files.empty()) throw std::runtime_error("usage: routing_bench FILE… [--seconds S] [--seed N]");
  return options;
}

bool whole(const std::vector<double>& costs) {
  for (const double cost : costs)
    if (cost != std::floor(cost)) return false;
  return true;
}

void run(const std::string& file, const Options& options) {
  using Clock = std::chrono::steady_clock;
  const test::RoutingInstance instance = test::read_routing_instance(file);
  const auto begun = Clock::now();
  const auto elapsed_s = [&] { return std::chrono::duration<double>(Clock::now() - begun).count(); };
  double reached_s = 0;
  RoutingOptions search;
  search.seed = options.seed;
  search.bound = options.target;
  search.stop = [&] { return elapsed_s() >= options.seconds; };
  search.improved = [&](const Route&) { reached_s = elapsed_s(); };
  const Route route = shortest_route(instance.problem, search);
  if (!(length_of(instance.problem, route.nodes) == route.length))
    throw std::runtime_error("the route isn't one");
  double bound = route_bound(instance.problem);
  if (whole(instance.problem.cost)) bound = std::ceil(bound - 1e-6);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("instance", instance.name).member("type", instance.type).member("nodes", instance.nodes);
  json.member("length", route.length).member("bound", bound).member("seconds", reached_s);
  if (options.tour) {
    json.key("tour").begin_array(JsonWriter::Layout::compact);
    for (const int node : route.nodes) json.value(instance.original[node]);
    json.end_array();
  }
  json.end_object();
  std::printf("%s", json.take().c_str());
  std::fflush(stdout);
}

}  // namespace

int main(int count, char** arguments) {
  int failed = 0;
  try {
    const Options options = options_of(count, arguments);
    for (const std::string& file : options.files) try {
        run(file, options);
      } catch (const std::exception& error) {
        std::fprintf(stderr, "%s: %s\n", file.c_str(), error.what());
        failed = 2;
      }
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  }
  return failed;
}
