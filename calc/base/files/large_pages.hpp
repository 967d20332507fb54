#pragma once

#include <cstddef>

namespace seamtakt {

/// Tells the system that this memory, which is about to be filled, is better had in large pages: of a block
/// of many megabytes, asking for each small page takes longer than writing it. A hint: nothing changes where
/// it isn't taken.
void prefer_large_pages(const void* begin, std::size_t bytes);

}  // namespace seamtakt
