#pragma once

#include <array>
#include <cstddef>

namespace seamtakt::desk {

/// The desk's pages in the order of the chain: one for each of its links, and the findings at its end.
enum class DeskPage { seams, schedules, heat, cell, line, records, findings };

inline constexpr std::array desk_pages{DeskPage::seams,   DeskPage::schedules, DeskPage::heat,
                                       DeskPage::cell,    DeskPage::line,      DeskPage::records,
                                       DeskPage::findings};

/// Its position in the chain, from 0.
constexpr std::size_t position_of(DeskPage page) {
  return static_cast<std::size_t>(page);
}

}  // namespace seamtakt::desk
