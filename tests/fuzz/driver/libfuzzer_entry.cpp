// What libFuzzer calls; SEAMTAKT_FUZZ_TARGET names the function, such as take_plan.
#include <cstddef>
#include <cstdint>

#include "fuzz/fuzz_target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  seamtakt::fuzz::SEAMTAKT_FUZZ_TARGET({reinterpret_cast<const char*>(data), size});
  return 0;
}
