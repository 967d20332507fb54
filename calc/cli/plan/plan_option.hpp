#pragma once

#include <string>

#include "exchange/report/provenance.hpp"
#include "plan/plan.hpp"

namespace seamtakt::cli {

/// A plan as a command read it, with what its results were made from.
struct LoadedPlan {
  Plan plan;
  Provenance provenance;
};
LoadedPlan load(const std::string& path);

/// InputError at `option` where `output` is the plan's file itself: a proposal never replaces it.
void refuse_plan_that_is_read(const std::string& plan, const std::string& output, const char* option);

/// The weldments that a command is about: all, or the one named. InputError where there is none of that id.
std::vector<const Weldment*> chosen_weldments(const Plan& plan, const std::string& id);

}  // namespace seamtakt::cli
