#pragma once

#include <string>
#include <vector>

namespace seamtakt::cli {

/// What a name stands for in shapes (schema_shape.hpp).
struct NamedShape {
  std::string name, shape;
};

/// What several results have: finding, provenance, explanation, ...
std::vector<NamedShape> common_shapes();
/// Results of commands, by their words with dashes between them.
std::vector<NamedShape> calc_shapes();
std::vector<NamedShape> plan_shapes();
std::vector<NamedShape> cell_shapes();
std::vector<NamedShape> record_shapes();
std::vector<NamedShape> ledger_shapes();

}  // namespace seamtakt::cli
