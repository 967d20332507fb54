#pragma once

#include "formula/kernel/instruction_set.hpp"

/// Before a loop of a row kernel: its outputs overlap neither one another nor its inputs.
#if defined(__clang__)
#define SEAMTAKT_INDEPENDENT_LOOP _Pragma("clang loop vectorize(assume_safety)")
#elif defined(__GNUC__)
#define SEAMTAKT_INDEPENDENT_LOOP _Pragma("GCC ivdep")
#else
#define SEAMTAKT_INDEPENDENT_LOOP
#endif

/// SEAMTAKT_ROW_KERNEL(name, Row, body) defines `void name(const Row&, InstructionSet)`, which calls the
/// inline function `body` compiled for the instruction set that is asked for. `flatten` inlines every formula
/// into each of the three functions, so the formula templates themselves are compiled in only one way: a
/// template that the linker keeps one copy of must not be compiled with different flags. Functions with names
/// of their own, where `target_clones` would do, because the tests call each of them.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__)
#define SEAMTAKT_ROW_KERNEL(name, Row, body)                                           \
  namespace {                                                                          \
  [[gnu::flatten]] void name##_plain(const Row& row) {                                 \
    body(row);                                                                         \
  }                                                                                    \
  [[gnu::flatten, gnu::target("avx2,fma")]] void name##_avx2(const Row& row) {         \
    body(row);                                                                         \
  }                                                                                    \
  [[gnu::flatten, gnu::target("arch=x86-64-v4")]] void name##_avx512(const Row& row) { \
    body(row);                                                                         \
  }                                                                                    \
  }                                                                                    \
  void name(const Row& row, InstructionSet set) {                                      \
    if (set == InstructionSet::avx512) return name##_avx512(row);                      \
    if (set == InstructionSet::avx2) return name##_avx2(row);                          \
    name##_plain(row);                                                                 \
  }
#else
#define SEAMTAKT_ROW_KERNEL(name, Row, body)  \
  void name(const Row& row, InstructionSet) { \
    body(row);                                \
  }
#endif
