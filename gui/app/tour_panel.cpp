#include "app/tour_panel.hpp"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "app/main_window.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

TourPanel& TourPanel::start(MainWindow& window) {
  auto* panel = window.findChild<TourPanel*>();
  if (!panel) {
    if (window.document().isEmpty()) window.openDemo();
    auto* across = qobject_cast<QSplitter*>(window.explain().parentWidget());
    panel = new TourPanel(window, across);
    if (across) across->addWidget(panel);
    panel->show();
  }
  panel->goTo(0);
  // A plan that was just opened takes the focus to its page, by a queued call.
  QMetaObject::invokeMethod(
      panel, [panel] { panel->next_->setFocus(Qt::OtherFocusReason); }, Qt::QueuedConnection);
  return *panel;
}

bool TourPanel::isNew() {
  return !QSettings().value("tour/seen", false).toBool();
}

TourPanel::TourPanel(MainWindow& window, QWidget* parent)
    : QFrame(parent), window_(window), steps_(makeSteps()), explain_was_shown_(window.explain().isVisible()) {
  setAccessibleName(tr("Tour"));
  setMinimumWidth(240);
  setMaximumWidth(340);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(unit_px * 2, unit_px, unit_px * 2, unit_px * 2);
  column->setSpacing(unit_px);
  count_ = new QLabel(this);
  title_ = new QLabel(this);
  title_->setProperty("role", "title");
  title_->setWordWrap(true);
  text_ = new QLabel(this);
  text_->setWordWrap(true);
  for (QLabel* label : {count_, title_, text_}) {
    label->setTextFormat(Qt::PlainText);
    column->addWidget(label);
  }
  auto* row = new QHBoxLayout;
  back_ = new QPushButton(tr("&Back"), this);
  next_ = new QPushButton(this);
  row->addWidget(back_);
  row->addWidget(next_);
  column->addLayout(row);
  end_ = new QPushButton(tr("S&kip the tour"), this);
  column->addWidget(end_);
  column->addStretch(1);
  connect(back_, &QPushButton::clicked, this, [this] { goTo(step_ - 1); });
  connect(next_, &QPushButton::clicked, this, [this] {
    if (step_ + 1 == stepCount()) return end();
    goTo(step_ + 1);
  });
  connect(end_, &QPushButton::clicked, this, &TourPanel::end);
}

std::vector<TourPanel::Step> TourPanel::makeSteps() const {
  return {
      {DeskPage::seams, false, tr("Seams: what the drawing asks for"),
       tr("Each row is a seam, with a mark for its worst finding. The picture shows where it lies. The strip "
          "above is the "
          "chain of the job: each link has one figure and the mark of its worst finding. Ctrl+1 to Ctrl+7 "
          "open them.")},
      {DeskPage::schedules, false, tr("Schedules: how it is welded"),
       tr("Wire feed, voltage, travel speed and their limits. An approved schedule is locked: who changes it "
          "gets a new revision as a draft.")},
      {DeskPage::heat, true, tr("Heat, and why"),
       tr("The operating window shows which settings keep all limits. F1 explains the value in focus: "
          "formula, numbers, source, range. Every number of the desk has such an explanation.")},
      {DeskPage::cell, false, tr("Cell: who welds what, and when"),
       tr("The robots' timelines against takt. “Search best order” looks for a shorter cycle; the bound says "
          "how "
          "much there is to be had. A planned timeline is no proof that a motion is safe.")},
      {DeskPage::records, false, tr("Records: what was welded"),
       tr("Ctrl+I reads a log of the arcs: a verdict a pass, and each unit beside its plan. "
          "A store keeps them signed.")},
      {DeskPage::findings, false, tr("Findings, and paper"),
       tr("All findings in one list; Enter goes to the field. Ctrl+R writes the report. All figures are "
          "estimates: "
          "qualification by test decides. The handbook and this tour are in the Help menu.")}};
}

void TourPanel::goTo(int step) {
  step_ = std::clamp(step, 0, stepCount() - 1);
  const Step& at = steps_[static_cast<std::size_t>(step_)];
  window_.setExplainShown(at.with_explain || explain_was_shown_);
  window_.showPage(at.page);
  count_->setText(tr("Step %1 of %2").arg(step_ + 1).arg(stepCount()));
  title_->setText(at.title);
  text_->setText(at.text);
  back_->setEnabled(step_ > 0);
  next_->setText(step_ + 1 == stepCount() ? tr("&Done") : tr("Ne&xt"));
  end_->setVisible(step_ + 1 < stepCount());
  next_->setFocus(Qt::OtherFocusReason);
}

QString TourPanel::text() const {
  return count_->text() + "\n" + title_->text() + "\n" + text_->text();
}

void TourPanel::end() {
  QSettings().setValue("tour/seen", true);
  window_.setExplainShown(explain_was_shown_);
  hide();
  setParent(nullptr);  // the next tour looks for a panel in the window
  deleteLater();
  window_.showPage(window_.currentPage());
}

void TourPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return end();
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    for (QPushButton* button : {back_, next_, end_})
      if (button->hasFocus()) return button->click();
    return next_->click();
  }
  QFrame::keyPressEvent(event);
}

}  // namespace seamtakt::desk
