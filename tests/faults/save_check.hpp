#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// Saves once in the driver's way `how` (save_driver.cpp) for each call that it makes and each fault that the
/// call can have, and lists violations of the promises of save_atomically: complete old or new content, new
/// where the save was acknowledged, no temporary left after a reported failure, no failure ignored, and all
/// bytes on the disk before the rename. Empty where nothing does.
std::vector<std::string> broken_promises(const std::string& how, int* runs = nullptr);

}  // namespace seamtakt
