#include "records/passes/plan_jobs.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

template <class Value>
void keep_common(std::optional<Value>& known, const std::optional<Value>& other) {
  if (known != other) known.reset();
}

}  // namespace

std::map<std::string, JobIdentity, std::less<>> jobs_of(const Plan& plan) {
  std::map<std::string, JobIdentity, std::less<>> jobs;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (std::size_t i = 0; i < std::min(seam.jobs.size(), seam.schedules.size()); ++i) {
        const JobIdentity identity{weldment.id, seam.id, static_cast<int>(i) + 1};
        const auto [at, is_new] = jobs.emplace(seam.jobs[i], identity);
        if (is_new) continue;
        keep_common(at->second.weldment, identity.weldment);
        keep_common(at->second.seam, identity.seam);
        keep_common(at->second.pass, identity.pass);
      }
  return jobs;
}

std::optional<LogColumns> with_plan_jobs(std::optional<LogColumns> columns, const Plan* plan) {
  if (plan == nullptr || (columns && !columns->jobs.empty())) return columns;
  auto jobs = jobs_of(*plan);
  if (jobs.empty()) return columns;
  if (!columns) columns.emplace();
  columns->jobs = std::move(jobs);
  return columns;
}

}  // namespace seamtakt
