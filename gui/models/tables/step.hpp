#pragma once

#include <optional>
#include <string>

namespace seamtakt::desk {

/// The number that arrow keys make of a typed one: `steps` steps of one unit in its last but one significant
/// place (8.6 -> 8.7, 245 -> 250), without going below `lower`. Text without a number is returned as nothing;
/// what stands behind the number (a unit) is kept.
std::optional<std::string> stepped_text(const std::string& text, double steps, double lower);

}  // namespace seamtakt::desk
