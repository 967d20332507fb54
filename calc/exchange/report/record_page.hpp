#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/sheets/html.hpp"
#include "exchange/sheets/sheet.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

/// Parts that the pages of records have in common.

/// Where the store isn't trusted, that word before all others.
void put_distrust(HtmlPage& page, const VerifyReport& verified);
/// A sheet of item and value as rows of label and value.
void put_pairs(HtmlPage& page, const Sheet& sheet);
/// A sheet below its heading; "None." where it is empty.
void put_table(HtmlPage& page, const std::string& heading, const Sheet& sheet);
/// std::logic_error where there is none.
const Sheet& sheet_named(const std::vector<Sheet>& sheets, std::string_view name);
/// What every record page ends with: open items, passes, manual seams, schedule revisions, instruments and
/// changes; whether the records can be trusted, with the newest signed head as an anchor line and its QR
/// code; program, store and time of the report; places to sign.
void put_records(HtmlPage& page, const std::vector<Sheet>& sheets, const VerifyReport& verified,
                 const SheetOrigin& origin);

}  // namespace seamtakt
