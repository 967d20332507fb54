#include <QApplication>
#include <QMessageBox>
#include <QPushButton>

#include "app/main_window.hpp"
#include "pages/page.hpp"
#include "widgets/revision_dialog.hpp"

/// The action that replaces an edit that would change something reviewed or approved.
namespace seamtakt::desk {

namespace {

constexpr std::size_t most_named = 60;

/// Seams in a sentence: lines don't break at a slash, and of very many seams only the first are named.
QString seam_names_text(const std::vector<std::string>& names) {
  QStringList list;
  for (std::size_t i = 0; i < names.size() && i < most_named; ++i)
    list << QString::fromStdString(names[i]).replace('/', QStringLiteral("/\u2060"));
  const QString named = list.join(QStringLiteral(", "));
  return names.size() <= most_named
             ? named
             : MainWindow::tr("%1 and %2 more").arg(named, QString::number(names.size() - most_named));
}

}  // namespace

void MainWindow::askAboutLock(const LockedEdit& edit) {
  // A question is asked once, about the plan at the time of the edit.
  if ((lock_question_ && lock_question_->isVisible()) || edit.before != document_.plan()) return;
  if (!edit.change.changed.empty()) return offerRevision(edit);
  if (!edit.change.withdrawn.empty()) return offerToWithdraw(edit);
  if (!edit.change.item.empty()) offerCopy(edit);
}

/// Asks without waiting: `then` is called where the answer is yes.
void MainWindow::ask(QDialog* question, const std::function<void()>& then) {
  lock_question_ = question;
  question->setAttribute(Qt::WA_DeleteOnClose);
  connect(question, &QDialog::accepted, this, then);
  question->open();
}

void MainWindow::replacePlan(const QString& what, const LockedEdit& edit, const Plan& plan,
                             WhenLocked when_locked) {
  if (edit.before != document_.plan()) return say(tr("The plan has changed meanwhile: nothing is done."));
  document_.endTyping();
  const auto refusal = document_.edit(
      what, {}, [&](Plan& changed) { changed = plan; }, when_locked);
  if (refusal) say(refusal->text);
}

void MainWindow::offerRevision(const LockedEdit& edit) {
  auto revised = std::make_shared<std::vector<Revised>>();
  auto plan = std::make_shared<Plan>(plan_with_drafts(edit, *revised));
  QStringList lines, seams;
  for (const Revised& each : *revised) {
    const QString held = QString::fromStdString(each.held), draft = QString::fromStdString(each.draft);
    lines << tr("%1 stays as it is. The change goes into revision %2 as a draft, %3.")
                 .arg(locked_names(*plan, {*find_schedule(*plan, each.held)}), QString::number(each.revision),
                      draft);
    for (const std::string& name : seam_names(*plan, each.seams))
      seams << (revised->size() > 1 ? tr("%1 (%2)").arg(QString::fromStdString(name), held)
                                    : QString::fromStdString(name));
  }
  auto* dialog = new RevisionDialog(lines.join(QStringLiteral("\n")), seams,
                                    QApplication::activeWindow() ? QApplication::activeWindow() : this);
  ask(dialog, [this, edit, plan, revised, dialog] {
    const std::vector<bool> ticked = dialog->ticked();
    std::size_t line = 0;
    for (const Revised& each : *revised)
      for (const SeamPlace& seam : each.seams)
        if (ticked.at(line++)) move_seam(*plan, seam, each.held, each.draft);
    replacePlan(tr("New revision"), edit, *plan, WhenLocked::offer);
    if (const auto at = find_schedule(*document_.plan(), revised->front().draft)) selection_.setSchedule(*at);
    focusPage();
    say(tr("%1 is a draft; %2 stays as it is.")
            .arg(QString::fromStdString(revised->front().draft),
                 QString::fromStdString(revised->front().held)));
  });
}

void MainWindow::offerToWithdraw(const LockedEdit& edit) {
  std::vector<std::string> seams;
  for (const std::size_t at : edit.change.withdrawn)
    for (std::string& name :
         seam_names(*edit.before, seams_welded_by(*edit.before, edit.before->schedules[at].id)))
      seams.push_back(std::move(name));
  auto* box = new QMessageBox(
      QMessageBox::Question, tr("Withdraw approval"),
      tr("Withdraw the approval of %1? It can be changed then; who approved it and from when is taken out. "
         "Seams "
         "welded by it: %2.")
          .arg(locked_names(*edit.before, edit.change.withdrawn),
               seams.empty() ? tr("none") : seam_names_text(seams)),
      QMessageBox::NoButton, this);
  box->setTextFormat(Qt::PlainText);
  box->addButton(tr("Withdraw"), QMessageBox::AcceptRole);
  QPushButton* keep = box->addButton(tr("Leave it as it is"), QMessageBox::RejectRole);
  box->setDefaultButton(keep);
  box->setEscapeButton(keep);
  ask(box, [this, edit] {
    replacePlan(tr("Withdraw approval"), edit, plan_with_withdrawn(edit), WhenLocked::withdraw);
  });
}

void MainWindow::offerCopy(const LockedEdit& edit) {
  std::string copy;
  auto plan = std::make_shared<const Plan>(plan_with_copy(edit, copy));
  auto* box = new QMessageBox(
      QMessageBox::Question, tr("Copy with the change"),
      tr("Locked schedules are welded with it and stay as they are: %1. The change may go into a copy, %2, "
         "which "
         "a new revision can name.")
          .arg(locked_names(*edit.before, edit.change.users), QString::fromStdString(copy)),
      QMessageBox::NoButton, QApplication::activeWindow() ? QApplication::activeWindow() : this);
  box->setTextFormat(Qt::PlainText);
  box->addButton(tr("Copy with the change"), QMessageBox::AcceptRole);
  QPushButton* leave = box->addButton(tr("Leave it as it is"), QMessageBox::RejectRole);
  box->setDefaultButton(leave);
  box->setEscapeButton(leave);
  ask(box, [this, edit, plan] { replacePlan(tr("Copy with the change"), edit, *plan, WhenLocked::offer); });
}

}  // namespace seamtakt::desk
