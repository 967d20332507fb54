#include "models/tables/schedule_model.hpp"

#include "document/plan_address.hpp"
#include "document/plan_items.hpp"
#include "models/words/state_text.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

constexpr const char* shown_schedule_fields[] = {"id",
                                                 "revision",
                                                 "status",
                                                 "process",
                                                 "transfer",
                                                 "wire",
                                                 "gas",
                                                 "wire_feed_speed_m_min",
                                                 "arc_voltage_V",
                                                 "travel_speed_mm_s",
                                                 "preheat_C"};

std::vector<GridColumn> schedule_table_columns() {
  std::vector<GridColumn> columns;
  columns.push_back(
      {"mark", ScheduleModel::tr("State"), "",
       ScheduleModel::tr("Worst finding on it and on the passes welded by it that this page lists; "
                         "behind it, where it is worse, what another page has on them"),
       false, true, nullptr});
  for (const char* key : shown_schedule_fields)
    if (const FieldInfo* field = field_named<Schedule>(key))
      columns.push_back({key, core_label(field->label), field->unit, core_text(field->help),
                         field->kind == FieldKind::number || field->kind == FieldKind::integer, false,
                         field});
  columns.push_back({"uses", ScheduleModel::tr("Passes"), "",
                     ScheduleModel::tr("Passes that are welded by it"), true, true, nullptr});
  return columns;
}

}  // namespace

ScheduleModel::ScheduleModel(Document& document, QObject* parent)
    : GridModel(parent, &document), document_(document) {
  setColumns(schedule_table_columns());
  connect(&document_, &Document::planChanged, this, &ScheduleModel::rebuild);
  connect(&UnitView::shared(), &UnitView::changed, this, [this] { unitsChanged(); });
  plan_ = std::make_shared<const Plan>();
  rebuild();
}

void ScheduleModel::rebuild() {
  const PlanPtr plan = document_.plan();
  const bool same_rows = plan->schedules.size() == plan_->schedules.size();
  if (!same_rows) beginResetModel();
  plan_ = plan;
  uses_.assign(plan_->schedules.size(), 0);
  std::map<std::string_view, std::size_t> index;
  for (std::size_t i = 0; i < plan_->schedules.size(); ++i) index[plan_->schedules[i].id] = i;
  for (const Weldment& weldment : plan_->weldments)
    for (const Seam& seam : weldment.seams)
      for (const std::string& id : seam.schedules)
        if (const auto at = index.find(id); at != index.end()) ++uses_[at->second];
  if (!same_rows)
    endResetModel();
  else if (rowCount() > 0)
    emit dataChanged(this->index(0, 0), this->index(rowCount() - 1, columnCount() - 1));
}

void ScheduleModel::setResults(const ResultsPtr& results) {
  const FindingIndex findings(results->findings);
  judged_ = true;
  states_.clear();
  for (const Schedule& schedule : results->plan->schedules) {
    RowState& state = states_[schedule.id];
    state.add(findings.stateAt(Link::schedules, schedule.id));
    if (!schedule.qualification.empty()) state.add(findings.stateAt(Link::schedules, schedule.qualification));
  }
  for (const PassEvaluation& pass : results->evaluation.passes) {
    RowState& state = states_[pass.schedule];
    state.add(findings.stateAt(Link::schedules,
                               pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass)));
    state.is_partly_judged = state.is_partly_judged || is_partly_judged(pass);
  }
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int ScheduleModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(plan_->schedules.size());
}

std::string ScheduleModel::appendRow(Plan& plan) const {
  if (plan.schedules.empty()) return add_item(plan, "/schedules");
  return duplicate_item(plan, schedule_address(plan.schedules.size() - 1));
}

QString ScheduleModel::cellText(int row, int column) const {
  const GridColumn& about = columns()[static_cast<std::size_t>(column)];
  if (about.key == "mark") return judged_ ? state_text(rowState(row)) : QString();
  if (about.key == "uses") return QString::number(uses_[static_cast<std::size_t>(row)]);
  return UnitView::shared().fieldShown(field_named<Schedule>(about.key)->text(schedule(row)), *about.field);
}

std::optional<double> ScheduleModel::cellNumber(int row, int column) const {
  const GridColumn& about = columns()[static_cast<std::size_t>(column)];
  if (about.key == "mark") return state_rank(rowState(row));
  if (about.key == "uses") return uses_[static_cast<std::size_t>(row)];
  return field_named<Schedule>(about.key)->number(schedule(row));
}

QString ScheduleModel::rowAddress(int row) const {
  return QString::fromStdString(schedule_address(static_cast<std::size_t>(row)));
}

QString ScheduleModel::cellPlace(int row, int column) const {
  if (columns()[static_cast<std::size_t>(column)].key != "mark") return {};
  return QStringLiteral("schedule ") + QString::fromStdString(schedule(row).id);
}

RowState ScheduleModel::rowState(int row) const {
  const auto at = states_.find(schedule(row).id);
  return at == states_.end() ? RowState() : at->second;
}

std::optional<Severity> ScheduleModel::rowSeverity(int row) const {
  return rowState(row).own;
}

std::optional<Severity> ScheduleModel::rowBeyond(int row) const {
  return rowState(row).beyond;
}

bool ScheduleModel::rowPartlyJudged(int row) const {
  return rowState(row).is_partly_judged;
}

}  // namespace seamtakt::desk
