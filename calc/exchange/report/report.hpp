#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/sheets/report_model.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"
#include "records/actual/cycle_actual.hpp"

namespace seamtakt {

/// The plan's report: the code and the severities that the plan chooses, findings, schedule sheets with the
/// data items that ISO 15609-1 lists, heat-input record by pass, seams, cycle sheet by weldment, order sheet
/// of the robots, cautions, sources, provenance and places to sign. A section is a file: plan_sections.hpp.
/// With `actual`, also the units of a log beside their planned cycles.
Report plan_report(const Plan& plan, const Evaluation& evaluation, const std::vector<CycleResult>& cycles,
                   const Provenance& provenance, const CycleActual* actual = nullptr);

/// Its tables: by what the plan is judged, heat-input record by pass, seams, weldments, cycle sheet, order
/// sheet, findings, schedule sheets and what it was made with and from (cautions included); with
/// `actual`, "actual" (arcs and gaps) and "actual-units".
std::vector<Sheet> report_sheets(const Plan& plan, const Evaluation& evaluation,
                                 const std::vector<CycleResult>& cycles, const Provenance& provenance,
                                 const CycleActual* actual = nullptr);

/// The report as one self-contained HTML page.
std::string report_html(const Plan& plan, const Evaluation& evaluation,
                        const std::vector<CycleResult>& cycles, const Provenance& provenance,
                        const TextView& view, const CycleActual* actual = nullptr);

}  // namespace seamtakt
