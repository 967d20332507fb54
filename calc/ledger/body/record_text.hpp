#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace seamtakt {

/// Longest texts of a record, in bytes. They must fit into a bundle's line and a report's page.
inline constexpr std::size_t longest_who = 200;   ///< a person's name
inline constexpr std::size_t longest_why = 2000;  ///< a reason, a note
inline constexpr std::size_t longest_id = 200;    ///< an instrument, a schedule, a serial, ...

/// A text on its way into a record: valid UTF-8 (else two verifiers may read it differently), at least one
/// visible character, at most `longest` bytes. Checked on writing only: old records stay unchanged.
/// InputError at `where`.
void check_record_text(const std::string& where, std::string_view text, std::size_t longest);

/// InputError at `where` unless it is a date such as 2026-11-25.
void check_date(const std::string& text, const char* where);

}  // namespace seamtakt
