#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "records/keep/record_history.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// How a nonconformance is dealt with.
enum class Decision { repair, use_as_is, scrap };
const char* to_string(Decision decision);
/// Empty for any other text.
std::optional<Decision> decision_of(const std::string& text);
/// "repair", "use-as-is" or "scrap"; InputError at --decision.
Decision parse_decision(const std::string& text);

/// A failure and its disposition. A repair closes it with the record of the re-test alone.
struct Nonconformance {
  std::uint64_t seq = 0;
  std::uint64_t about = 0;  ///< the record that failed
  std::string opened, unit_serial, place;
  Sentence sentence;  ///< what failed, or why a person opened it
  std::vector<std::uint64_t> dispositions;
  std::optional<Decision> decision;  ///< the newest one
  std::uint64_t retest = 0;          ///< the record that passed after the repair
  bool open = true;

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

/// Those of one unit, or all (`unit_serial` empty), in order. Void ones, and those about void records, are
/// closed.
std::vector<Nonconformance> nonconformances(const Ledger& ledger, const std::string& unit_serial);
std::vector<Nonconformance> nonconformances(RecordHistory& history, const std::string& unit_serial);

/// The nonconformance that record `seq` is.
Nonconformance nonconformance_of(RecordHistory& history, std::uint64_t seq);

struct DispositionRequest {
  std::uint64_t nonconformance = 0;
  Decision decision = Decision::repair;
  std::string schedule;      ///< a repair's
  std::uint64_t retest = 0;  ///< record of the pass that was welded again, or of the manual seam; 0: not yet
  std::string who = "";      ///< decides; required where the plan demands four eyes (four_eyes.hpp)
};

/// InputError: no nonconformance, one that is closed, a repair without schedule, a re-test that isn't a later
/// record of the same unit, seam and pass with verdict pass.
LedgerEntry disposition_entry(const Ledger& ledger, const DispositionRequest& request);

/// A nonconformance that a person opens about a record (what an inspector found).
LedgerEntry raised_nonconformance_entry(const Ledger& ledger, std::uint64_t about);

/// Passes that are undecided for the same reason and have no disposition yet.
struct OpenCause {
  std::string cause;  ///< the rule that left them open
  Sentence sentence;  ///< what it says of the first of them
  std::vector<std::uint64_t> records;
  std::vector<std::string> passes;  ///< "S03/pass 1"

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

/// Undecided passes that one disposition covers (cause_disposition.hpp): they are open no more.
struct DecidedCause {
  std::uint64_t disposition = 0;
  Decision decision = Decision::use_as_is;
  OpenCause cause;
};

/// What the ledger knows of a unit.
struct UnitStatus {
  std::string unit_serial, weldment;
  std::vector<std::uint64_t> passes, manual;  ///< records that aren't void
  std::vector<std::string> missing;           ///< "S03/pass 1" that no record of the plan's passes shows
  std::vector<Nonconformance> nonconformances;
  std::vector<OpenCause> open_causes;
  std::vector<DecidedCause> decided_causes;
  std::size_t open_nonconformances() const;
  /// Open nonconformances and causes together.
  std::size_t open_items() const { return open_nonconformances() + open_causes.size(); }
  std::size_t failed = 0, undecided = 0;  ///< of the passes
  bool scrapped = false;
  /// All passes there, each passed or dealt with by a disposition. Empty where no plan said what it needs.
  std::optional<bool> complete;
};
UnitStatus unit_status(const Ledger& ledger, const std::string& unit_serial);
UnitStatus unit_status(RecordHistory& history, const std::string& unit_serial);

/// The passes and manual seams that the store has of a unit, each with one of the rules by which it is open.
std::vector<StoredPass> stored_passes(const Ledger& ledger, const std::string& unit_serial);

/// Serial numbers of the units that a ledger has records of, in order of their bytes.
std::vector<std::string> unit_serials(const Ledger& ledger);

}  // namespace seamtakt
