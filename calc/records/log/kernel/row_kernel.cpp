#include "records/log/kernel/row_kernel.hpp"

#include "records/log/kernel/row_kernel_sets.hpp"

namespace seamtakt {

namespace {

std::vector<const RowKernel*> kernels_that_run() {
  std::vector<const RowKernel*> kernels;
#if defined(__x86_64__)
  __builtin_cpu_init();
  const bool bits = __builtin_cpu_supports("bmi") && __builtin_cpu_supports("bmi2");
  if (bits && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512bw") &&
      __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512vl") &&
      __builtin_cpu_supports("avx512vbmi"))
    kernels.push_back(&avx512_row_kernel);
  if (bits && __builtin_cpu_supports("avx2")) kernels.push_back(&avx2_row_kernel);
#endif
  kernels.push_back(&plain_row_kernel);
  return kernels;
}

}  // namespace

const std::vector<const RowKernel*>& row_kernels() {
  static const std::vector<const RowKernel*> kernels = kernels_that_run();
  return kernels;
}

}  // namespace seamtakt
