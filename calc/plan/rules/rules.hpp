#pragma once

#include <span>

#include "base/finding.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// A rule checks one pass, one seam or the plan and appends its findings. One rule a function, one subject
/// a file. Rule ids and places are stable: a person's acceptance is kept against them.
using PassRule = void (*)(const PassFacts&, const PassEvaluation&, Findings&);

/// A seam with its passes, for the rules on what all passes together give.
struct SeamFacts {
  const Plan& plan;
  const PlanIndex& index;
  const Weldment& weldment;
  const Seam& seam;
  const SeamEvaluation& figures;
  std::string place() const { return seam_place(weldment.id, seam.id); }
};
using SeamRule = void (*)(const SeamFacts&, Findings&);

/// Severity of a finding by a rule that one code alone has ("EN 1090-2", "AWS D1.1"): a plan by that code
/// gets it, one by another code none (empty), and one that names no code a note.
std::optional<Severity> severity_by_code(const Plan& plan, std::string_view code, Severity under_the_code);

// Passes.
void judge_schedule_limits(const PassFacts&, const PassEvaluation&, Findings&);
void judge_cooling_time(const PassFacts&, const PassEvaluation&, Findings&);
void judge_hardness(const PassFacts&, const PassEvaluation&, Findings&);
void judge_preheat(const PassFacts&, const PassEvaluation&, Findings&);
void judge_melting_law(const PassFacts&, const PassEvaluation&, Findings&);
void judge_power_source(const PassFacts&, const PassEvaluation&, Findings&);
void judge_transfer_position(const PassFacts&, const PassEvaluation&, Findings&);
void judge_schedule_use(const PassFacts&, const PassEvaluation&, Findings&);
void judge_qualification_range(const PassFacts&, const PassEvaluation&, Findings&);
void judge_qualification_variables(const PassFacts&, const PassEvaluation&, Findings&);
void judge_qualification_d1_1(const PassFacts&, const PassEvaluation&, Findings&);
/// Whether a test by AWS D1.1 states a setting that judge_qualification_d1_1 compares.
bool states_essential_settings(const TestedWeld& tested);

/// What judged the pass, whatever was found.
std::uint8_t judged_by(const PassFacts& facts, const PassEvaluation& pass);
/// Whether a procedure test is compared with the pass, by ISO 15614-1 or AWS D1.1.
bool is_judged_by_test(const PassFacts& facts);

// Seams.
void judge_fillet_size(const SeamFacts&, Findings&);
void judge_fillet_minimum(const SeamFacts&, Findings&);
void judge_excess_throat(const SeamFacts&, Findings&);
void judge_groove_fill(const SeamFacts&, Findings&);
void judge_intermittent(const SeamFacts&, Findings&);
void judge_tracking(const SeamFacts&, Findings&);
void judge_tacks(const SeamFacts&, Findings&);
void judge_single_pass(const SeamFacts&, Findings&);
void judge_dihedral(const SeamFacts&, Findings&);
void judge_root_gap(const SeamFacts&, Findings&);

// The plan.
/// `used`: each schedule that seams use, once, in their order.
void judge_schedule_status(std::span<const Schedule* const> used, Findings&);
/// Approved schedules that aren't what was approved, by the digest that they state.
void judge_approved_changes(const Plan&, Findings&);
void judge_arc_length(std::span<const Schedule* const> used, Findings&);
/// Currents by the melting law in arcs that aren't steady.
void judge_melting_waveform(std::span<const Schedule* const> used, Findings&);
void judge_qualification_dates(const Plan&, std::string_view date, Findings&);
/// Use that lapsed, by the last day on which a procedure was welded by; empty date: not judged.
void judge_qualification_lapse(const Plan&, const PlanIndex&, std::string_view date, Findings&);
/// Tacks, and gaps between the runs of intermittent welds: each once a weldment, with a count.
void judge_tack_lengths(const Plan&, Findings&);
void judge_run_gaps(const Plan&, Findings&);
/// Fillets with a quality level whose torch isn't on the bisector: said once a schedule that it isn't judged.
void judge_unequal_legs(const Plan&, const PlanIndex&, Findings&);
void judge_composition_basis(const Plan&, Findings&);
void judge_composition_range(const Plan&, Findings&);
void judge_qualification_basis(const Plan&, Findings&);
void judge_qualification_positions(const Plan&, const PlanIndex&, Findings&);
void judge_job_numbers(const Plan&, Findings&);

/// A value against [lower, upper] under the plan's decision rule. `U` is the expanded uncertainty (k = 2) or
/// empty. Beyond the limit: a fail "RULE.low" or "RULE.high". Inside it by less than U under a guarded
/// decision: a warn "RULE.guard-band" (ILAC-G8:09/2019, 4.2.2: guard band w = U).
void judge_interval(const char* rule, Word what, const char* unit, double value, std::optional<double> U,
                    const Interval& limit, bool guarded, const std::string& place, Findings& findings,
                    const char* source = "plan limit");

bool guarded_decision(const Plan&);

/// The same for a pass, whose place is named only where something is found.
inline void judge_interval(const char* rule, Word what, const char* unit, double value,
                           std::optional<double> U, const Interval& limit, bool guarded,
                           const PassFacts& facts, Findings& findings) {
  const double guard = guarded && U ? *U : 0;
  const bool low = limit.lower && value < *limit.lower + guard,
             high = limit.upper && value > *limit.upper - guard;
  if (low || high) judge_interval(rule, what, unit, value, U, limit, guarded, facts.place(), findings);
}

}  // namespace seamtakt
