#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "records/keep/record_history.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// How a calibration found its instrument, before any adjustment (member `as_found` of its record).
inline constexpr const char *as_found_in_tolerance = "in-tolerance",
                            *as_found_out_of_tolerance = "out-of-tolerance";

/// A pass that was undecided as an instrument was overdue, and how it is judged now that all instruments that
/// were overdue on its day were found in tolerance (ISO 10012, recalled: an instrument that is found good at
/// its next calibration was good since the one before).
struct JudgedAgain {
  std::uint64_t seq = 0;
  std::string unit_serial, verdict;
  std::vector<std::string> undecided_by;    ///< what is still open
  std::vector<std::uint64_t> calibrations;  ///< stored ones that found an instrument in tolerance
};

/// What the store's calibrations say of passes that were undecided as an instrument was overdue. Each
/// instrument is asked for once.
class LaterCalibrations {
 public:
  struct Calibration {
    std::uint64_t seq = 0;  ///< 0: the one that isn't stored yet
    std::string date, as_found;
  };

  explicit LaterCalibrations(RecordHistory& history) : history_(history) {}
  /// One that isn't stored yet and found its instrument in tolerance.
  void expect(const std::string& instrument, const std::string& date);
  /// The first one on that day or after it; nullptr: none yet.
  const Calibration* first_after(const std::string& instrument, const std::string& day);
  /// A pass on its way into the store as record `seq`; empty: nothing decides it yet.
  std::optional<JudgedAgain> judge(const PassRecord& record, std::uint64_t seq);

 private:
  std::vector<Calibration>& of(const std::string& instrument);

  RecordHistory& history_;
  std::map<std::string, std::vector<Calibration>> known_;
};

/// The passes that a calibration of `instrument` on `date` (2026-11-25) decides, which isn't stored yet and
/// found it in tolerance: those of its interval, so that of each instrument the first calibration after the
/// weld counts. Goes through all records of the store in short transactions.
std::vector<JudgedAgain> passes_judged_again(const Ledger& ledger, const std::string& instrument,
                                             const std::string& date);

/// The new record about the pass: the old one stays. `calibration`: number of the one that decides, with
/// those of `pass.calibrations`.
LedgerEntry judgement_entry(const JudgedAgain& pass, std::uint64_t calibration);
/// The same where stored calibrations alone decide.
LedgerEntry judgement_entry(const JudgedAgain& pass);

/// Puts verdict and open rules of a corrected body right by its judgements that hold: those that aren't void
/// and whose calibrations aren't either. `before`: numbers from this one on don't count.
void apply_judgements(RecordHistory& history, std::uint64_t seq, std::uint64_t before, JsonNode& body);

}  // namespace seamtakt
