#include "plots/plot_style.hpp"

#include <qcustomplot.h>

#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

void style_plot(QCustomPlot& plot) {
  const Palette& p = Palette::current();
  plot.setBackground(p.paper);
  for (QCPAxisRect* rect : plot.axisRects()) {
    rect->setBackground(p.paper);
    for (QCPAxis* axis : rect->axes()) {
      axis->setBasePen(QPen(p.quiet, 1));
      axis->setTickPen(QPen(p.quiet, 1));
      axis->setSubTickPen(QPen(p.rule, 1));
      axis->setTickLabelColor(p.quiet);
      axis->setLabelColor(p.ink);
      axis->setTickLabelFont(plot.font());
      axis->setLabelFont(plot.font());
      axis->grid()->setPen(QPen(p.rule, 1));
      axis->grid()->setZeroLinePen(QPen(p.rule, 1));
      axis->setNumberFormat(QStringLiteral("gb"));
    }
  }
  QLocale locale = UnitView::shared().hasDecimalComma() ? QLocale(QLocale::German) : QLocale::c();
  locale.setNumberOptions(QLocale::OmitGroupSeparator);
  plot.setLocale(locale);
}

QCPItemText* map_text(QCustomPlot& plot, double x, double y, const QString& text) {
  auto* item = new QCPItemText(&plot);
  item->setLayer(QStringLiteral("overlay"));
  item->position->setCoords(x, y);
  item->setText(text);
  item->setFont(plot.font());
  item->setColor(Palette::light().ink);
  item->setBrush(QColor(0xfb, 0xf4, 0xdc, 210));
  item->setPadding(QMargins(2, 0, 2, 0));
  return item;
}

QCPColorGradient heat_gradient() {
  QCPColorGradient gradient;
  gradient.clearColorStops();
  for (std::size_t i = 0; i < heat_ramp.size(); ++i)
    gradient.setColorStopAt(static_cast<double>(i) / (heat_ramp.size() - 1), QColor::fromRgb(heat_ramp[i]));
  gradient.setLevelCount(350);
  return gradient;
}

}  // namespace seamtakt::desk
