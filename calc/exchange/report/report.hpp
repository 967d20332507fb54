#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/provenance.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// The plan's report as one self-contained HTML page: findings, schedule sheets with the data items that
/// ISO 15609-1 lists, heat-input record by seam, cycle sheet by weldment, cautions, sources, provenance and
/// places to sign.
std::string report_html(const Plan& plan, const Evaluation& evaluation,
                        const std::vector<CycleResult>& cycles, const Provenance& provenance);

}  // namespace seamtakt
