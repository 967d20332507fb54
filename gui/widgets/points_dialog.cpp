#include "widgets/points_dialog.hpp"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

PointsDialog::PointsDialog(const FieldInfo& field, const QString& text, QWidget* parent) : QDialog(parent) {
  setWindowTitle(core_label(field.label));
  setAccessibleName(windowTitle());
  resize(360, 380);
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  points_ = new QTableWidget(this);
  points_->setAccessibleName(windowTitle());
  points_->setColumnCount(field.kind == FieldKind::path ? 3 : 2);
  const QString unit = UnitView::shared().unitText(field.unit);
  QStringList heads;
  for (const QString& axis : {QStringLiteral("x"), QStringLiteral("y"), QStringLiteral("z")})
    heads << (unit.isEmpty() ? axis : axis + QStringLiteral(", ") + unit);
  points_->setHorizontalHeaderLabels(heads.mid(0, points_->columnCount()));
  points_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  points_->verticalHeader()->setDefaultSectionSize(row_px);
  const QStringList rows = text.split(QLatin1Char(';'), Qt::SkipEmptyParts);
  for (const QString& row : rows) {
    const int at = points_->rowCount();
    points_->insertRow(at);
    const QStringList numbers = row.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (int i = 0; i < points_->columnCount(); ++i) {
      auto* item = new QTableWidgetItem(numbers.value(i));
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      points_->setItem(at, i, item);
    }
  }
  column->addWidget(points_, 1);
  auto* below = new QHBoxLayout;
  for (const auto& [name, slot] : {std::pair(tr("Add point"), &PointsDialog::addRow),
                                   std::pair(tr("Remove point"), &PointsDialog::removeRow)}) {
    auto* button = new QPushButton(name, this);
    button->setAccessibleName(name);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, slot);
    below->addWidget(button);
  }
  below->addStretch(1);
  column->addLayout(below);
  refusal_ = new QLabel(this);
  refusal_->setTextFormat(Qt::PlainText);
  refusal_->setWordWrap(true);
  refusal_->hide();
  column->addWidget(refusal_);
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* take = buttons->addButton(tr("Take these points"), QDialogButtonBox::AcceptRole);
  take->setAccessibleName(take->text());
  buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  for (QAbstractButton* each : buttons->buttons()) static_cast<QPushButton*>(each)->setAutoDefault(false);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &PointsDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  if (points_->rowCount() > 0) points_->setCurrentCell(0, 0);
  points_->setFocus();
}

void PointsDialog::accept() {
  const QString reason = taker_ ? taker_(text()) : QString();
  if (reason.isEmpty()) return QDialog::accept();
  refusal_->setText(reason);
  refusal_->show();
}

QString PointsDialog::refusal() const {
  return refusal_->text();
}

void PointsDialog::addRow() {
  const int at = points_->currentRow() < 0 ? points_->rowCount() : points_->currentRow() + 1;
  points_->insertRow(at);
  points_->setCurrentCell(at, 0);
  points_->setFocus();
}

void PointsDialog::removeRow() {
  if (points_->currentRow() >= 0) points_->removeRow(points_->currentRow());
}

QString PointsDialog::text() const {
  QStringList rows;
  for (int row = 0; row < points_->rowCount(); ++row) {
    QStringList numbers;
    for (int i = 0; i < points_->columnCount(); ++i) {
      const QTableWidgetItem* item = points_->item(row, i);
      numbers << (item ? item->text().trimmed() : QString());
    }
    if (!numbers.join(QString()).isEmpty()) rows << numbers.join(QLatin1Char(' '));
  }
  return rows.join(QStringLiteral("; "));
}

}  // namespace seamtakt::desk
