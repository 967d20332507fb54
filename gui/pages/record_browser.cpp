#include "pages/record_browser.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "document/shown_text.hpp"
#include "models/tables/browsed_rows.hpp"
#include "pages/record_forms.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

RecordBrowser::RecordBrowser(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, unit_px, 0, 0);
  forms_ = new RecordForms(this);
  rows_ = new ValueModel(browsed_columns(), this);
  makeFilter();
  table_ = new GridView(*rows_, tr("Stored passes"), this);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->keepColumns(QStringLiteral("stored-passes"));
  column->addWidget(table_, 1);
  said_ = new QLabel(this);
  said_->setProperty("role", "quiet");
  said_->setTextFormat(Qt::PlainText);
  said_->setMinimumWidth(10);
  column->addWidget(said_);
  makeButtons();
  connect(&job_, &BrowseJob::answered, this, &RecordBrowser::show);
  connect(&job_, &BrowseJob::failed, this, [this](const QString& reason) {
    said_->setText(reason);
    enable();
    emit message(reason);
  });
  connect(forms_, &RecordForms::written, this, [this](const QString& text) {
    emit message(text);
    lookFrom(answer_ ? answer_->question.first : 1);
    emit written();
  });
  connect(table_, &GridView::rowChosen, this, &RecordBrowser::enable);
  setStore({});
}

void RecordBrowser::makeFilter() {
  auto* row = new QHBoxLayout;
  const auto line = [&](const QString& name, const QString& tip) {
    auto* made = new QLineEdit(this);
    made->setAccessibleName(name);
    made->setPlaceholderText(name);
    made->setToolTip(tip);
    made->setMinimumWidth(50);
    connect(made, &QLineEdit::returnPressed, this, &RecordBrowser::look);
    row->addWidget(made);
    return made;
  };
  unit_ = line(tr("Serial number"), tr("Of the unit"));
  welder_ = line(tr("Welder"), tr("Of a manual seam, or a logged welder or operator"));
  lot_ = line(tr("Lot"), tr("A kept column whose name ends in lot, such as wire_lot"));
  robot_ = line(tr("Robot"), tr("As the log names it"));
  schedule_ = line(tr("Schedule"), tr("By which it was judged"));
  from_ = line(tr("From"), tr("A day such as 2026-03-02, or a time such as 2026-03-02T06:00:00Z"));
  to_ = line(tr("To"), tr("A day with all of it, or a time"));
  look_ = tool_button(tr("Show"), tr("Looks for the stored passes (Enter)"), {}, this);
  connect(look_, &QPushButton::clicked, this, &RecordBrowser::look);
  more_ = tool_button(tr("Next page"), tr("The next %1 passes").arg(BrowseJob::page_rows), {}, this);
  connect(more_, &QPushButton::clicked, this, [this] { lookFrom(answer_->page.next); });
  row->addWidget(look_);
  row->addWidget(more_);
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

void RecordBrowser::makeButtons() {
  auto* row = new QHBoxLayout;
  const auto button = [&](const QString& text, const QString& tip, auto slot) {
    QPushButton* made = tool_button(text, tip, {}, this);
    connect(made, &QPushButton::clicked, this, slot);
    row->addWidget(made);
    return made;
  };
  dispose_ = button(tr("Disposition …"), tr("What becomes of a pass that failed or was left undecided"),
                    [this] { forms_->dispose(uri_, *chosen()); });
  correct_ = button(tr("Correct …"), tr("Says what a value should have been; the old one stays readable"),
                    [this] { forms_->correct(uri_, *chosen()); });
  sign_ = button(tr("Sign off …"), tr("Signs the record with a person's own key"),
                 [this] { forms_->signOff(uri_, *chosen()); });
  note_ = button(tr("Note …"), tr("Writes a note about the record or the store"),
                 [this] { forms_->note(uri_, chosen()); });
  calibrate_ = button(tr("Calibration …"), tr("Writes that an instrument was calibrated"),
                      [this] { forms_->calibrate(uri_); });
  row->addStretch(1);
  auto* column = static_cast<QVBoxLayout*>(layout());
  column->addLayout(row);
  row = new QHBoxLayout;
  using Kind = StoreReportQuestion::Kind;
  shift_ = button(tr("Record of the shift …"), tr("Writes what was welded between From and To as PDF"),
                  [this] { askReport(Kind::period, false); });
  seam_ = button(tr("Record of the seam …"), tr("Writes the chosen seam over time as PDF"),
                 [this] { askReport(Kind::period, true); });
  certificate_ = button(tr("Certificate …"), tr("Writes the chosen unit's certificate of conformity as PDF"),
                        [this] { askReport(Kind::certificate, false); });
  row->addStretch(1);
  column->addLayout(row);
}

void RecordBrowser::setStore(const QString& uri) {
  if (answer_ && uri == uri_) return;
  uri_ = uri;
  answer_.reset();
  rows_->setRows({});
  said_->setText(uri.isEmpty() ? tr("Open a record store on the page beside first.")
                               : tr("Say what is looked for, or leave all empty, and press Enter."));
  enable();
}

const BrowsedRecord* RecordBrowser::chosen() const {
  const int row = table_->currentRow();
  return answer_ && row >= 0 ? &answer_->page.records[static_cast<std::size_t>(row)] : nullptr;
}

void RecordBrowser::look() {
  lookFrom(1);
}

void RecordBrowser::lookFrom(std::uint64_t first) {
  if (uri_.isEmpty()) return;
  said_->setText(tr("Looking …"));
  more_->setEnabled(false);
  job_.start({uri_, unit_->text(), welder_->text(), lot_->text(), robot_->text(), schedule_->text(),
              from_->text(), to_->text(), first});
}

void RecordBrowser::show(const BrowseAnswerPtr& answer) {
  if (answer->question.uri != uri_) return;
  answer_ = answer;
  rows_->setRows(browsed_rows(answer->page.records));
  table_->fitColumns();
  const auto count = static_cast<int>(answer->page.records.size());
  said_->setText(shown_text(
      Sentence(answer->page.next != 0 ? "desk.passes.more"_key : "desk.passes"_key, {{"passes", count}})));
  if (count > 0) table_->selectRow(0);
  enable();
}

void RecordBrowser::enable() {
  const BrowsedRecord* record = chosen();
  const bool is_open = !uri_.isEmpty(), is_weld = record && !record->is_void;
  for (QWidget* each : std::initializer_list<QWidget*>{look_, note_, calibrate_, shift_})
    each->setEnabled(is_open);
  more_->setEnabled(answer_ && answer_->page.next != 0);
  dispose_->setEnabled(is_weld && record->verdict != "pass");
  for (QPushButton* each : {correct_, sign_}) each->setEnabled(is_weld);
  seam_->setEnabled(record && !record->seam.empty());
  certificate_->setEnabled(record && !record->unit_serial.empty());
}

void RecordBrowser::askReport(StoreReportQuestion::Kind kind, bool of_seam) {
  StoreReportQuestion question{kind, uri_, {}, from_->text().trimmed(), to_->text().trimmed(), {}};
  if (const BrowsedRecord* record = chosen(); record && kind == StoreReportQuestion::Kind::certificate)
    question.unit = QString::fromStdString(record->unit_serial);
  else if (record && of_seam)
    question.seam = QString::fromStdString(record->weldment + "/" + record->seam);
  emit reportAsked(question);
}

}  // namespace seamtakt::desk
