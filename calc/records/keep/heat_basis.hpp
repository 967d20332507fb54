#pragma once

#include <string>

#include "base/json/json_node.hpp"
#include "plan/plan.hpp"
#include "records/passes/heat_figures.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// Member of a pass record's body.
inline constexpr const char* heat_basis_member = "heat_basis";

/// JSON text of the basis that gives the record's own figures; empty where the plan gives none that does.
std::string heat_basis_text(const Plan& plan, const PassRecord& record);
/// As a body has it; where the body has none (an older record), k is the ratio of its figures.
HeatBasis heat_basis_of(const JsonNode& body);

}  // namespace seamtakt
