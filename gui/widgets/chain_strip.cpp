#include "widgets/chain_strip.hpp"

#include <QHBoxLayout>
#include <QPainter>
#include <QPainterPath>

#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/state_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr int strip_height = 72;
constexpr int bead_y = strip_height - 7;

QFont scaled(QFont font, double factor) {
  font.setPointSizeF(font.pointSizeF() * factor);
  return font;
}

}  // namespace

ChainLink::ChainLink(const QString& name, const QString& key, QWidget* parent)
    : QAbstractButton(parent), name_(name), key_(key) {
  setCheckable(true);
  setAutoExclusive(true);
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setAccessibleName(name);
  setText(name);
}

QSize ChainLink::sizeHint() const {
  return {150, strip_height};
}

void ChainLink::setFigure(const QString& figure, const QString& detail, std::optional<Severity> worst,
                          const QString& counted, HowJudged judged) {
  figure_ = figure;
  detail_ = detail;
  worst_ = worst;
  judged_ = judged;
  QString state = figure.isEmpty() ? QString() : stateWord();
  if (!state.isEmpty() && !counted.isEmpty()) state += QStringLiteral("; ") + counted;
  setAccessibleDescription(figure + QStringLiteral(" ") + detail + QStringLiteral(", ") + state);
  setToolTip(name_ + QStringLiteral(" (") + key_ + QStringLiteral(")\n") + figure + QStringLiteral(" ") +
             detail + (state.isEmpty() ? QString() : QStringLiteral("\n") + state));
  update();
}

QString ChainLink::stateWord() const {
  return isNotJudged() ? not_judged_word() : isPartlyJudged() ? partly_judged_word() : severity_word(worst_);
}

void ChainLink::drawMark(QPainter& painter, const QRectF& box) const {
  if (isNotJudged()) return draw_unjudged_mark(painter, box);
  if (isPartlyJudged()) return draw_partly_mark(painter, box);
  draw_mark(painter, box, worst_);
}

void ChainLink::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRect area = rect().adjusted(14, 8, -10, -16);
  if (underMouse() && !isChecked()) painter.fillRect(rect().adjusted(2, 2, -2, -12), p.selection);

  const int mark = 13;
  const QRectF mark_box(area.left(), area.top() + 2, mark, mark);
  if (!figure_.isEmpty()) drawMark(painter, mark_box);
  QFont name_font = scaled(font(), 0.95);
  name_font.setBold(isChecked());
  painter.setFont(name_font);
  painter.setPen(isChecked() ? p.ink : p.quiet);
  const int text_left = area.left() + (figure_.isEmpty() ? 0 : mark + 6);
  painter.drawText(QRect(text_left, area.top() - 2, area.right() - text_left, 20),
                   Qt::AlignVCenter | Qt::AlignLeft,
                   painter.fontMetrics().elidedText(name_, Qt::ElideRight, area.right() - text_left));

  painter.setFont(scaled(font(), 1.25));
  painter.setPen(p.ink);
  const QFontMetrics figure_metrics = painter.fontMetrics();
  const QString figure = figure_metrics.elidedText(figure_.isEmpty() ? QStringLiteral("–") : figure_,
                                                   Qt::ElideRight, area.width());
  painter.drawText(QRect(area.left(), area.top() + 22, area.width(), 24), Qt::AlignVCenter | Qt::AlignLeft,
                   figure);
  const int after = area.left() + figure_metrics.horizontalAdvance(figure) + 8;
  painter.setFont(scaled(font(), 0.85));
  painter.setPen(p.quiet);
  if (area.right() - after > 30)
    painter.drawText(QRect(after, area.top() + 24, area.right() - after, 22),
                     Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(detail_, Qt::ElideRight, area.right() - after));
  if (hasFocus()) {
    painter.setPen(QPen(p.accent, 1.5, Qt::DotLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(3, 3, -3, -14));
  }
}

ChainStrip::ChainStrip(QWidget* parent) : QWidget(parent) {
  setFixedHeight(strip_height);
  setAccessibleName(tr("Chain"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  const QString names[desk_pages.size()] = {tr("Seams"), tr("Schedules"), tr("Heat"),    tr("Cell"),
                                            tr("Line"),  tr("Records"),   tr("Findings")};
  for (const DeskPage page : desk_pages) {
    const std::size_t i = position_of(page);
    const auto key = static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i));
    auto* link =
        new ChainLink(names[i], QKeySequence(Qt::CTRL | key).toString(QKeySequence::NativeText), this);
    links_[i] = link;
    row->addWidget(link, 1);
    connect(link, &QAbstractButton::clicked, this, [this, page] { emit chosen(page); });
    connect(link, &QAbstractButton::toggled, this, [this] { update(); });
  }
  links_[0]->setChecked(true);
}

void ChainStrip::setCurrent(DeskPage page) {
  link(page).setChecked(true);
  update();
}

/// The seam that joins the links: a thin line, and over the current link a bead of ripples, like a weld.
void ChainStrip::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(p.rule, 1));
  painter.drawLine(0, bead_y, width(), bead_y);
  for (const ChainLink* link : links_) {
    if (link != links_[0]) {
      painter.setPen(QPen(p.rule, 1));
      painter.drawLine(link->x(), 12, link->x(), bead_y - 10);
    }
    if (!link->isChecked()) continue;
    painter.setPen(QPen(p.ink, 1.6, Qt::SolidLine, Qt::RoundCap));
    painter.setBrush(Qt::NoBrush);
    constexpr double pitch = 7, radius = 5;
    for (double x = link->x() + 10; x < link->x() + link->width() - 12; x += pitch) {
      QPainterPath ripple;
      ripple.moveTo(x, bead_y - radius);
      ripple.quadTo(x + 2 * radius, bead_y, x, bead_y + radius);
      painter.drawPath(ripple);
    }
  }
}

}  // namespace seamtakt::desk
