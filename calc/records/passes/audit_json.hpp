#pragma once

#include <string>

#include "base/finding_json.hpp"
#include "records/actual/cycle_actual.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt {

/// Appends the audit's JSON document: passes[], units[], rejected[], findings[], and beside them manual[],
/// rows{}, logs[]. Keys, units and order are the contract's; null for what is missing.
void write_audit_json(const AuditResult& result, std::string& json);

/// The same with the units' times beside their planned cycles ("cycle_actual").
void write_audit_json(const AuditResult& result, const CycleActual& actual, std::string& json);

/// The members of that document, for an object that has others too.
void write_audit_members(const AuditResult& result, JsonWriter& json);

/// Values as in that document.
void write_json(const PassRecord& record, JsonWriter& json);
void write_json(const UnitRecord& unit, JsonWriter& json);
void write_json(const ManualSeam& seam, JsonWriter& json);
void write_json(const UsedInstrument& instrument, JsonWriter& json);

}  // namespace seamtakt
