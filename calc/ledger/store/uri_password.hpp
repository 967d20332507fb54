#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// The place of a password in a text.
struct PasswordPlace {
  std::size_t at = 0, size = 0;
};

/// Passwords in a server's URI, also in one that is mistyped: between the user's colon and the last @, and
/// behind "password=". None in "sqlite:FILE".
std::vector<PasswordPlace> passwords_in(std::string_view uri);

/// The URI with *** in place of each password, for messages.
std::string without_passwords(std::string_view uri);

}  // namespace seamtakt
