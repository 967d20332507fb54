#pragma once

#include <QString>
#include <string_view>

namespace seamtakt::desk {

/// Name of an explained result in the user's language: the label of its column, or of its own where it is on
/// the way to one ("cooling_time_2d_s"). A key that isn't known comes back as it is.
QString result_label(std::string_view key);

}  // namespace seamtakt::desk
