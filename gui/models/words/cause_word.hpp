#pragma once

#include <QString>
#include <string>

namespace seamtakt::desk {

/// Some words for the rule that failed a pass or left it undecided, in the user's language; the rule itself
/// where it has none.
QString cause_word(const std::string& rule);

}  // namespace seamtakt::desk
