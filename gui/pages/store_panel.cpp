#include "pages/store_panel.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QProgressBar>
#include <QVBoxLayout>

#include "models/tables/store_rows.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/store_dialog.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

StorePanel::StorePanel(QWidget* parent) : QWidget(parent) {
  units_ = new ValueModel(store_unit_columns(), this);
  problems_ = new ValueModel(problem_columns(), this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, unit_px, 0, 0);
  makeHead();
  problem_table_ = new GridView(*problems_, tr("What isn't as it was written"), this);
  problem_table_->horizontalHeader()->setStretchLastSection(true);
  problem_table_->hide();
  unit_table_ = new GridView(*units_, tr("Units of the store"), this);
  unit_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  unit_table_->keepColumns(QStringLiteral("store-units"));
  column->addWidget(problem_table_, 1);
  column->addWidget(unit_table_, 2);
  head_ = new QLabel(this);
  head_->setProperty("role", "quiet");
  head_->setTextFormat(Qt::PlainText);
  head_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  head_->setMinimumWidth(10);
  column->addWidget(head_);
  connect(&job_, &StoreJob::progress, this, [this](bool is_listing, qulonglong done, qulonglong all) {
    showVerdict(is_listing ? tr("listing units: %1 of %2").arg(done).arg(all)
                           : tr("verifying: %1 of %2 records").arg(done).arg(all),
                Severity::note);
    progress_->setMaximum(all > 0 ? 1000 : 0);
    if (all > 0) progress_->setValue(static_cast<int>(1000 * done / all));
  });
  connect(&job_, &StoreJob::answered, this, &StorePanel::show);
  connect(&job_, &StoreJob::cancelled, this, [this] {
    working(false);
    showVerdict(tr("Stopped: nothing is said of the store."), Severity::note);
  });
  connect(&job_, &StoreJob::failed, this, [this](const QString& reason) {
    working(false);
    showVerdict(reason, Severity::warn);
    emit message(reason);
  });
  connect(unit_table_, &GridView::rowChosen, this, [this] { report_->setEnabled(true); });
  working(false);
  showVerdict(tr("Open a record store to verify its ledger and see its units."), Severity::note);
}

void StorePanel::makeHead() {
  auto* buttons = new QHBoxLayout;
  const auto button = [&](const QString& text, const QString& tip, const QKeySequence& keys, auto slot) {
    QPushButton* made = tool_button(text, tip, keys, this);
    connect(made, &QPushButton::clicked, this, slot);
    buttons->addWidget(made);
    return made;
  };
  open_ = button(tr("Open store …"), tr("Opens a record store and verifies its ledger"),
                 QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L), [this] { choose(); });
  again_ = button(tr("Verify again"), tr("Checks every record, signature and number again"),
                  QKeySequence(Qt::Key_F5), [this] { openStore(question_); });
  report_ = button(tr("Report of the unit …"), tr("Writes the chosen unit's weld record as PDF"), {},
                   [this] { emit reportAsked(question_.uri, chosenUnit()); });
  stop_ = button(tr("Stop"), tr("Stops verifying (Esc)"), {}, [this] { job_.cancel(); });
  stop_->setShortcut(Qt::Key_Escape);
  progress_ = new QProgressBar(this);
  progress_->setAccessibleName(tr("Progress of the verification"));
  progress_->setTextVisible(false);
  progress_->setMaximumWidth(180);
  buttons->addWidget(progress_);
  buttons->addStretch(1);
  auto* row = new QHBoxLayout;
  mark_ = new QLabel(this);
  mark_->setFixedSize(18, 18);
  verdict_ = new QLabel(this);
  verdict_->setWordWrap(true);
  verdict_->setTextFormat(Qt::PlainText);
  row->addWidget(mark_, 0, Qt::AlignTop);
  row->addWidget(verdict_, 1);
  auto* column = static_cast<QVBoxLayout*>(layout());
  column->addLayout(buttons);
  column->addLayout(row);
}

void StorePanel::showVerdict(const QString& text, std::optional<Severity> severity) {
  QPixmap mark(mark_->size() * devicePixelRatioF());
  mark.setDevicePixelRatio(devicePixelRatioF());
  mark.fill(Qt::transparent);
  QPainter painter(&mark);
  draw_mark(painter, QRectF(2, 2, 14, 14), severity);
  painter.end();
  mark_->setPixmap(mark);
  verdict_->setText(text);
  verdict_->setAccessibleDescription(severity_word(severity));
}

QString StorePanel::verdict() const {
  return verdict_->text();
}

QString StorePanel::chosenUnit() const {
  const int row = unit_table_->currentRow();
  return answer_ && row >= 0
             ? QString::fromStdString(answer_->units[static_cast<std::size_t>(row)].unit_serial)
             : QString();
}

void StorePanel::choose() {
  StoreDialog dialog(question_, this);
  if (dialog.exec() == QDialog::Accepted) openStore(dialog.question());
}

void StorePanel::openStore(const StoreQuestion& question) {
  question_ = question;
  answer_.reset();
  units_->setRows({});
  problems_->setRows({});
  head_->clear();
  progress_->setMaximum(0);
  showVerdict(tr("opening the store …"), Severity::note);
  job_.start(question);
  working(true);
}

void StorePanel::working(bool is_working) {
  progress_->setVisible(is_working);
  stop_->setVisible(is_working);
  open_->setVisible(!is_working);
  again_->setVisible(!is_working && !question_.uri.isEmpty());
  report_->setVisible(!is_working && answer_ != nullptr);
  report_->setEnabled(!chosenUnit().isEmpty());
}

void StorePanel::show(const StoreAnswerPtr& answer) {
  answer_ = answer;
  const VerifyReport& report = answer->report;
  units_->setRows(store_unit_rows(answer->units));
  problems_->setRows(problem_rows(report));
  unit_table_->fitColumns();
  problem_table_->fitColumns();
  problem_table_->setVisible(problems_->rowCount() > 0);
  if (!answer->units.empty()) unit_table_->selectRow(0);
  working(false);
  QString text = verdict_text(report);
  if (!answer->has_all_units && report.trusted) text += QStringLiteral(" ") + tr("Not all units are listed.");
  showVerdict(text, report.trusted ? report.anchored_to > 0 ? std::nullopt : std::optional(Severity::note)
                                   : std::optional(Severity::fail));
  if (report.newest_head)
    head_->setText(tr("Anchor: %1").arg(QString::fromStdString(report.newest_head->anchor_line())));
  head_->setToolTip(tr("Keep this line outside the store, printed or on another machine."));
  emit answered();
}

}  // namespace seamtakt::desk
