#include "widgets/paste_dialog.hpp"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr std::size_t most_shown = 500;

QString line_text(const PastedRange::Line& line) {
  if (!line.refusal.isEmpty())
    return line.where.isEmpty() ? line.refusal
                                : PasteDialog::tr("Refused. %1: %2").arg(line.where, line.refusal);
  return PasteDialog::tr("%1: %2 → %3").arg(line.where, line.before, line.after);
}

}  // namespace

QString PasteDialog::summary(const PastedRange& range) {
  QStringList said = {tr("Rows: %1. Cells: %2.").arg(range.rows).arg(range.cells)};
  if (range.added > 0) said << tr("New rows: %1.").arg(range.added);
  if (range.left_out > 0) said << tr("Left out, because their values are derived: %1.").arg(range.left_out);
  if (range.refused > 0) said << tr("Refused: %1. Nothing is pasted.").arg(range.refused);
  return said.join(QLatin1Char(' '));
}

PasteDialog::PasteDialog(const PastedRange& range, QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Paste"));
  setAccessibleName(tr("Paste"));
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  auto* text = new QLabel(summary(range), this);
  text->setTextFormat(Qt::PlainText);
  text->setWordWrap(true);
  text->setMinimumWidth(460);
  column->addWidget(text);
  lines_ = new QListWidget(this);
  lines_->setAccessibleName(tr("What the paste changes"));
  text->setBuddy(lines_);
  // What is refused first: that is what has to be mended.
  for (const bool refused : {true, false})
    for (const PastedRange::Line& line : range.lines)
      if (line.refusal.isEmpty() != refused && static_cast<std::size_t>(lines_->count()) < most_shown)
        lines_->addItem(line_text(line));
  column->addWidget(lines_, 1);
  auto* buttons = new QDialogButtonBox(this);
  const bool can_be_taken = range.after && range.cells + range.added > 0;
  QPushButton* paste = can_be_taken ? buttons->addButton(tr("Paste"), QDialogButtonBox::AcceptRole) : nullptr;
  QPushButton* leave = buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  for (QPushButton* button : {paste, leave})
    if (button) button->setAccessibleName(button->text());
  QPushButton* first = paste ? paste : leave;
  first->setDefault(true);
  first->setFocus();
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

}  // namespace seamtakt::desk
