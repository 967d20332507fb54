#pragma once

#include <optional>
#include <string>

#include "base/json/json_node.hpp"
#include "plan/plan.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// What the heat input and the cooling time of a record follow from beside what was logged. It is kept with
/// the record, so that a correction can recompute them without the plan.
struct HeatBasis {
  std::optional<double> efficiency;            ///< k of EN 1011-1
  std::optional<double> thickness_mm, F2, F3;  ///< of EN 1011-2, annex D
  /// Plate's temperature before the pass: the preheat, or the interpass temperature that was logged.
  std::optional<double> from_C;
};

/// Member of a pass record's body.
inline constexpr const char* heat_basis_member = "heat_basis";

/// JSON text of the basis that gives the record's own figures; empty where the plan gives none that does.
std::string heat_basis_text(const Plan& plan, const PassRecord& record);
/// As it stands in a body; where the body has none (an older record), k is the ratio of its figures.
HeatBasis heat_basis_of(const JsonNode& body);

}  // namespace seamtakt
