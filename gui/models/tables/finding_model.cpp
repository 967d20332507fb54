#include "models/tables/finding_model.hpp"

#include "document/shown_text.hpp"
#include "models/words/place_text.hpp"

namespace seamtakt::desk {

namespace {

std::vector<GridColumn> finding_columns() {
  return {{"severity", FindingModel::tr("State"), "",
           FindingModel::tr("fail: a limit is not kept; warning: look at it; note: good to know"), false,
           true, nullptr},
          {"where", FindingModel::tr("Where"), "", FindingModel::tr("Weldment, seam and pass"), false, true,
           nullptr},
          {"text", FindingModel::tr("Finding"), "", {}, false, true, nullptr},
          {"value", FindingModel::tr("Value"), "", FindingModel::tr("What was found"), true, true, nullptr},
          {"limit", FindingModel::tr("Limit"), "", FindingModel::tr("What it is judged against"), true, true,
           nullptr},
          {"rule", FindingModel::tr("Rule"), "", FindingModel::tr("Stable name of the rule"), false, true,
           nullptr},
          {"source", FindingModel::tr("Source"), "", FindingModel::tr("Standard and clause"), false, true,
           nullptr}};
}

/// The unit differs from row to row, so it is shown beside the number.
ValueModel::Cell number_cell(const std::optional<double>& number, const std::string& unit) {
  return text_cell(number ? UnitView::shared().quantityText(*number, unit.c_str(), 4) : QString());
}

}  // namespace

FindingModel::FindingModel(QObject* parent) : ValueModel(finding_columns(), parent) {}

void FindingModel::setFindings(const Plan& plan, const Findings& findings) {
  findings_.clear();
  targets_.clear();
  std::vector<Row> rows;
  for (const Finding& finding : findings) {
    if (link_ && link_of(finding) != *link_) continue;
    findings_.push_back(finding);
    Row row;
    row.severity = finding.severity;
    targets_.push_back(target_of(plan, finding));
    row.address = targets_.back().address;
    const QString text = shown_text(finding.sentence);
    row.cells = {text_cell(severity_word(finding.severity)),
                 text_cell(place_text(finding.where)),
                 text_cell(text),
                 number_cell(finding.value, finding.unit),
                 number_cell(finding.limit, finding.unit),
                 text_cell(QString::fromStdString(finding.rule)),
                 text_cell(shown_source(finding.source))};
    row.cells[2].tip = text;
    rows.push_back(std::move(row));
  }
  setRows(std::move(rows));
}

}  // namespace seamtakt::desk
