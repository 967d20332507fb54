#pragma once

#include <vector>

#include "cell/timeline/cycle_result.hpp"

namespace seamtakt {

/// What a cycle is made of. All but the arc and the loading are losses.
enum class CyclePart { arc_on, air, start_end, sense, wait, orientation, service, wire_change, load_unload };
const char* to_string(CyclePart part);  ///< "air moves"

/// Robot-seconds: summed over the robots.
double part_s(const CycleResult& cycle, CyclePart part);

/// All parts of a cycle, largest first.
std::vector<CyclePart> cycle_parts(const CycleResult& cycle);

/// The losses of a cycle, largest first; those that take no time are left out.
std::vector<CyclePart> cycle_losses(const CycleResult& cycle);

}  // namespace seamtakt
