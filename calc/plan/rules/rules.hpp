#pragma once

#include "base/finding.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// A rule looks at one pass, one seam or the plan and appends what it finds. One rule a function, one subject
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

// Passes.
void judge_schedule_limits(const PassFacts&, const PassEvaluation&, Findings&);
void judge_cooling_time(const PassFacts&, const PassEvaluation&, Findings&);
void judge_hardness(const PassFacts&, const PassEvaluation&, Findings&);
void judge_preheat(const PassFacts&, const PassEvaluation&, Findings&);
void judge_melting_law(const PassFacts&, const PassEvaluation&, Findings&);
void judge_power_source(const PassFacts&, const PassEvaluation&, Findings&);
void judge_schedule_use(const PassFacts&, const PassEvaluation&, Findings&);
void judge_qualification_range(const PassFacts&, const PassEvaluation&, Findings&);

// Seams.
void judge_fillet_size(const SeamFacts&, Findings&);
void judge_fillet_minimum(const SeamFacts&, Findings&);
void judge_excess_throat(const SeamFacts&, Findings&);
void judge_groove_fill(const SeamFacts&, Findings&);
void judge_intermittent(const SeamFacts&, Findings&);
void judge_tracking(const SeamFacts&, Findings&);
void judge_tacks(const SeamFacts&, Findings&);

// The plan.
void judge_schedule_status(const Plan&, const PlanIndex&, Findings&);
void judge_qualification_dates(const Plan&, std::string_view date, Findings&);
void judge_composition_basis(const Plan&, Findings&);
void judge_composition_range(const Plan&, Findings&);
void judge_qualification_basis(const Plan&, Findings&);

/// A value against [lower, upper] under the plan's decision rule. `U` is the expanded uncertainty (k = 2) or
/// empty. Beyond the limit: a fail "RULE.low" or "RULE.high". Inside it by less than U under a guarded
/// decision: a warn "RULE.guard-band" (ILAC-G8:09/2019, 4.2.2: guard band w = U).
void judge_interval(const char* rule, Word what, const char* unit, double value,
                    std::optional<double> U, const Interval& limit, bool guarded, const std::string& place,
                    Findings& findings, const char* source = "plan limit");

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
