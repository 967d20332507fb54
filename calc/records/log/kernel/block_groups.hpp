#pragma once

#include <cstddef>
#include <span>

#include "records/log/kernel/row_kernel.hpp"

namespace seamtakt {

/// So many neighbouring blocks make a group, which a pass takes at once where it can: it checks a group as it
/// does a block, and one in eight is checked.
inline constexpr std::size_t group_blocks = 8;

/// Neighbouring blocks of one run as one block: one_by_one where they aren't of one kind or a sum would leave
/// 64 bits.
RowBlock joined(std::span<const RowBlock> blocks);

}  // namespace seamtakt
