#pragma once

#include <optional>
#include <string>

#include "base/json/json_node.hpp"

namespace seamtakt {

/// In `undecided_by` of a record that passed with another value than it has by now.
inline constexpr const char* corrected_rule = "record.corrected";

/// Updates the derived members of a pass record's corrected body: each that follows from a corrected one is
/// recomputed, or null where an input isn't known any more. Others stay as they were logged and judged.
///   arc energy = energy/length, heat input = k times that, its uncertainty in proportion, cooling time by
///   EN 1011-2, annex D, of the basis kept with the record (heat_basis.hpp).
///   The coverage of its seam is proportional to the length; of another seam nothing is known of it.
/// A verdict isn't made again here, because that needs the plan: a pass verdict that depends on a corrected
/// value becomes undecided (corrected_rule), a fail stays one. `k_of_schedule`: thermal efficiency by the
/// process of the schedule that a correction names; empty: not known.
void recompute_derived(JsonNode& body, const JsonNode& original, std::optional<double> k_of_schedule);

/// Whether a member is another one in the corrected body.
bool is_corrected(const JsonNode& body, const JsonNode& original, std::string_view path);

}  // namespace seamtakt
