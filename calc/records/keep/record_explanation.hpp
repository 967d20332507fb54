#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formula/note.hpp"
#include "plan/plan.hpp"
#include "records/keep/record_history.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// A number of a pass record that explains itself: how it follows from others, and what these rest on.
struct RecordExplanation {
  /// What an instrument has to do with the number's uncertainty.
  struct Share {
    const char* quantity = "";  ///< "voltage", "current", "travel_speed", "waveform_factor"
    double u_pct = 0;           ///< relative standard uncertainty
    double u_kJ_mm = 0;         ///< its part in the heat input's standard uncertainty
    double share_pct = 0;       ///< of the variance
  };

  std::string key, unit;
  std::optional<double> value;        ///< by what holds now
  std::vector<Explanation> formulas;  ///< of the number, then of those that it rests on; empty: measured
  std::optional<double> thermal_efficiency;  ///< k, where the number rests on it
  std::string energy_method, power_method, schedule, length_source;
  std::optional<double> waveform_factor, lead_resistance_mOhm;  ///< that the energy was corrected by
  std::string log, log_sha256;                                  ///< the latter where the store is asked
  std::uint64_t first_line = 0, last_line = 0, samples = 0;
  std::vector<UsedInstrument> instruments;  ///< in force on the day of the weld
  std::vector<Share> budget;                ///< of an uncertainty of the heat input
  std::vector<std::uint64_t> corrections;   ///< records that changed the pass; the number is theirs

  /// The same for people beside the formulas, a sentence each.
  std::vector<Sentence> basis() const;
};

/// A number of a stored pass: "heat_input_kJ_mm", "steady.current_A". InputError: a record of another kind;
/// at
/// --explain: no number of a pass.
RecordExplanation explain_record(RecordHistory& history, std::uint64_t seq, std::string_view key);

/// The same of a pass that isn't stored yet. `plan`: by which it was judged; nullptr: none.
RecordExplanation explain_pass(const PassRecord& record, const Plan* plan, std::string_view key);

}  // namespace seamtakt
