#pragma once

#include <string>

#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// One pass with all that it refers to, resolved.
struct PassFacts {
  const Plan& plan;
  const PlanIndex& index;
  const Weldment& weldment;
  const Seam& seam;
  int pass;  ///< counts from 1
  const Schedule& schedule;
  const Wire& wire;
  const Gas* gas;                   ///< nullptr where the schedule names none
  const PowerSource* power_source;  ///< nullptr where the schedule names none
  const BaseMetal* metals[2];

  /// How findings name the pass. Made when first asked for: most passes give nothing to find.
  const std::string& place() const {
    if (place_.empty()) place_ = pass_place(weldment.id, seam.id, pass);
    return place_;
  }
  mutable std::string place_ = {};
};

PassFacts pass_facts(const Plan& plan, const PlanIndex& index, const Weldment& weldment, const Seam& seam,
                     int pass);

}  // namespace seamtakt
