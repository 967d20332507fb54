#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/sheets/report_model.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// The plan's report: findings, schedule sheets with the data items that ISO 15609-1 lists, heat-input record
/// by pass, seams, cycle sheet by weldment, order sheet of the robots, cautions, sources, provenance and
/// places to sign. A section is a file: plan_sections.hpp.
Report plan_report(const Plan& plan, const Evaluation& evaluation, const std::vector<CycleResult>& cycles,
                   const Provenance& provenance);

/// Its tables: heat-input record by pass, seams, weldments, cycle sheet, order sheet, findings, schedule
/// sheets and what it was made with and from (cautions included).
std::vector<Sheet> report_sheets(const Plan& plan, const Evaluation& evaluation,
                                 const std::vector<CycleResult>& cycles, const Provenance& provenance);

/// The report as one self-contained HTML page.
std::string report_html(const Plan& plan, const Evaluation& evaluation,
                        const std::vector<CycleResult>& cycles, const Provenance& provenance,
                        const TextView& view);

}  // namespace seamtakt
