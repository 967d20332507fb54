#pragma once

#include <optional>
#include <string>

#include "base/json/json_node.hpp"

namespace seamtakt {

/// Puts the derived members of a pass record's corrected body right: each that follows from a corrected one
/// is computed anew, or null where what it takes isn't known any more. Others stay as they were logged and
/// judged.
///   arc energy = energy/length, heat input = k times that, its uncertainty in proportion, cooling time by
///   EN 1011-2, annex D, of the basis kept with the record (heat_basis.hpp).
/// A verdict isn't made anew here, for that takes the plan: what passed and rests on a corrected value is
/// undecided, a fail stays one.
/// `k_of_schedule`: thermal efficiency by the process of the schedule that a correction names; empty: not
/// known.
void recompute_derived(JsonNode& body, const JsonNode& original, std::optional<double> k_of_schedule);

/// Whether a member is another one in the corrected body.
bool is_corrected(const JsonNode& body, const JsonNode& original, std::string_view path);

}  // namespace seamtakt
