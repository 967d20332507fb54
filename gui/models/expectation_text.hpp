#pragma once

#include <QString>
#include <string>

namespace seamtakt::desk {

/// What the core says a field may hold ("a number above 0 mm") in the user's language. A text that isn't known
/// stays English.
QString expectation_text(const std::string& text);

}  // namespace seamtakt::desk
