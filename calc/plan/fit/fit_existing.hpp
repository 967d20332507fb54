#pragma once

#include <string>
#include <vector>

#include "plan/evaluate/evaluation.hpp"
#include "plan/fit/fit.hpp"
#include "plan/window/seam_alone.hpp"

namespace seamtakt {

/// What the passes that `alone` welds with `schedule`, and the whole seam, are welded with and give.
FitSettings fit_settings(const SeamAlone& alone, const Evaluation& evaluation, const std::string& schedule);

/// Schedules of the plan that could replace `main` unchanged: the same process and wire, as
/// many passes, what is held the same, all limits kept with the margin, and no warning of preheat (but where
/// `planned` fails with one beside it).
/// Approved ones first, and of these the best by the objective.
std::vector<FitSettings> schedules_that_fit(const SeamAlone& alone, const std::string& main,
                                            const Evaluation& planned, const FitOptions& options);

/// A warning that preheat falls short.
bool warns_of_preheat(const Findings& findings);

}  // namespace seamtakt
