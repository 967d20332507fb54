#pragma once

#include "document/document.hpp"

namespace seamtakt::desk {

/// Sets a field from what a person typed in the view's units ("45 cm/min", "0.25 in", "6"). Returns the
/// reason if it can't be used: the entry that it belongs to is then undone.
std::optional<Refusal> set_typed(Document& document, const std::string& pointer, const std::string& key,
                                 const QString& typed, WhenLocked when_locked = WhenLocked::offer);

}  // namespace seamtakt::desk
