#pragma once

#include "exchange/sheets/report_model.hpp"

class QPagedPaintDevice;
class QPrinter;

namespace seamtakt::desk {

/// Paints a report page by page, with the page's number and what the report is of at its foot. A group that
/// is a page of its own is laid out as large as it fits on one page, within bounds; one that is too long
/// even in the smallest type goes on to the next page. `printer`: the device, where it is one.
void paint_report(const Report& report, const TextView& view, QPagedPaintDevice& device, QPrinter* printer);

}  // namespace seamtakt::desk
