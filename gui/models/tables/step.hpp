#pragma once

#include <optional>
#include <string>

namespace seamtakt::desk {

/// The number that arrow keys make of a typed one: `steps` steps of one unit in its second to last
/// significant place (8.6 -> 8.7, 245 -> 250), but not below `lower`. Empty for text without a number; text
/// after the number (a unit) is kept.
std::optional<std::string> stepped_text(const std::string& text, double steps, double lower);

}  // namespace seamtakt::desk
