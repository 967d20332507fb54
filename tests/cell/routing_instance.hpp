#pragma once

#include <string>
#include <vector>

#include "cell/search/routing_problem.hpp"

namespace seamtakt::test {

/// An instance of a public routing library, in the form of the sequencing code.
struct RoutingInstance {
  std::string name, type;
  int nodes = 0;
  RoutingProblem problem;
  std::vector<int> original;  ///< the file's number (from 1) of each node of the problem
};

/// Reads TSPLIB's TSP, ATSP and SOP (coordinates or matrix) and precedence-constrained generalised problems
/// (GTSP_SET_SECTION, GTSP_SET_ORDERING, START_GROUP_SECTION). SOP: node 1 first, the last node last, -1 at
/// [i][j]: j before i; the way back costs nothing. Generalised: closed from the start group.
/// Throws std::runtime_error with a sentence where the file can't be read as such.
RoutingInstance read_routing_instance(const std::string& path);

/// The order of a TSPLIB tour file, numbers from 1.
std::vector<int> read_tour(const std::string& path);

}  // namespace seamtakt::test
