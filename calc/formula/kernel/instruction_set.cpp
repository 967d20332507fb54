#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

InstructionSet best_instruction_set() {
  return supported_instruction_sets().back();
}

std::span<const InstructionSet> supported_instruction_sets() {
  static constexpr InstructionSet known[] = {InstructionSet::plain, InstructionSet::avx2,
                                             InstructionSet::avx512};
#if defined(__x86_64__)
  // What "arch=x86-64-v4" lets the compiler use; the operating system's part is in the processor check.
  static const bool has_avx512 = __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl") &&
                                 __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512bw") &&
                                 __builtin_cpu_supports("avx512cd") && __builtin_cpu_supports("bmi2");
  static const bool has_avx2 = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
  return std::span(known).first(has_avx512 ? 3 : has_avx2 ? 2 : 1);
#else
  return std::span(known).first(1);
#endif
}

const char* to_string(InstructionSet set) {
  switch (set) {
    case InstructionSet::avx512:
      return "avx512";
    case InstructionSet::avx2:
      return "avx2";
    case InstructionSet::plain:
      break;
  }
  return "plain";
}

}  // namespace seamtakt
