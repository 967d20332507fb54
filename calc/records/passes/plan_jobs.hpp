#pragma once

#include "plan/plan.hpp"
#include "records/log/log_columns.hpp"

namespace seamtakt {

/// The meaning of the plan's job numbers (`seams[].jobs`, one per pass) in a log. Where several passes have
/// the same number, what they agree on stays known: two weldments with the same seams leave the weldment to
/// the log or to the units' times.
std::map<std::string, JobIdentity, std::less<>> jobs_of(const Plan& plan);

/// The columns that a log is read with: those given, and where they map no job numbers, the plan's. `plan`
/// may be nullptr.
std::optional<LogColumns> with_plan_jobs(std::optional<LogColumns> columns, const Plan* plan);

}  // namespace seamtakt
