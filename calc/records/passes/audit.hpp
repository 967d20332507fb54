#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/files/byte_source.hpp"
#include "plan/plan.hpp"
#include "records/log/log_columns.hpp"
#include "records/log/log_sweep.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/unit_times.hpp"
#include "records/passes/welders.hpp"
#include "records/statistics/process_statistics.hpp"

namespace seamtakt {

/// Entry of the plan's `record_requires` that is no column: who opened a nonconformance of these passes can't
/// close it "use as is".
inline constexpr const char* four_eyes_requirement = "four_eyes";

/// A log by its path ("-" standard input, ".gz" gzip), or its bytes under a name.
struct LogSource {
  std::string path;
  std::shared_ptr<ByteSource> bytes;  ///< nullptr: opened from `path`
};

/// What a store holds of the same pass as a record.
struct StoredWelds {
  struct Part {
    std::uint64_t seq = 0;
    PassCoverage coverage;
  };
  std::vector<Part> parts;      ///< valid records whose coverage is known
  bool being_repaired = false;  ///< a repair was decided on and hasn't been re-tested yet
};

/// When a stretch outside a limit counts, though the mean of the pass is inside. 25 mm in any 100 mm borrows
/// the short imperfection of ISO 5817; the rest is common practice, no source.
struct ExcursionOptions {
  /// Width of the bins whose means are judged, in arc time; empty: default_limits_window_s().
  std::optional<double> window_s;
  double gas_window_s = 3;  ///< likewise of the gas flow
  double note_mm = 10;      ///< a longer stretch leaves the pass undecided
  double share_pct = 5;     ///< more of the steady length likewise
  double fail_mm = 25;      ///< more in any `within_mm` fails it; of a shorter weld, in proportion
  double within_mm = 100;
};

struct AuditOptions {
  std::string unit_serial, weldment, seam;  ///< where the log doesn't say
  std::optional<int> pass;
  double arc_current_A = 5;          ///< the arc is on above it
  double arc_off_s = 1;              ///< without logged identity, a longer gap begins a new pass
  double frozen_s = 2;               ///< current and voltage repeated for longer: a frozen logger
  double length_tolerance_pct = 10;  ///< by which arc time x planned speed may differ from the planned length
  double length_short_mm = 10;       ///< by which a pass may be shorter than its seam
  ExcursionOptions excursions;
  bool close_units = false;  ///< no further log will continue with a pass of these
  /// What the store has of the same pass; asked for passes that are too short by the logs alone. May be
  /// empty.
  std::function<StoredWelds(const PassRecord&)> stored;
  /// What the store has of a unit; asked once for each unit where a plan is given. May be empty.
  std::function<std::vector<StoredPass>(const std::string& unit_serial)> stored_unit;
  double job_gap_s = 30;  ///< job number without serial: a longer gap is another unit's
  std::string process;    ///< ISO 4063 number for k where no plan tells it
  /// Where they map no job numbers, the plan's (`seams[].jobs`) identify seams and passes.
  std::optional<LogColumns> columns;
  std::vector<UnitTime> units;  ///< unit and weldment by time
  std::vector<ManualSeam> manual;
  std::vector<Welder> welders;     ///< whose qualifications are known; empty: nobody's
  std::vector<std::string> carry;  ///< columns kept word for word
  std::uint64_t max_rejected = 0;
  std::size_t sort_window = 0;  ///< window (rows) within which rows are sorted by time
  bool digest = false;          ///< SHA-256 of each log's (uncompressed) bytes
  LogReaderOptions reader;
  /// Called now and then with bytes taken so far and in all (0 where unknown). May throw to stop the audit.
  std::function<void(std::uint64_t, std::uint64_t)> progress;
};

/// A log as it was read.
struct AuditedLog {
  std::string name;
  std::uint64_t bytes = 0;  ///< uncompressed
  std::uint64_t rows = 0;
  std::string sha256;  ///< of the uncompressed bytes; empty unless asked for
};

/// read = in_passes + arc_off + rejected, always.
struct RowCounts {
  std::uint64_t read = 0, in_passes = 0, arc_off = 0, rejected = 0;
  bool add_up() const { return read == in_passes + arc_off + rejected; }
};

struct AuditResult {
  std::vector<PassRecord> passes;  ///< in the order in which they begin in the logs
  std::vector<UnitRecord> units;
  std::vector<ManualSeam> manual;
  std::vector<StoredPass> stored;  ///< what the store had of these units
  RejectedRows rejected;
  RowCounts rows;
  std::vector<AuditedLog> logs;
  ProcessStatistics statistics;  ///< where a plan is given
  Findings findings;
  /// More rows were rejected than --max-rejected allows: the summary is to be shown, nothing stored, exit
  /// code 2.
  bool too_many_rejected = false;
};

/// Pass records of the logs, each judged against its schedule where a plan is given. Means, energy, length
/// and verdicts as the contract defines them; memory stays bounded whatever the logs' size. Pure except for
/// reading the logs: no clock, no locale. InputError: a log that can't be used at all, an unknown process.
/// std::system_error: reading failed.
AuditResult audit(const std::vector<LogSource>& logs, const AuditOptions& options, const Plan* plan);

}  // namespace seamtakt
