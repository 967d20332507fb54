#pragma once

#include <cstddef>

namespace seamtakt {

/// Advises the system to use large pages for this memory, which is about to be filled: in a block of many
/// megabytes, requesting each small page takes longer than writing it. A hint: the system may ignore it.
void prefer_large_pages(const void* begin, std::size_t bytes);

/// For a program that is about to create many small objects, about `bytes` in all: all threads allocate them
/// from one heap in large pages. Call it once, before other threads are started. A hint as well.
void prefer_large_heap(std::size_t bytes);

}  // namespace seamtakt
