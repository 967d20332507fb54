#pragma once

#include <string>
#include <string_view>

namespace seamtakt {

/// Ways of saving that are wrong on purpose: the tests must find each of them out.
/// "in-place", "no-fsync", "no-folder-sync", "fsync-unchecked", "write-unchecked", "no-read-back",
/// "temporary-left", "close-unchecked". True where `how` is one of them.
bool save_faultily(std::string_view how, const std::string& path, std::string_view bytes);

}  // namespace seamtakt
