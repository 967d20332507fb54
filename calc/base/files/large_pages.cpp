#include "base/files/large_pages.hpp"

#include <sys/mman.h>

#include <cstdint>

namespace seamtakt {

void prefer_large_pages([[maybe_unused]] const void* begin, [[maybe_unused]] std::size_t bytes) {
#ifdef MADV_HUGEPAGE
  constexpr std::uintptr_t page = std::uintptr_t{2} << 20;
  const auto first = reinterpret_cast<std::uintptr_t>(begin);
  const std::uintptr_t from = (first + page - 1) / page * page, to = (first + bytes) / page * page;
  if (from < to) ::madvise(reinterpret_cast<void*>(from), to - from, MADV_HUGEPAGE);
#endif
}

}  // namespace seamtakt
