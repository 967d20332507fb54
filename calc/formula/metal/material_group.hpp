#pragma once

#include <string_view>

namespace seamtakt {

/// Groups of metals by ISO/TR 15608 (iso-tr-15608, recalled), as "1.2".

/// Group of the steel that a standard's text names: an id of reference/steels.csv, alone or behind its
/// standard ("S355J2", "EN 10025-2 S355J2"). Empty where the table has none of that name.
std::string_view material_group_of(std::string_view standard);

/// Whether a procedure test in one group holds for a metal of another.
enum class GroupCover {
  covered,
  not_covered,
  unknown  ///< the table has no row for the tested group, or a group says nothing of the yield strength
};

/// By ISO 15614-1, table of groups (iso-15614-1, recalled; reference/qualified_groups.csv): a test covers the
/// steels of its group with the same or a lower yield strength, and lower groups. `tested` and `used` are
/// groups such as "1.2"; a group without sub-group ("1") covers its group's first sub-group alone.
GroupCover group_cover(std::string_view tested, std::string_view used);

}  // namespace seamtakt
