#pragma once

#include <optional>
#include <span>
#include <vector>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/evaluate/seam_plates.hpp"
#include "plan/plan_index.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

/// A longer wait between passes is no way to weld (common practice, no source); above the longest, the search
/// for its end is given up.
inline constexpr double never_above_s = 3600, longest_wait_s = 86400;

/// Whether a pass after the first has an upper interpass limit: without one, none waits.
bool limits_a_later_pass(const PlanIndex& index, const Seam& seam);

/// A pass's runs one after another, without the ways between them, from begin_s on; odd passes as drawn, even
/// ones back where they may. heat_J_mm: heat input; arc_time_s above 0.
std::vector<ArcHeat> arcs_of_pass(const Seam& seam, int pass, double begin_s, double arc_time_s,
                                  double heat_J_mm);

/// What the plates have before a pass (counts from 1) without the heat of earlier ones (degC): its preheat,
/// or that of the pass before where that is higher.
double plate_base_C(const PlanIndex& index, const Seam& seam, int pass);

/// Waits (s) before passes 2, 3, ... on plates of finite size: from the end of the pass before until the
/// place where the pass begins has cooled to its upper interpass limit; each pass is begun as soon as it may,
/// and the rises of all passes before it are added. At most longest_wait_s; 0 where there is no limit.
/// Formula and accuracy: JointField.
std::vector<double> plate_waits_s(const Plan& plan, const PlanIndex& index, const Seam& seam,
                                  const JointShape& shape, std::span<const PassEvaluation> passes,
                                  ExplanationSink* sink);

/// interpass.never: a wait on plates of finite size above an hour (fail). interpass.plates: sizes are given
/// that can't be used, so that endless plates are assumed (note).
void judge_plate_waits(const SeamFacts&, Findings&);

}  // namespace seamtakt
