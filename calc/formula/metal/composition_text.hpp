#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/metal/composition.hpp"

namespace seamtakt {

/// Reads "C=0.17, Mn=1.45" (mass %): pairs in the order given. InputError at `where` for a symbol that is no
/// element of the trade, an element twice, a value outside 0 to 100, a sum above 100, or no element.
std::vector<std::pair<std::string, double>> parse_composition(std::string_view text,
                                                              const std::string& where);

}  // namespace seamtakt
