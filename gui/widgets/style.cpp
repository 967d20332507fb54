#include "widgets/style.hpp"

#include <QApplication>
#include <QPalette>
#include <QPolygonF>
#include <QStyle>
#include <QStyleFactory>

#include "models/pictures/palette.hpp"

namespace seamtakt::desk {

namespace {

/// %1 paper, %2 ink, %3 quiet, %4 rule, %5 field, %6 selection, %7 accent, %8 fail, %9 the arrow of a choice,
/// %10 light or dark.
const char* sheet = R"(
* { outline: 0; }
QMainWindow, QDialog { background: %1; }
QToolTip { background: %5; color: %2; border: 1px solid %4; padding: 4px 6px; }
QTableView { background: %1; alternate-background-color: %1; border: 0; gridline-color: %4; selection-background-color: %6; selection-color: %2; }
QTableView::item { padding: 0 8px; border-bottom: 1px solid %4; }
QTableView::item:selected { background: %6; color: %2; }
QTableView::item:focus { border: 1px solid %7; }
QHeaderView { background: %1; border: 0; }
QHeaderView::up-arrow, QHeaderView::down-arrow { width: 0; height: 0; image: none; }
QHeaderView::section { background: %1; color: %3; border: 0; border-bottom: 2px solid %2; padding: 2px 8px; }
QLineEdit, QComboBox, QPlainTextEdit, QSpinBox, QDoubleSpinBox, QDateEdit { background: %5; color: %2; border: 0; border-bottom: 1px solid %3; padding: 3px 6px; selection-background-color: %7; selection-color: %1; min-height: 20px; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus { border-bottom: 2px solid %7; padding-bottom: 2px; }
QLineEdit[refused="true"], QComboBox[refused="true"] { border-bottom: 2px solid %8; padding-bottom: 2px; }
QComboBox::drop-down { border: 0; width: 18px; }
QSpinBox::up-button, QSpinBox::down-button, QDoubleSpinBox::up-button, QDoubleSpinBox::down-button { width: 0; border: 0; }
QComboBox::down-arrow { image: url(%9); width: 11px; height: 11px; }
QPushButton[role="fold"] { border: 0; padding: 4px 2px; color: %3; text-align: left; }
QPushButton[role="fold"]:focus { border: 0; border-bottom: 2px solid %7; }
QComboBox QAbstractItemView { background: %5; color: %2; border: 1px solid %4; selection-background-color: %6; selection-color: %2; }
QPushButton, QToolButton { background: transparent; color: %2; border: 1px solid %3; border-radius: 3px; padding: 4px 10px; }
QPushButton:hover, QToolButton:hover { background: %6; }
QPushButton:focus, QToolButton:focus { border: 2px solid %7; padding: 3px 9px; }
QPushButton:checked, QToolButton:checked { background: %2; color: %1; border-color: %2; }
QPushButton:default { background: %7; color: %1; border-color: %7; }
QPushButton:disabled, QToolButton:disabled { color: %3; border-color: %4; }
QToolButton[flat="true"] { border: 0; padding: 2px 6px; color: %3; }
QToolButton[flat="true"]:focus { border: 0; border-bottom: 2px solid %7; }
QScrollArea { border: 0; background: %1; }
QSplitter::handle { background: %4; }
QSplitter::handle:horizontal { width: 1px; }
QSplitter::handle:vertical { height: 1px; }
QTextBrowser { background: %1; border: 0; color: %2; }
QMenuBar { background: %1; color: %2; }
QMenuBar::item { padding: 4px 8px; background: transparent; }
QMenuBar::item:selected { background: %6; }
QMenu { background: %5; color: %2; border: 1px solid %4; }
QMenu::item { padding: 4px 24px; }
QMenu::item:selected { background: %6; }
QStatusBar { background: %1; color: %3; }
QStatusBar::item { border: 0; }
QProgressBar { background: %4; border: 0; height: 8px; text-align: center; color: transparent; }
QProgressBar::chunk { background: %7; }
QCheckBox { color: %2; spacing: 6px; }
QCheckBox:focus { color: %7; }
QCheckBox::indicator { width: 14px; height: 14px; border: 1px solid %3; background: %5; }
QCheckBox::indicator:checked { image: url(:/icons/check-%10.svg); }
QCheckBox::indicator:focus { border: 1px solid %7; }
QTabBar::tab { background: transparent; color: %3; padding: 4px 12px; border: 0; border-bottom: 2px solid transparent; }
QTabBar::tab:selected { color: %2; border-bottom: 2px solid %2; }
QTabBar::tab:focus { color: %7; }
QTabWidget::pane { border: 0; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle { background: %4; border-radius: 4px; min-height: 24px; min-width: 24px; }
QScrollBar::handle:hover { background: %3; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QLabel[role="title"] { font-size: 15pt; color: %2; }
QLabel[role="quiet"], QCheckBox[role="quiet"] { color: %3; }
QLabel[role="section"] { color: %2; font-weight: 600; padding-top: 8px; }
QLabel[role="refusal"] { color: %8; }
QLabel[role="figure"] { font-size: 15pt; }
)";

QPalette qt_palette(const Palette& p) {
  QPalette palette;
  palette.setColor(QPalette::Window, p.paper);
  palette.setColor(QPalette::WindowText, p.ink);
  palette.setColor(QPalette::Base, p.field);
  palette.setColor(QPalette::AlternateBase, p.paper);
  palette.setColor(QPalette::Text, p.ink);
  palette.setColor(QPalette::PlaceholderText, p.quiet);
  palette.setColor(QPalette::Button, p.paper);
  palette.setColor(QPalette::ButtonText, p.ink);
  palette.setColor(QPalette::Highlight, p.accent);
  palette.setColor(QPalette::HighlightedText, p.paper);
  palette.setColor(QPalette::ToolTipBase, p.field);
  palette.setColor(QPalette::ToolTipText, p.ink);
  palette.setColor(QPalette::Link, p.accent);
  palette.setColor(QPalette::Mid, p.rule);
  palette.setColor(QPalette::Dark, p.rule);
  palette.setColor(QPalette::Light, p.field);
  for (auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, p.quiet);
  return palette;
}

}  // namespace

void apply_style() {
  const Palette& p = Palette::current();
  if (QApplication::style()->name() != QStringLiteral("fusion"))
    QApplication::setStyle(QStyleFactory::create("Fusion"));
  QApplication::setPalette(qt_palette(p));
  qApp->setStyleSheet(QString::fromUtf8(sheet).arg(
      p.paper.name(), p.ink.name(), p.quiet.name(), p.rule.name(), p.field.name(), p.selection.name(),
      p.accent.name(), p.fail.name(),
      p.dark ? QStringLiteral(":/icons/down-dark.svg") : QStringLiteral(":/icons/down-light.svg"),
      p.dark ? QStringLiteral("dark") : QStringLiteral("light")));
}

void draw_mark(QPainter& painter, const QRectF& box, std::optional<Severity> severity) {
  const QColor color = Palette::current().of(severity);
  const double side = std::min(box.width(), box.height());
  QRectF square(0, 0, side, side);
  square.moveCenter(box.center());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(color, side / 7.0));
  painter.setBrush(Qt::NoBrush);
  const double inset = side * 0.12;
  const QRectF inner = square.adjusted(inset, inset, -inset, -inset);
  if (!severity) {
    painter.setBrush(color);
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(inner.adjusted(inset, inset, -inset, -inset));
  } else if (*severity == Severity::note) {
    painter.drawEllipse(inner);
  } else if (*severity == Severity::warn) {
    painter.drawPolygon(
        QPolygonF({QPointF(inner.center().x(), inner.top()), inner.bottomRight(), inner.bottomLeft()}));
  } else {
    painter.setBrush(color);
    painter.drawRect(inner);
    painter.setPen(QPen(Palette::current().paper, side / 7.0));
    const QRectF cross = inner.adjusted(inset, inset, -inset, -inset);
    painter.drawLine(cross.topLeft(), cross.bottomRight());
    painter.drawLine(cross.topRight(), cross.bottomLeft());
  }
  painter.restore();
}

void draw_partly_mark(QPainter& painter, const QRectF& box) {
  const QColor color = Palette::current().quiet;
  const double side = std::min(box.width(), box.height()), inset = side * 0.12;
  QRectF inner(0, 0, side - 2 * inset, side - 2 * inset);
  inner.moveCenter(box.center());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(color, side / 7.0));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(inner);
  painter.setBrush(color);
  constexpr int degree = 16;  // as Qt counts angles
  painter.drawPie(inner, 90 * degree, 180 * degree);
  painter.restore();
}

void draw_unjudged_mark(QPainter& painter, const QRectF& box) {
  const double side = std::min(box.width(), box.height());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(Palette::current().quiet, side / 6.0, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(box.center().x() - side / 3, box.center().y()),
                   QPointF(box.center().x() + side / 3, box.center().y()));
  painter.restore();
}

}  // namespace seamtakt::desk
