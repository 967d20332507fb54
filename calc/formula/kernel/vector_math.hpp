#pragma once

#include <cmath>

/// Lets a loop in a row kernel call exp, log, sin and cos of glibc's vector library (libmvec), which are
/// within 4 units of the last place. Included by the few kernels that need it and by nothing else; glibc
/// itself declares them only under -ffast-math, which would change the arithmetic around them too.
#if defined(__x86_64__) && defined(__GLIBC__) && defined(__OPTIMIZE__) && !defined(__clang__)
extern "C" {
__attribute__((simd("notinbranch"))) double exp(double) noexcept;
__attribute__((simd("notinbranch"))) double log(double) noexcept;
__attribute__((simd("notinbranch"))) double sin(double) noexcept;
__attribute__((simd("notinbranch"))) double cos(double) noexcept;
}
#endif
