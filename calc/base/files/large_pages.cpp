#include "base/files/large_pages.hpp"

#include <sys/mman.h>
#include <unistd.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace seamtakt {

void prefer_large_pages([[maybe_unused]] const void* begin, [[maybe_unused]] std::size_t bytes) {
#ifdef MADV_HUGEPAGE
  constexpr std::uintptr_t page = std::uintptr_t{2} << 20;
  const auto first = reinterpret_cast<std::uintptr_t>(begin);
  const std::uintptr_t from = (first + page - 1) / page * page, to = (first + bytes) / page * page;
  if (from < to) ::madvise(reinterpret_cast<void*>(from), to - from, MADV_HUGEPAGE);
#endif
}

void prefer_large_heap([[maybe_unused]] std::size_t bytes) {
#ifdef __GLIBC__
  constexpr std::size_t most = std::size_t{1} << 30;
  constexpr std::size_t taken_from_heap = 127u << 10;  // larger blocks are mapped separately
  // A thread's own arena grows page by page.
  ::mallopt(M_ARENA_MAX, 1);
  ::mallopt(M_TRIM_THRESHOLD, static_cast<int>(most));
  ::mallopt(M_MMAP_THRESHOLD, 128 << 10);  // a large block isn't to leave a hole
  ::mallopt(M_TOP_PAD, static_cast<int>(std::min(bytes, most)));
  const auto* const begin = static_cast<const char*>(::sbrk(0));
  void* volatile const grows = std::malloc(taken_from_heap);
  std::free(grows);
  const auto* const end = static_cast<const char*>(::sbrk(0));
  if (end > begin) prefer_large_pages(begin, static_cast<std::size_t>(end - begin));
  constexpr int next_steps = 16 << 20;
  ::mallopt(M_TOP_PAD, next_steps);
#endif
}

}  // namespace seamtakt
