#include "plots/line_view.hpp"

#include <QPainter>
#include <algorithm>
#include <memory>

#include "base/units/units.hpp"
#include "models/pictures/contour.hpp"
#include "models/pictures/contrast.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

struct Share {
  QString name;
  int series;
  Qt::BrushStyle fill;
  double StageResult::*pct;
};

std::vector<Share> shares() {
  return {{LineView::tr("busy"), 1, Qt::SolidPattern, &StageResult::busy_pct},
          {LineView::tr("stopped"), 3, Qt::DiagCrossPattern, &StageResult::stopped_pct},
          {LineView::tr("blocked"), 4, Qt::BDiagPattern, &StageResult::blocked_pct},
          {LineView::tr("starved"), 5, Qt::Dense6Pattern, &StageResult::starved_pct}};
}

}  // namespace

LineView::LineView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Stages of the line and departures against takt"));
  setAccessibleDescription(tr("The tables of units and stages say the same in words."));
}

void LineView::setResult(std::shared_ptr<const LineResult> result) {
  result_ = std::move(result);
  update();
}

void LineView::paintStages(QPainter& painter, const QRectF& area) const {
  const Palette& p = Palette::current();
  const double row =
      std::min(30.0, area.height() / static_cast<double>(std::max<std::size_t>(1, result_->stages.size())));
  const double names = 92;
  for (std::size_t i = 0; i < result_->stages.size(); ++i) {
    const StageResult& stage = result_->stages[i];
    const double y = area.top() + row * static_cast<double>(i);
    QFont font = painter.font();
    font.setBold(stage.stage == result_->bottleneck);
    painter.setFont(font);
    painter.setPen(p.ink);
    painter.drawText(QRectF(area.left(), y, names - 8, row), Qt::AlignRight | Qt::AlignVCenter,
                     QString::fromStdString(stage.stage) +
                         (stage.servers > 1 ? QStringLiteral(" ×%1").arg(stage.servers) : QString()));
    font.setBold(false);
    painter.setFont(font);
    double x = area.left() + names;
    const double full = area.width() - names - 8;
    for (const Share& share : shares()) {
      const double wide = stage.*share.pct / 100 * full;
      const QRectF bar(x, y + 4, wide, row - 8);
      painter.fillRect(bar, QBrush(p.series(share.series), share.fill));
      if (wide > 2) {
        painter.setPen(QPen(p.series(share.series), 1));
        painter.drawRect(bar);
      }
      const QString text = QStringLiteral("%1 %").arg(UnitView::shared().rounded(stage.*share.pct, 2));
      if (share.fill == Qt::SolidPattern && wide > painter.fontMetrics().horizontalAdvance(text) + 6) {
        painter.setPen(text_on(p.series(share.series)));
        painter.drawText(bar, Qt::AlignCenter, text);
      }
      x += wide;
    }
  }
}

void LineView::paintDepartures(QPainter& painter, const QRectF& area) const {
  const Palette& p = Palette::current();
  std::vector<const UnitResult*> units;
  for (const UnitResult& unit : result_->units) units.push_back(&unit);
  if (units.size() < 2) return;
  std::sort(units.begin(), units.end(),
            [](const UnitResult* a, const UnitResult* b) { return a->left_work_s < b->left_work_s; });
  // In working time, so that a night isn't a missed takt.
  double longest = result_->takt_s.value_or(0) * 1.3;
  for (std::size_t i = 1; i < units.size(); ++i)
    longest = std::max(longest, (units[i]->left_work_s - units[i - 1]->left_work_s) * 1.06);
  const double left = 62;
  const QRectF plot = area.adjusted(left, 8, -8, -34);
  const auto y = [&](double seconds) { return plot.bottom() - seconds / longest * plot.height(); };
  painter.setPen(QPen(p.rule, 1));
  painter.drawRect(plot);
  painter.setPen(p.quiet);
  for (const double minutes : round_levels(0, longest / 60, 4))
    painter.drawText(QRectF(area.left(), y(minutes * 60) - 9, left - 6, 18),
                     Qt::AlignRight | Qt::AlignVCenter, minutes_text(minutes * 60));
  const double step = plot.width() / static_cast<double>(units.size());
  for (std::size_t i = 1; i < units.size(); ++i) {
    const double interval = units[i]->left_work_s - units[i - 1]->left_work_s;
    const bool late = units[i]->wanted_s.has_value();
    const QRectF bar(plot.left() + step * static_cast<double>(i) + 1, y(interval), std::max(1.0, step - 2),
                     plot.bottom() - y(interval));
    painter.fillRect(bar, QBrush(late ? p.fail : p.series(0), late ? Qt::Dense4Pattern : Qt::SolidPattern));
  }
  if (result_->takt_s) {
    painter.setPen(QPen(p.ink, 1.5, Qt::DashLine));
    painter.drawLine(QPointF(plot.left(), y(*result_->takt_s)), QPointF(plot.right(), y(*result_->takt_s)));
    const QString takt = tr("takt %1").arg(minutes_text(*result_->takt_s));
    const QRectF above(plot.left(), y(*result_->takt_s) - 18, plot.width() - 4, 16);
    // Bars that reach behind it don't make it unreadable.
    painter.fillRect(painter.boundingRect(above, Qt::AlignRight, takt).adjusted(-3, 0, 3, 0), p.paper);
    painter.drawText(above, Qt::AlignRight, takt);
  }
  painter.setPen(p.quiet);
  painter.drawText(QRectF(plot.left(), plot.bottom() + 2, plot.width(), 16), Qt::AlignLeft,
                   tr("units as they leave; bar: time since the one before; dotted: takt missed"));
}

QString LineView::drawText() const {
  if (!result_ || result_->certain || result_->figures.runs == 1) return {};
  return tr("one draw of %1, seed %2").arg(result_->figures.runs).arg(result_->draw_seed);
}

void LineView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.setPen(p.quiet);
  if (!result_) {
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("Read the day's orders to see what the line makes of them."));
    return;
  }
  if (result_->units.empty()) {
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, tr("No unit is run."));
    return;
  }
  double x = 92;
  for (const Share& share : shares()) {
    painter.fillRect(QRectF(x, 6, 16, 10), QBrush(p.series(share.series), share.fill));
    painter.setPen(QPen(p.series(share.series), 1));
    painter.drawRect(QRectF(x, 6, 16, 10));
    painter.setPen(p.quiet);
    painter.drawText(QPointF(x + 21, 16), share.name);
    x += 21 + painter.fontMetrics().horizontalAdvance(share.name) + 14;
  }
  // In a row of its own where there is no room beside the legend.
  const bool is_below = x + painter.fontMetrics().horizontalAdvance(drawText()) > width();
  painter.drawText(is_below ? QPointF(92, 34) : QPointF(x, 16), drawText());
  const double head = is_below ? 42 : 24;
  const double stages = std::min(height() * 0.55, 30.0 * static_cast<double>(result_->stages.size()));
  paintStages(painter, QRectF(0, head, width(), stages));
  paintDepartures(painter, QRectF(0, head + 8 + stages, width(), height() - stages - head - 8));
}

}  // namespace seamtakt::desk
