#pragma once

#include <optional>
#include <string>

#include "base/finding.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/pass_entry.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

inline constexpr const char* no_source = "common practice, no source";
inline constexpr const char* plan_limit = "plan limit";
inline constexpr const char* unit_border_rule = "record.unit.border";
inline constexpr const char* instrument_overdue_rule = "record.instrument.overdue";

inline UnitValue mm(double value) {
  return {value, "mm"};
}

/// Adds a rule to a list that has each once.
void add_rule(std::vector<std::string>& rules, const std::string& rule);

/// A pass on its way from sums to a judged record. Each step fills in its part of the record and adds its
/// findings.
struct PassReview {
  const PassEntry& entry;
  const PassTotals& totals;
  const AuditOptions& options;
  const PlannedPasses* plan;  ///< nullptr: none given
  const Robot* robot;         ///< nullptr: not known
  PassRecord& record;
  Findings& findings;
  std::string place;

  const Schedule* schedule() const { return entry.planned ? entry.planned->schedule : nullptr; }
  const Seam* seam() const { return entry.planned ? entry.planned->seam : nullptr; }
  /// Whose instruments measured it.
  const std::string& measured_robot() const { return robot != nullptr ? robot->id : record.robot; }

  Finding& add(const char* rule, Severity severity, Sentence sentence, const char* source = no_source) {
    findings.push_back({rule, severity, place, std::nullopt, std::nullopt, "", std::move(sentence), source});
    return findings.back();
  }
  /// A finding that leaves open whether the pass meets its schedule.
  Finding& undecide(const char* rule, Sentence sentence, const char* source = no_source) {
    add_rule(record.undecided_by, rule);
    return add(rule, Severity::warn, std::move(sentence), source);
  }
};

/// Relative uncertainties of the means that a record's heat input rests on. The review has a plan.
MeasuringUncertainty measured_with(const PassReview& review);

// The steps, in their order.
void fill_figures(PassReview& review);  ///< identity, times, means, energy
void fill_welded_length(PassReview& review);
void fill_heat_input(PassReview& review);   ///< and its uncertainty and the cooling time
void check_log(PassReview& review);         ///< is the log itself sound
void check_record(PassReview& review);      ///< required columns, revision, instruments, units of measure
void judge_limits(PassReview& review);      ///< means against limits
void judge_excursions(PassReview& review);  ///< stretches outside them
void decide_verdict(PassReview& review, std::size_t first_finding);

}  // namespace seamtakt
