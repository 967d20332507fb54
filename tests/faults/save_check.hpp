#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// Saves once in the driver's way `how` (save_driver.cpp) for each call that it makes and each fault that the
/// call can have, and lists what goes against the promises of save_atomically: old or new content whole, new
/// where the save was acknowledged, no temporary left after a reported failure, no failure passed over, and
/// all bytes on the disk before the rename. Empty where nothing does.
std::vector<std::string> broken_promises(const std::string& how, int* runs = nullptr);

}  // namespace seamtakt
