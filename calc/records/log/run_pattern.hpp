#pragma once

#include <optional>

#include "records/log/kernel/row_kernel.hpp"
#include "records/log/log_header.hpp"
#include "records/log/log_row.hpp"
#include "records/log/record_splitter.hpp"
#include "records/log/sample_run.hpp"

namespace seamtakt {

/// Builds, from a row of the careful reader, the pattern that the rows after it must fit for the row kernel.
class RunPattern {
 public:
  /// Empty where no row of such a log is in the common form: times by a format, numbers in other units, a
  /// number or time that is carried too.
  static std::optional<RunPattern> of(const LogShape& shape);

  /// Forgets the decimals seen.
  void begin_chunk();
  /// Fits the pattern to this row, which the careful reader has just read from `fields`; false where its
  /// texts aren't in the log byte for byte.
  bool fit(const RecordSplitter& fields, const RecordSplitter::Record& record, const LogRow& row);

  const RowPattern& pattern() const { return pattern_; }
  RunScale scale() const;
  BlockRules block_rules(double arc_current_A, std::int64_t longest_step_ns) const;
  /// Whether rows of the run can be added up in blocks.
  bool adds_up() const;

 private:
  explicit RunPattern(const LogShape& shape) : shape_(&shape) {}

  struct Cells {
    std::size_t first, count;
  };
  bool fit_step(const RowStep& step, const Cells& cells, const RecordSplitter& fields, const LogRow& row);
  bool fit_time_of_day(std::string_view text, const LogRow& row);

  const LogShape* shape_;
  std::vector<Cells> cells_;  ///< of each step
  RowPattern pattern_;
};

}  // namespace seamtakt
