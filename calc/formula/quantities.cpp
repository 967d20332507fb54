#include "formula/quantities/registry.hpp"
#include "formula/quantity.hpp"

namespace seamtakt {
namespace {

/// In the order in which `seamtakt calc` lists them.
const Quantity* const all_quantities[] = {
    &heat_input_quantity,
};

}  // namespace

std::span<const Quantity* const> quantities() {
  return all_quantities;
}

}  // namespace seamtakt
