#pragma once

#include <string>

#include "ledger/store/store_key.hpp"

namespace seamtakt::cli {

/// Now, this program, and who and why as given.
WriteStamp write_stamp(const std::string& who, const std::string& why);

}  // namespace seamtakt::cli
