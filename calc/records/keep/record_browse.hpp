#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records/keep/record_search.hpp"

namespace seamtakt {

/// Which stored passes and manual seams a person looks for; an empty text means any.
struct RecordFilter {
  std::string unit_serial, robot, schedule;
  std::string welder;  ///< a manual seam's welder by name, or a pass's carried column "welder" or "operator"
  std::string lot;     ///< a value of a carried column whose name ends in "lot"
  RecordRange range;   ///< when it was welded
};

/// A pass or manual seam by what holds now, with what it is listed by.
struct BrowsedRecord {
  std::uint64_t seq = 0;
  std::string kind;
  std::string unit_serial, weldment, seam;
  std::optional<int> pass;
  std::string schedule, robot, welder, lot;
  std::string time;  ///< when it was welded, else when it was stored
  std::optional<double> heat_input_kJ_mm;
  std::string verdict;                    ///< of a manual seam its result
  std::vector<std::string> undecided_by;  ///< the rules that left a pass open
  bool is_void = false;
};

/// A page of what was found.
struct BrowsedPage {
  std::vector<BrowsedRecord> records;
  std::uint64_t next = 0;  ///< from where the next page goes on; 0: there is none
};

/// The first `rows` records from number `from` on that meet the filter, in the order in which they were
/// stored; void ones are among them, marked. Of a serial number or some days their own records alone are
/// read; else the store's in short transactions, as far as the page needs. `go_on` is asked now and then and
/// may throw.
BrowsedPage browse_records(const Ledger& ledger, const RecordFilter& filter, std::uint64_t from,
                           std::size_t rows, const std::function<void()>& go_on = {});

}  // namespace seamtakt
