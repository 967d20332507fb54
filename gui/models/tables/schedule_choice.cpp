#include "models/tables/schedule_choice.hpp"

#include <QCoreApplication>
#include <algorithm>

#include "document/plan_address.hpp"
#include "document/shown_text.hpp"

namespace seamtakt::desk {

namespace {

class ChoiceTable : public QObject {
  Q_OBJECT
};

struct Judgement {
  std::optional<Severity> worst;
  QString mark, text;
};

Judgement judgement_of(const TriedSchedule& tried) {
  if (tried.refused) return {Severity::fail, severity_word(Severity::fail), refusal_text(*tried.refused)};
  if (!tried.worst) return {std::nullopt, severity_word(std::nullopt), {}};
  return {tried.worst->severity, severity_word(tried.worst->severity), shown_text(tried.worst->sentence)};
}

QString shown_use(const Schedule& schedule, const char* key) {
  if (!schedule.use) return {};
  const FieldInfo* field = field_named<ScheduleUse>(key);
  return field ? UnitView::shared().fieldShown(field->text(*schedule.use), *field) : QString();
}

}  // namespace

std::vector<GridColumn> schedule_choice_columns() {
  return {text_column("mark", ChoiceTable::tr("On this seam")),
          text_column("id", core_label("id")),
          text_column("status", core_label("status")),
          text_column("positions", core_label("positions")),
          text_column("thickness_mm", core_label("thickness"), {}, "mm"),
          text_column("gap_mm", core_label("gap"), {}, "mm"),
          text_column("leg_mm", core_label("leg"), {}, "mm"),
          text_column("text", ChoiceTable::tr("What is found first"))};
}

std::vector<ValueModel::Row> schedule_choice_rows(const Plan& plan, const TriedSchedules* tried) {
  std::vector<ValueModel::Row> rows;
  for (std::size_t i = 0; i < plan.schedules.size(); ++i) {
    const Schedule& schedule = plan.schedules[i];
    const Judgement judged =
        tried ? judgement_of(tried->at(i)) : Judgement{{}, {}, ChoiceTable::tr("being judged …")};
    ValueModel::Row row;
    row.severity = judged.worst;
    row.address = QString::fromStdString(schedule_address(i));
    row.cells = {text_cell(judged.mark),
                 text_cell(QString::fromStdString(schedule.id)),
                 text_cell(core_text(schedule.status)),
                 text_cell(shown_use(schedule, "positions")),
                 text_cell(shown_use(schedule, "thickness_mm")),
                 text_cell(shown_use(schedule, "gap_mm")),
                 text_cell(shown_use(schedule, "leg_mm")),
                 text_cell(judged.text)};
    rows.push_back(std::move(row));
  }
  std::ranges::stable_sort(rows, {}, &ValueModel::Row::severity);
  return rows;
}

}  // namespace seamtakt::desk

#include "schedule_choice.moc"
