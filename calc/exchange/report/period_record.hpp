#pragma once

#include <string>
#include <vector>

#include "exchange/sheets/report_model.hpp"
#include "ledger/verify/verify.hpp"
#include "records/keep/record_search.hpp"

namespace seamtakt {

/// What a ledger holds of a span of time (a shift) or of one seam over time, or of both, as tables: "summary"
/// (what was asked for, counts and sums), "units" (each with its verdicts, complete or not), "passes" in the
/// order in which they were welded (heat-input record), "methods", "manual", "statistics" (of one seam alone:
/// level, scatter and drift of what was logged, by pass and schedule), "schedules", "instruments",
/// "open-items", "changes" and "about". Void records are in the tables, marked, and aren't counted.
/// InputError: no record within the range.
std::vector<Sheet> period_sheets(const Ledger& ledger, const RecordRange& range, const SheetOrigin& origin);

/// The same tables as a report, a chart of a seam's heat input over time, the verification's word, cautions
/// and the newest signed head as an anchor line with its QR code.
Report period_report(const Ledger& ledger, const RecordRange& range, const VerifyReport& verified,
                     const std::string& made_at_utc);
/// As one HTML page.
std::string period_report_html(const Ledger& ledger, const RecordRange& range, const VerifyReport& verified,
                               const std::string& made_at_utc, const TextView& view);

/// "shift of 2026-03-02T06:00:00Z to 2026-03-02T14:00:00Z", "seam BD-2/S03": for headings.
SheetCell title_of(const RecordRange& range);

}  // namespace seamtakt
