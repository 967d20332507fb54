#include "models/tables/schedule_choice.hpp"

#include <QCoreApplication>
#include <algorithm>

#include "base/error.hpp"
#include "document/plan_address.hpp"
#include "document/shown_text.hpp"
#include "jobs/evaluator.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/window/seam_alone.hpp"

namespace seamtakt::desk {

namespace {

class ChoiceTable : public QObject {
  Q_OBJECT
};

struct Tried {
  std::optional<Severity> worst;
  QString worst_text;
};

/// What is found where all passes of the seam are welded with the schedule.
Tried try_schedule(const Plan& plan, const Weldment& weldment, const Seam& seam,
                   const std::string& schedule) {
  Seam with = seam;
  with.schedules.assign(std::max<std::size_t>(1, seam.schedules.size()), schedule);
  Tried tried;
  try {
    const SeamAlone alone = seam_alone(plan, weldment, with);
    for (const Finding& finding : evaluate(alone.plan, date_of_today()).findings) {
      if (!lies_in(finding.where, alone.place()) || tried.worst >= std::optional(finding.severity)) continue;
      tried.worst = finding.severity;
      tried.worst_text = shown_text(finding.sentence);
    }
  } catch (const InputError& error) {
    tried = {Severity::fail, refusal_text(error)};
  }
  return tried;
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

std::vector<ValueModel::Row> schedule_choice_rows(const Plan& plan, const Weldment& weldment,
                                                  const Seam& seam) {
  std::vector<ValueModel::Row> rows;
  for (std::size_t i = 0; i < plan.schedules.size(); ++i) {
    const Schedule& schedule = plan.schedules[i];
    const Tried tried = try_schedule(plan, weldment, seam, schedule.id);
    ValueModel::Row row;
    row.severity = tried.worst;
    row.address = QString::fromStdString(schedule_address(i));
    row.cells = {
        text_cell(severity_word(tried.worst)),          text_cell(QString::fromStdString(schedule.id)),
        text_cell(core_text(schedule.status)),          text_cell(shown_use(schedule, "positions")),
        text_cell(shown_use(schedule, "thickness_mm")), text_cell(shown_use(schedule, "gap_mm")),
        text_cell(shown_use(schedule, "leg_mm")),       text_cell(tried.worst_text)};
    rows.push_back(std::move(row));
  }
  std::ranges::stable_sort(rows, {}, &ValueModel::Row::severity);
  return rows;
}

}  // namespace seamtakt::desk

#include "schedule_choice.moc"
