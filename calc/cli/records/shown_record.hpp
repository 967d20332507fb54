#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/units/units.hpp"

namespace seamtakt::cli {

/// A verdict ("pass", "fail", "undecided") in the reader's language; other text as it is.
std::string shown_verdict(std::string_view verdict);

/// The unit of a row of a table in which each row has its own; results have its values in it.
class RowUnit {
 public:
  explicit RowUnit(std::string_view name);

  /// Of the unit in which the reader sees the values.
  std::string name() const;
  double shown(double value) const;
  std::optional<double> shown(std::optional<double> value) const;

 private:
  std::string name_;
  const Unit* unit_;  ///< nullptr: one that isn't converted
};

}  // namespace seamtakt::cli
