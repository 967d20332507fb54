// What is done with the selected seams of the page of seams: settings fitted, a schedule chosen.
#include <QMenu>

#include "models/tables/pasted_range.hpp"
#include "models/tables/schedule_choice.hpp"
#include "models/tables/seam_model.hpp"
#include "pages/seams_page.hpp"
#include "widgets/choice_dialog.hpp"
#include "widgets/fit_dialog.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

std::vector<std::string> SeamsPage::selectedSeams() const {
  std::vector<std::string> seams;
  for (const int row : table_->selectedRows())
    if (row < model_->rowCount() && !model_->seam(row).schedules.empty())
      seams.push_back(model_->weldmentOf(row).id + "/" + model_->seam(row).id);
  return seams;
}

void SeamsPage::fitSelected() {
  std::vector<std::string> seams = selectedSeams();
  if (seams.empty())
    return emit message(tr("A fit begins with the schedule of a seam: choose a seam that has one."));
  auto* dialog = new FitDialog(desk_.document, std::move(seams), window());
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &FitDialog::message, this, &Page::message);
  dialog->open();
}

void SeamsPage::chooseSchedule() {
  const int at = table_->currentRow();
  if (at < 0) return;
  const PlanPtr plan = desk_.document.plan();
  auto rows = std::make_unique<ValueModel>(schedule_choice_columns());
  rows->setRows(schedule_choice_rows(*plan, nullptr));
  auto* dialog = new ChoiceDialog(tr("Schedule of %1").arg(QString::fromStdString(model_->seam(at).id)),
                                  tr("Weld with it"), std::move(rows), window());
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  auto* trial = new ScheduleTrial(dialog);
  connect(trial, &ScheduleTrial::answered, dialog, [dialog, plan](const TriedSchedulesPtr& tried) {
    dialog->replaceRows(schedule_choice_rows(*plan, tried.get()), chosen_id_column);
  });
  connect(trial, &ScheduleTrial::failed, this, &Page::message);
  trial->ask(plan, model_->place(at));
  connect(dialog, &QDialog::accepted, this, [this, dialog] {
    const QString id = dialog->chosen(chosen_id_column);
    if (id.isEmpty()) return;
    const int column = model_->columnNamed("schedules");
    std::vector<PastedCell> cells;
    // All passes of each seam, however many it has.
    for (const int row : table_->selectedRows()) {
      const auto passes = std::max<qsizetype>(1, static_cast<qsizetype>(model_->seam(row).schedules.size()));
      cells.push_back({row, column, QStringList(passes, id).join(QStringLiteral("; "))});
    }
    table_->setCells(cells, tr("Weld with %1").arg(id));
  });
  dialog->open();
}

void SeamsPage::addToMenu(GridView& table, QMenu& menu, const QModelIndex& at) {
  if (&table == table_) {
    const auto count = selectedSeams().size();
    menu.addSeparator();
    menu.addAction(tr("Choose schedule …"), this, &SeamsPage::chooseSchedule);
    QAction* fit = menu.addAction(count > 1 ? tr("Fit selected seams …") : tr("Fit this seam …"), this,
                                  &SeamsPage::fitSelected);
    fit->setEnabled(count > 0);
  }
  Page::addToMenu(table, menu, at);
}

}  // namespace seamtakt::desk
