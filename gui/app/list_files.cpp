// The window's lists of seams and schedules: imported with a preview, exported.
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>

#include "app/main_window.hpp"
#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "document/shown_text.hpp"
#include "exchange/lists/list_export.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/seam_import_dialog.hpp"

namespace seamtakt::desk {

void MainWindow::askForList() {
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Import list"), QFileInfo(document_.path()).path(),
                                   tr("Lists (*.xlsx *.ods *.csv);;All files (*)"));
  if (!path.isEmpty()) importList(path);
}

void MainWindow::importList(const QString& path) {
  auto* dialog = new SeamImportDialog(document_.plan(), path, this);
  ask(dialog, [this, dialog] { takeList(dialog->list()); });
}

/// All rows are one step of undo.
void MainWindow::takeList(const ReadListPtr& list) {
  if (list->plan != document_.plan()) return say(tr("The plan has changed meanwhile: nothing is done."));
  document_.endTyping();
  const auto refusal = document_.edit(tr("Import list"), {}, [&](Plan& plan) { plan = list->import.plan; });
  if (refusal) return say(refusal->text);
  const bool has_seams = !list->import.rows.empty() && !list->import.rows.front().weldment.empty();
  showPage(has_seams ? DeskPage::seams : DeskPage::schedules);
  say(tr("Imported: %1 new, %2 changed.")
          .arg(QString::number(list->import.count(ImportedRow::State::added)),
               QString::number(list->import.count(ImportedRow::State::changed))));
}

void MainWindow::exportList() {
  QString path = QFileDialog::getSaveFileName(this, tr("Export seams and schedules"), {},
                                              tr("Workbooks (*.xlsx);;Seams as CSV (*.csv)"));
  if (path.isEmpty()) return;
  const bool is_table = path.endsWith(QStringLiteral(".csv"));
  if (!is_table && !path.endsWith(QStringLiteral(".xlsx"))) path += QStringLiteral(".xlsx");
  try {
    const Plan& plan = *document_.plan();
    const Sheet seams = list_sheet(plan, ListKind::seams);
    const SheetOrigin origin = {{"plan_file", document_.name().toStdString(), "Plan"_word},
                                {"made_at_utc", utc_moment(), "Made at"_word}};
    if (is_table) {
      save_output(path.toStdString(), FileKind::table, sheet_csv(seams, origin));
    } else {
      const Sheet schedules = list_sheet(plan, ListKind::schedules);
      check_workbook_cells(seams);
      check_workbook_cells(schedules);
      save_output(path.toStdString(), FileKind::workbook,
                  sheets_xlsx({seams, schedules}, PatternCell{"Weld plan {1}"_word, {plan.title}}, origin,
                              text_view().in_si()));
    }
    say(tr("List written to %1").arg(path));
  } catch (const InputError& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), refusal_text(error));
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), QString::fromUtf8(error.what()));
  }
}

}  // namespace seamtakt::desk
