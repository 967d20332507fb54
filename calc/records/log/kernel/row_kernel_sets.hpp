#pragma once

#include "records/log/kernel/row_kernel.hpp"

namespace seamtakt {

extern const RowKernel plain_row_kernel;
#if defined(__x86_64__)
extern const RowKernel avx2_row_kernel;
extern const RowKernel avx512_row_kernel;
#endif

}  // namespace seamtakt
