#pragma once

#include <string>

#include "exchange/sheets/report_model.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

/// A unit's certificate of conformity: whether it conforms by its records (complete, in a store that is
/// trusted, not scrapped), what was welded by which schedules and qualifications, the verdict of all passes,
/// what deviated and what was decided, whether the records can be trusted, and places to sign. It documents;
/// the governing code and who signs decide. InputError: the ledger has no record of that serial.
Report unit_certificate(const Ledger& ledger, const std::string& unit_serial, const VerifyReport& verified,
                        const std::string& made_at_utc);

}  // namespace seamtakt
