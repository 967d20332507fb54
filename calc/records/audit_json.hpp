#pragma once

#include <string>

#include "records/audit.hpp"

namespace seamtakt {

/// The audit's JSON document, compact: passes[], units[], rejected[], findings[], and beside them manual[], rows{},
/// logs[]. Keys, units and order are the contract's; null for what is missing. Appends to `json`.
void write_audit_json(const AuditResult& result, std::string& json);

/// One element of passes[] as it stands there.
void write_pass_json(const PassRecord& record, std::string& json);
void write_manual_json(const ManualSeam& seam, std::string& json);
void write_finding_json(const Finding& finding, std::string& json);

}  // namespace seamtakt
