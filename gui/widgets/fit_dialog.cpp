#include "widgets/fit_dialog.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "document/shown_text.hpp"
#include "models/tables/fit_rows.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

FitDialog::FitDialog(Document& document, std::vector<std::string> seams, QWidget* parent)
    : QDialog(parent), document_(document), seams_(std::move(seams)) {
  setWindowTitle(tr("Fit seams"));
  setAccessibleName(windowTitle());
  resize(980, 460);
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  auto* head = new QHBoxLayout;
  objective_ = new QComboBox(this);
  objective_->setAccessibleName(tr("What to have least of"));
  objective_->setToolTip(objective_->accessibleName());
  objective_->addItem(tr("Least time"), static_cast<int>(FitObjective::time));
  objective_->addItem(tr("Least heat"), static_cast<int>(FitObjective::heat));
  objective_->addItem(tr("Least cost"), static_cast<int>(FitObjective::cost));
  only_existing_ = new QCheckBox(tr("Only schedules that exist"), this);
  only_existing_->setAccessibleName(only_existing_->text());
  only_existing_->setToolTip(tr("Seams take another schedule of the plan as it stands; no settings are new"));
  state_ = new QLabel(this);
  state_->setTextFormat(Qt::PlainText);
  state_->setProperty("role", "quiet");
  head->addWidget(objective_);
  head->addWidget(only_existing_);
  head->addWidget(state_, 1);
  column->addWidget(makeQuestion());
  column->addLayout(head);
  rows_ = new FitRows(this);
  table_ = new GridView(*rows_, tr("Settings before and after"), this);
  table_->setRoomTaker(static_cast<int>(rows_->columns().size()) - 1);
  column->addWidget(table_, 3);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  said_ = new QLabel(scroll);
  said_->setTextFormat(Qt::PlainText);
  said_->setWordWrap(true);
  said_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  said_->setAccessibleName(tr("Conflicts"));
  said_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  scroll->setWidget(said_);
  column->addWidget(scroll, 2);
  auto* buttons = new QDialogButtonBox(this);
  take_ = buttons->addButton(tr("Take it over"), QDialogButtonBox::AcceptRole);
  QPushButton* leave = buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  for (QPushButton* each : {take_, leave}) each->setAccessibleName(each->text());
  take_->setDefault(true);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &FitDialog::take);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(objective_, &QComboBox::activated, this, &FitDialog::ask);
  connect(only_existing_, &QCheckBox::toggled, this, &FitDialog::showRows);
  connect(rows_, &FitRows::ticksChanged, this, &FitDialog::showTicked);
  connect(&job_, &FitJob::answered, this, &FitDialog::showFound);
  connect(&job_, &FitJob::failed, state_, &QLabel::setText);
  ask();
}

/// What stays as it is planned, and how far from the limits the rest stays.
QWidget* FitDialog::makeQuestion() {
  auto* line = new QWidget(this);
  auto* row = new QHBoxLayout(line);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(new QLabel(tr("Stay as planned:"), line));
  const QString names[] = {core_label("wire feed speed"), core_label("arc voltage"),
                           core_label("travel speed"), core_label("Passes")};
  for (const FitHold hold : fit_holds) {
    const auto at = static_cast<std::size_t>(hold);
    holds_[at] = new QCheckBox(names[at], line);
    holds_[at]->setAccessibleName(tr("Stays as planned: %1").arg(names[at]));
    connect(holds_[at], &QCheckBox::toggled, this, &FitDialog::ask);
    row->addWidget(holds_[at]);
  }
  row->addSpacing(unit_px * 2);
  row->addWidget(new QLabel(tr("Margin to the limits:"), line));
  margin_ = new QDoubleSpinBox(line);
  margin_->setAccessibleName(tr("Margin to the limits"));
  margin_->setToolTip(
      tr("Share of each limit that values stay inside it; estimates of preheat and hardness have their own"));
  margin_->setRange(0, FitOptions::most_margin_pct);
  margin_->setDecimals(1);
  margin_->setSuffix(QStringLiteral(" %"));
  margin_->setKeyboardTracking(false);
  margin_->setLocale(UnitView::shared().hasDecimalComma() ? QLocale(QLocale::German) : QLocale::c());
  connect(margin_, &QDoubleSpinBox::valueChanged, this, &FitDialog::ask);
  row->addWidget(margin_);
  row->addStretch(1);
  return line;
}

QString FitDialog::said() const {
  return said_->text();
}

void FitDialog::ask() {
  FitOptions options;
  options.objective = static_cast<FitObjective>(objective_->currentData().toInt());
  options.seams = seams_;
  options.margin_pct = margin_->value();
  for (const FitHold hold : fit_holds)
    if (this->hold(hold).isChecked()) options.holds.push_back(hold);
  take_->setEnabled(false);
  state_->setText(tr("searching …"));
  job_.ask(document_.plan(), options);
}

/// Where a schedule of the plan does for a seam, that is proposed before anything new.
void FitDialog::showFound(const FoundFitPtr& found) {
  found_ = found;
  const bool any_existing =
      std::ranges::any_of(found->result.seams, [](const FittedSeam& seam) { return seam.is_existing; });
  only_existing_->setEnabled(any_existing);
  only_existing_->setChecked(any_existing);
  QStringList said;
  for (const Finding& finding : found->result.findings)
    said << QString::fromStdString(finding.where) + QStringLiteral(": ") + shown_text(finding.sentence);
  said_->setText(said.join(QStringLiteral("\n\n")));
  showRows();
}

void FitDialog::showRows() {
  if (!found_) return;
  rows_->show(*found_->of, found_->result, only_existing_->isChecked());
  table_->fitColumns();
}

void FitDialog::showTicked() {
  const int ticked = rows_->tickedCount();
  state_->setText(shown_text(
      Sentence("desk.fit.changes"_key, {{"seams", found_->result.seams.size()}, {"changed", ticked}})));
  take_->setEnabled(ticked > 0 && !job_.isBusy());
}

void FitDialog::take() {
  if (!found_) return;
  if (found_->of != document_.plan()) return ask();
  Plan fitted = take_over(*found_->of, rows_->ticked());
  document_.endTyping();
  const auto refusal = document_.edit(tr("Fit seams"), {}, [&](Plan& plan) { plan = std::move(fitted); });
  if (refusal) return state_->setText(refusal->text);
  emit message(tr("The settings are the plan's. Undo brings back the ones before."));
  accept();
}

}  // namespace seamtakt::desk
