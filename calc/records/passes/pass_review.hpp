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

/// Adds a rule to a list that has each once.
void add_rule(std::vector<std::string>& rules, const std::string& rule);

/// A pass on its way from sums to a judged record. Each step fills in its part of the record and adds what it
/// finds.
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

  Finding& add(const char* rule, Severity severity, std::string text, const char* source = no_source) {
    findings.push_back({rule, severity, place, std::nullopt, std::nullopt, "", std::move(text), source});
    return findings.back();
  }
  /// A finding that leaves open whether the pass is as its schedule asks.
  Finding& undecide(const char* rule, std::string text, const char* source = no_source) {
    add_rule(record.undecided_by, rule);
    return add(rule, Severity::warn, std::move(text), source);
  }
};

/// Relative uncertainties of the means that a record's heat input rests on. The review has a plan.
MeasuringUncertainty measured_with(const PassReview& review);

// The steps, in their order.
void fill_figures(PassReview& review);  ///< identity, times, means, energy
void fill_welded_length(PassReview& review);
void fill_heat_input(PassReview& review);  ///< and its uncertainty and the cooling time
void check_log(PassReview& review);        ///< is the log itself sound
void check_record(PassReview& review);     ///< required columns, revision, instruments, units of measure
void judge_limits(PassReview& review);
void decide_verdict(PassReview& review, std::size_t first_finding);

}  // namespace seamtakt
