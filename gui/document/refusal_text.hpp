#pragma once

#include <QString>
#include <string>

#include "base/error.hpp"

namespace seamtakt::desk {

/// What the core says a field may hold ("a number above 0 mm") in the user's language. A text that isn't
/// known stays English.
QString expectation_text(const std::string& text);

/// "found 45 kg, expected ..." in the user's language: why what was typed can't be taken.
QString refusal_text(const InputError& error);

}  // namespace seamtakt::desk
