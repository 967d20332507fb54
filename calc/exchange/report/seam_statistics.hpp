#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "exchange/sheets/sheet.hpp"
#include "records/keep/record_search.hpp"
#include "records/statistics/process_chart.hpp"

namespace seamtakt {

/// One logged quantity of a seam's pass over time, under one schedule and its revision.
struct SeamSeries {
  std::string place;                 ///< "BD-2/S03/pass 1"
  std::string schedule;              ///< "F6", or empty
  std::string quantity;              ///< the record's key: "heat_input_kJ_mm"
  std::string unit;                  ///< of its values
  std::vector<double> days, values;  ///< days after the first; in order of time
  std::vector<std::string> units;    ///< serials
};

/// Series of heat input, current, voltage and travel speed of the records that aren't void and have them.
std::vector<SeamSeries> seam_series(RecordHistory& history, const std::vector<FoundRecord>& records);

/// "statistics": a row a series, with the chart of individual values and moving ranges (8 values or more) and
/// the drift by day (8 values over at least a day); common practice, no source.
Sheet statistics_sheet(const std::vector<SeamSeries>& series);

/// An SVG picture: values in order of time, their centre and limits. Values outside are marked by shape.
std::string series_svg(const SeamSeries& series, const SheetCell& title, const TextView& view);

}  // namespace seamtakt
