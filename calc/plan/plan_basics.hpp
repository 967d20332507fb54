#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "plan/key_order.hpp"

/// Constructors, assignments and destructor that plan.cpp defines. They are those that the compiler would
/// make; made again in each file that copies a plan or a list of seams, they took most of the time to compile
/// it.
#define SEAMTAKT_SPECIAL_MEMBERS(Struct) \
  Struct();                              \
  Struct(const Struct&);                 \
  Struct(Struct&&) noexcept;             \
  Struct& operator=(const Struct&);      \
  Struct& operator=(Struct&&) noexcept;  \
  ~Struct();

namespace seamtakt {

/// What a file said beyond the values: the order of an object's keys and its free keys ("x_..."), so that
/// saving keeps them.
struct FileKeys {
  SEAMTAKT_SPECIAL_MEMBERS(FileKeys)
  KeyOrder order;                                         ///< all keys, the free ones too
  std::vector<std::pair<std::string, std::string>> free;  ///< key -> its JSON text
};

/// [lower, upper]; either may be open. The unit is that of the field that holds it.
struct Interval {
  std::optional<double> lower, upper;
};

using Point_mm = std::array<double, 3>;

/// Two numbers or two texts that belong together: width and length, from and to.
using NumberPair = std::array<double, 2>;
using TextPair = std::array<std::string, 2>;

/// Mass percentages by element symbol, in the file's order. An element that isn't there is "not reported".
using CompositionPct = std::vector<std::pair<std::string, double>>;

}  // namespace seamtakt
