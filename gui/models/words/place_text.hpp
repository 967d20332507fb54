#pragma once

#include <QString>
#include <string>

namespace seamtakt::desk {

/// A place of the core ("BD/S03/pass 1", "schedule F5S") as it is shown in the user's language. Input to the
/// program and content of files keep the core's form.
QString place_text(const std::string& place);

}  // namespace seamtakt::desk
