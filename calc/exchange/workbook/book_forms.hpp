#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exchange/workbook/book.hpp"

namespace seamtakt {

class ZipArchive;

/// A workbook of Office Open XML (ISO/IEC 29500), transitional or strict.
Book read_xlsx(ZipArchive& archive);
/// An OpenDocument spreadsheet (ISO/IEC 26300).
Book read_ods(ZipArchive& archive);

/// Whether a number format of Office Open XML shows a date or a time of day: the built-in ones by their
/// number, others by their code. Source: ISO/IEC 29500-1, 18.8.30 (recalled).
bool is_date_format(std::size_t id, std::string_view code);

/// The date of a workbook's day number, "2026-03-02" or "2026-03-02T06:30:00", rounded to seconds; nothing
/// outside the years 1900 to 9999. Day 60 of the system that begins in 1900, its 29 February, is the 28th.
/// Source: ISO/IEC 29500-1, 18.17.4.1 (recalled).
std::optional<std::string> date_of_serial(double days, bool begins_1904);

}  // namespace seamtakt
