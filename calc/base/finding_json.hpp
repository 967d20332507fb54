#pragma once

#include "base/finding.hpp"
#include "base/json/json_writer.hpp"

namespace seamtakt {

/// A finding as every JSON result holds it: rule, severity, where, value, limit, unit, text, source on one
/// line. null where there is no value, no limit or no unit (a dimensionless value).
void write_json(const Finding& finding, JsonWriter& json);

/// The member "findings" with all of them, in their order.
void write_findings(JsonWriter& json, const Findings& findings);

}  // namespace seamtakt
