#include "models/tables/finding_model.hpp"

#include <map>

#include "document/plan_address.hpp"
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

}  // namespace

FindingModel::FindingModel(QObject* parent) : ValueModel(finding_columns(), parent) {}

void FindingModel::setFindings(const Plan& plan, const Findings& findings) {
  findings_.clear();
  targets_.clear();
  for (const Finding& finding : findings) {
    if (link_ && link_of(finding) != *link_) continue;
    findings_.push_back(finding);
    targets_.push_back(target_of(plan, finding));
  }
  arrange();
}

void FindingModel::setGrouped(bool grouped) {
  grouped_ = grouped;
  arrange();
}

void FindingModel::toggle(int row) {
  if (!isGroup(row)) return;
  const std::string cause = causeOf(lineAt(row).findings.front());
  if (!open_.erase(cause)) open_.insert(cause);
  arrange();
}

std::string FindingModel::causeOf(std::size_t finding) const {
  return findings_[finding].rule + "/" + to_string(findings_[finding].severity);
}

/// Groups stand where their first finding is.
void FindingModel::arrange() {
  lines_.clear();
  std::map<std::string, std::vector<std::size_t>> groups;
  if (grouped_)
    for (std::size_t i = 0; i < findings_.size(); ++i) groups[causeOf(i)].push_back(i);
  for (std::size_t i = 0; i < findings_.size(); ++i) {
    if (!grouped_) {
      lines_.push_back({{i}});
      continue;
    }
    const std::string cause = causeOf(i);
    const std::vector<std::size_t>& all = groups[cause];
    if (all.front() != i) continue;
    lines_.push_back({all});
    if (all.size() > 1 && open_.contains(cause))
      for (const std::size_t member : all) lines_.push_back({{member}, true});
  }
  std::vector<Row> rows;
  rows.reserve(lines_.size());
  for (const Line& line : lines_) rows.push_back(rowOf(line));
  setRows(std::move(rows));
}

int FindingModel::rowAt(const std::string& place) const {
  int closed = -1;
  for (int row = 0; row < rowCount(); ++row)
    for (const std::size_t each : lineAt(row).findings) {
      if (!lies_in(findings_[each].where, place)) continue;
      if (!isGroup(row)) return row;
      if (closed < 0) closed = row;
    }
  return closed;
}

namespace {

/// "20.4 to 23.1 s" of a group; the unit differs from rule to rule, so it is beside the number.
ValueModel::Cell span_cell(const Findings& findings, const std::vector<std::size_t>& of,
                           std::optional<double> Finding::*member) {
  std::optional<double> low, high;
  const std::string& unit = findings[of.front()].unit;
  for (const std::size_t each : of) {
    const std::optional<double>& value = findings[each].*member;
    if (!value || findings[each].unit != unit) continue;
    low = std::min(low.value_or(*value), *value);
    high = std::max(high.value_or(*value), *value);
  }
  if (!low) return text_cell({});
  const UnitView& units = UnitView::shared();
  const QString least = units.numberText(*low, unit.c_str(), 4),
                most = units.quantityText(*high, unit.c_str(), 4);
  return text_cell(units.numberText(*high, unit.c_str(), 4) == least ? most : units.rangeText(least, most));
}

}  // namespace

ValueModel::Row FindingModel::rowOf(const Line& line) const {
  const Finding& first = findings_[line.findings.front()];
  Row row;
  row.severity = first.severity;
  const QString text = shown_text(first.sentence);
  if (line.findings.size() > 1) {
    const bool is_open = open_.contains(causeOf(line.findings.front()));
    row.cells = {text_cell(severity_word(first.severity)),
                 text_cell((is_open ? QStringLiteral("▾ ") : QStringLiteral("▸ ")) +
                           shown_text(Sentence("desk.places"_key, {{"places", line.findings.size()}}))),
                 text_cell(tr("such as: %1").arg(text)), span_cell(findings_, line.findings, &Finding::value),
                 span_cell(findings_, line.findings, &Finding::limit)};
  } else {
    row.address = targets_[line.findings.front()].address;
    row.cells = {text_cell(severity_word(first.severity)),
                 text_cell((line.is_member ? QStringLiteral("    ") : QString()) + place_text(first.where)),
                 text_cell(text), quantity_cell(first.value, first.unit),
                 quantity_cell(first.limit, first.unit)};
  }
  row.cells.push_back(text_cell(QString::fromStdString(first.rule)));
  row.cells.push_back(text_cell(shown_source(first.source)));
  row.cells[2].tip = text;
  return row;
}

}  // namespace seamtakt::desk
