#pragma once

#include <string>
#include <vector>

#include "exchange/sheets/report_model.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

/// What a ledger holds of one unit, as tables: "unit" (complete or what is missing, what is open), "passes"
/// (heat-input record), "methods" (k and method of each), "manual", "schedules" (the revisions by which it
/// was judged), "instruments", "findings", "logs" (the passes' raw logs, each with its SHA-256), "open-items"
/// (nonconformances and how they were dealt with), "changes" (corrections, void records, sign-offs: who,
/// when, why, what was and what is) and "about". A record that was corrected shows its corrected values and
/// says so; a void one stays in the table, marked. InputError: the ledger has no record of that serial.
std::vector<Sheet> unit_sheets(const Ledger& ledger, const std::string& unit_serial,
                               const SheetOrigin& origin);

/// Where a report from a ledger comes from. `verified` is what verify_ledger said at the moment of printing.
SheetOrigin origin_of(const Ledger& ledger, const VerifyReport& verified, const std::string& made_at_utc);

/// The same tables as a report, with the verification's word, cautions, the newest signed head as an anchor
/// line with its QR code, and places to sign.
Report unit_report(const Ledger& ledger, const std::string& unit_serial, const VerifyReport& verified,
                   const std::string& made_at_utc);
/// As one HTML page.
std::string unit_report_html(const Ledger& ledger, const std::string& unit_serial,
                             const VerifyReport& verified, const std::string& made_at_utc,
                             const TextView& view);

}  // namespace seamtakt
