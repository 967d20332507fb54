#include "widgets/import_dialog.hpp"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/file_line.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

namespace {

/// The paths in a text, one on each line.
QStringList paths_of(const QString& text) {
  QStringList paths;
  for (const QString& line : text.split('\n'))
    if (!line.trimmed().isEmpty()) paths << line.trimmed();
  return paths;
}

}  // namespace

ImportDialog::ImportDialog(const ImportRequest& last, QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Import log"));
  setMinimumWidth(560);
  auto* column = new QVBoxLayout(this);
  auto* caption = new QLabel(tr("Arc logs, one on each line"), this);
  logs_ = new QPlainTextEdit(last.logs.join(QLatin1Char('\n')), this);
  logs_->setAccessibleName(caption->text());
  logs_->setTabChangesFocus(true);
  logs_->setMaximumHeight(4 * fontMetrics().lineSpacing());
  caption->setBuddy(logs_);
  QPushButton* choose = tool_button(tr("Files …"), tr("Chooses the logs"), {}, this);
  choose->setAutoDefault(false);
  connect(choose, &QPushButton::clicked, this, &ImportDialog::chooseLogs);
  auto* row = new QHBoxLayout;
  row->addWidget(logs_, 1);
  row->addWidget(choose, 0, Qt::AlignTop);
  column->addWidget(caption);
  column->addLayout(row);
  const QString tables = tr("Tables (*.csv);;All files (*)");
  columns_ = add_file_line(*this, *column, tr("Columns file (optional)"),
                           tr("names, units and job numbers of a log with names of its own"),
                           tr("Columns files (*.json);;All files (*)"));
  unit_times_ =
      add_file_line(*this, *column, tr("Units by time (optional)"),
                    tr("unit_serial, weldment, start, end, where the log has no serial numbers"), tables);
  manual_ = add_file_line(*this, *column, tr("Manual seams (optional)"),
                          tr("unit_serial, seam, pass, welder, schedule, date, result"), tables);
  columns_->setText(last.columns);
  unit_times_->setText(last.unit_times);
  manual_->setText(last.manual);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  import_ = buttons->button(QDialogButtonBox::Ok);
  import_->setText(tr("Import"));
  import_->setAccessibleName(import_->text());
  const auto enable = [this] { import_->setEnabled(!paths_of(logs_->toPlainText()).isEmpty()); };
  connect(logs_, &QPlainTextEdit::textChanged, this, enable);
  enable();
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
}

void ImportDialog::chooseLogs() {
  const QStringList paths = QFileDialog::getOpenFileNames(this, tr("Import log"), {},
                                                          tr("Arc logs (*.csv *.gz *.txt);;All files (*)"));
  if (!paths.isEmpty()) logs_->setPlainText(paths.join(QLatin1Char('\n')));
}

ImportRequest ImportDialog::request() const {
  return {paths_of(logs_->toPlainText()), columns_->text().trimmed(), unit_times_->text().trimmed(),
          manual_->text().trimmed()};
}

}  // namespace seamtakt::desk
