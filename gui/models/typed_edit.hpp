#pragma once

#include "document/document.hpp"

namespace seamtakt::desk {

/// Sets a field from what a person typed in the view's units ("45 cm/min", "0.25 in", "6"). The reason, where
/// it can't be used.
std::optional<Refusal> set_typed(Document& document, const std::string& pointer, const std::string& key,
                                 const QString& typed);

}  // namespace seamtakt::desk
