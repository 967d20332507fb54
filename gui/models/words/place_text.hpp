#pragma once

#include <QString>
#include <string>

namespace seamtakt::desk {

/// A place of the core ("BD/S03/pass 1", "schedule F5S") as it is shown in the user's language. What the
/// program is told, and what stands in files, stays as the core has it.
QString place_text(const std::string& place);

}  // namespace seamtakt::desk
