#pragma once

#include <string>
#include <vector>

#include "exchange/sheets/report_model.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

/// Parts that the reports of records have in common.

/// A report that begins with the words of caution and, where the store isn't trusted, that word before all
/// others.
Report record_report(SheetCell title, const VerifyReport& verified);

/// A table among `sheets` below its title; "None." where it is empty.
void add_table(Report& report, const std::vector<Sheet>& sheets, std::string_view name, Word title);

/// What every report of records ends with: open items, passes, manual seams, schedule revisions, instruments,
/// findings, raw logs and changes; whether the records can be trusted, with the newest signed head as an
/// anchor line and its QR code; program, store, signing key and time of the report; places to sign.
void add_record_sections(Report& report, const std::vector<Sheet>& sheets, const VerifyReport& verified,
                         const SheetOrigin& origin);

/// The last of them: whether the records can be trusted, where the report is from, places to sign.
void add_record_ending(Report& report, const VerifyReport& verified, const SheetOrigin& origin);

}  // namespace seamtakt
