// The window's plan files: opened, saved, recovered, left.
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>

#include "app/main_window.hpp"
#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "document/demo_plan.hpp"
#include "widgets/plain_text.hpp"

namespace seamtakt::desk {

bool MainWindow::openPlan(const QString& path) {
  try {
    document_.open(path);
    remember(path);
    disk_note_->clear();
    return true;
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Warning, tr("The plan can't be opened"), QString::fromUtf8(error.what()));
    return false;
  }
}

void MainWindow::open() {
  if (!mayLeave()) return;
  const QString path = QFileDialog::getOpenFileName(this, tr("Open plan"), QFileInfo(document_.path()).path(),
                                                    tr("Plans (*.weldplan.json);;All files (*)"));
  if (!path.isEmpty()) openPlan(path);
}

void MainWindow::openDemo() {
  if (!mayLeave()) return;
  try {
    document_.openCopy(demo_plan_path());
    say(tr("The demo is a copy: saving asks for a name."));
  } catch (const std::exception& error) {
    say(tr("The demo can't be opened: %1").arg(QString::fromUtf8(error.what())));
  }
}

void MainWindow::newPlan() {
  if (mayLeave()) document_.start(starting_plan());
}

bool MainWindow::savePlan() {
  if (document_.path().isEmpty()) {
    saveAs();
    return !document_.isModified();
  }
  const auto not_saved = [this](const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not saved"),
                tr("The plan was not saved: %1\nThe file as it was is still there.")
                    .arg(QString::fromUtf8(error.what())));
    return false;
  };
  try {
    document_.save();
    say(tr("Saved"));
    disk_note_->clear();
    return true;
  } catch (const ChangedOnDisk& error) {
    // A file of another kind in the plan's place isn't asked about: it is never overwritten.
    const auto answer = message_box(
        this, QMessageBox::Question, tr("Changed on disk"),
        tr("%1\n\nSomeone else changed the file since it was opened. Write over it? The file as it "
           "stands is kept with a ~ at its name.")
            .arg(QString::fromUtf8(error.what())),
        QMessageBox::Yes | QMessageBox::No);
    if (answer != QMessageBox::Yes) return false;
    try {
      document_.save(true);
    } catch (const std::exception& again) {
      return not_saved(again);
    }
    return true;
  } catch (const std::exception& error) {
    return not_saved(error);
  }
}

void MainWindow::saveAs() {
  QString path =
      QFileDialog::getSaveFileName(this, tr("Save plan as"), document_.path(), tr("Plans (*.weldplan.json)"));
  if (path.isEmpty()) return;
  if (!path.endsWith(QStringLiteral(".json"))) path += QStringLiteral(".weldplan.json");
  try {
    document_.saveAs(path);
    remember(path);
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not saved"), QString::fromUtf8(error.what()));
  }
}

OpenPlan MainWindow::openPlanNow() const {
  return {document_.plan(), document_.path(), document_.isModified(), currentPage()};
}

void MainWindow::takeUp(const OpenPlan& open) {
  if (!open.is_modified && !open.path.isEmpty())
    openPlan(open.path);
  else if (open.is_modified || !open.plan->weldments.empty() || !open.plan->schedules.empty())
    document_.start(*open.plan, open.path, open.is_modified);
  showPage(open.page);
}

bool MainWindow::mayLeave() {
  if (!document_.isModified()) return true;
  QMessageBox box(QMessageBox::Question, tr("Unsaved changes"), {}, QMessageBox::NoButton, this);
  box.setTextFormat(Qt::PlainText);
  box.setText(tr("“%1” has changes that aren't saved.").arg(document_.name()));
  QAbstractButton* save = box.addButton(tr("Save"), QMessageBox::AcceptRole);
  QAbstractButton* drop = box.addButton(tr("Drop the changes"), QMessageBox::DestructiveRole);
  box.addButton(tr("Stay"), QMessageBox::RejectRole);
  box.exec();
  if (box.clickedButton() == save) return savePlan();
  return box.clickedButton() == drop;
}

void MainWindow::offerRecovery() {
  if (!recovery_) return;
  for (const Leftover& leftover : recovery_->leftovers()) {
    const QString of = leftover.origin.isEmpty() ? tr("a new plan") : leftover.origin;
    QMessageBox box(QMessageBox::Question, tr("Recover unsaved edits"),
                    tr("The desk ended without saving edits of %1. Take them up again?").arg(of),
                    QMessageBox::NoButton, this);
    box.setTextFormat(Qt::PlainText);
    QPushButton* recover = box.addButton(tr("Recover"), QMessageBox::AcceptRole);
    QAbstractButton* discard = box.addButton(tr("Discard"), QMessageBox::DestructiveRole);
    QPushButton* later = box.addButton(tr("Later"), QMessageBox::RejectRole);
    box.setDefaultButton(recover);
    // Who doesn't choose keeps the copy.
    box.setEscapeButton(later);
    box.exec();
    if (box.clickedButton() == discard) recovery_->discard(leftover);
    if (box.clickedButton() != recover) continue;
    try {
      recovery_->recover(leftover);
      say(tr("Recovered: look it over and save."));
    } catch (const std::exception& error) {
      say(tr("What was kept can't be read: %1").arg(QString::fromUtf8(error.what())));
    }
    return;
  }
}

}  // namespace seamtakt::desk
