#include "pages/empty_side.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr FirstStep all_steps[] = {FirstStep::seam,      FirstStep::schedule, FirstStep::cell,
                                   FirstStep::seams,     FirstStep::list,     FirstStep::weldment,
                                   FirstStep::plan_data, FirstStep::demo,     FirstStep::fresh};

constexpr int most_letters = 60;

QString step_text(FirstStep step) {
  switch (step) {
    case FirstStep::seam:
      return EmptySide::tr("Add seam");
    case FirstStep::schedule:
      return EmptySide::tr("Add schedule");
    case FirstStep::cell:
      return EmptySide::tr("Starter cell");
    case FirstStep::seams:
      return EmptySide::tr("Go to the seams");
    case FirstStep::list:
      return EmptySide::tr("Import …");
    case FirstStep::weldment:
      return EmptySide::tr("Fields of the weldment");
    case FirstStep::plan_data:
      return EmptySide::tr("Plan data");
    case FirstStep::demo:
      return EmptySide::tr("Open the demo");
    case FirstStep::fresh:
      return EmptySide::tr("New plan");
  }
  return {};
}

}  // namespace

EmptySide::EmptySide(Page& page) : QWidget(&page), step_(new QLabel(this)) {
  step_->setWordWrap(true);
  step_->setTextFormat(Qt::PlainText);
  step_->setAlignment(Qt::AlignCenter);
  step_->setProperty("role", "figure");
  auto* buttons = new QHBoxLayout;
  buttons->addStretch(1);
  for (const FirstStep step : all_steps) {
    QPushButton* button = buttons_[step] = makeButton(step);
    connect(button, &QPushButton::clicked, &page, [&page, step] { emit page.stepAsked(step); });
    buttons->addWidget(button);
  }
  buttons->addStretch(1);
  // The label isn't aligned in its row: only then does the layout ask for its height at the given width.
  auto* headline = new QHBoxLayout;
  headline->addStretch(1);
  headline->addWidget(step_, 100);
  headline->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->addStretch(2);
  column->addLayout(headline);
  column->addSpacing(unit_px * 2);
  column->addLayout(buttons);
  column->addStretch(3);
}

QPushButton* EmptySide::makeButton(FirstStep step) {
  auto* button = new QPushButton(step_text(step), this);
  button->setAccessibleName(button->text());
  // Enter presses the one that has the focus.
  button->setAutoDefault(true);
  button->hide();
  // The key of the page's own button, which can't be seen now. A button's own shortcut would act after the
  // animation of a click.
  if (step == FirstStep::seam || step == FirstStep::schedule)
    connect(new QShortcut(QKeySequence(Qt::ALT | Qt::Key_Insert), button), &QShortcut::activated, button,
            &QPushButton::click);
  return button;
}

void EmptySide::offer(const QString& step, const std::vector<FirstStep>& offered) {
  step_->setText(step);
  first_ = offered.empty() ? nullptr : buttons_.at(offered.front());
  for (const auto& [each, button] : buttons_) {
    button->setVisible(std::ranges::find(offered, each) != offered.end());
    button->setDefault(button == first_);
  }
}

void EmptySide::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  // About ten words a line, in the present font of the style.
  step_->setMaximumWidth(step_->fontMetrics().averageCharWidth() * most_letters);
}

}  // namespace seamtakt::desk
