#pragma once

#include <cstddef>

namespace seamtakt {

/// Tells the system that this memory, which is about to be filled, is better had in large pages: of a block
/// of many megabytes, asking for each small page takes longer than writing it. A hint: nothing changes where
/// it isn't taken.
void prefer_large_pages(const void* begin, std::size_t bytes);

/// For a program that is about to make many small objects, some `bytes` of them: all threads get them from
/// one heap in large pages. To be called once, before other threads are started. A hint as well.
void prefer_large_heap(std::size_t bytes);

}  // namespace seamtakt
