#pragma once

#include <span>

namespace seamtakt {

/// Instruction sets that the row kernels are compiled for. Which one runs is chosen once, when the program
/// runs: a kernel of + - * / and square roots gives the same bits with each, one with exp, log or cos differs
/// by less than 1e-12. AVX2 here means with fused multiplication and addition, which only the latter may use.
enum class InstructionSet { plain, avx2, avx512 };

/// The widest that this machine has.
InstructionSet best_instruction_set();

/// Those that this machine has, `plain` first.
std::span<const InstructionSet> supported_instruction_sets();

const char* to_string(InstructionSet set);

}  // namespace seamtakt
