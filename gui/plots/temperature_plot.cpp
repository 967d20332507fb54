#include "plots/temperature_plot.hpp"

#include <qcustomplot.h>

#include <QSplitter>
#include <QVBoxLayout>
#include <cmath>

#include "models/pictures/contour.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "plots/plot_style.hpp"

namespace seamtakt::desk {

namespace {

struct Isotherm {
  double at_C;
  Qt::PenStyle style;
};
constexpr Isotherm isotherms[] = {
    {steel_melting_C - 1, Qt::SolidLine}, {800, Qt::DashLine}, {500, Qt::DotLine}};

constexpr Qt::PenStyle dashes[] = {Qt::SolidLine, Qt::DashLine, Qt::DashDotLine, Qt::DotLine,
                                   Qt::DashDotDotLine};
constexpr QCPScatterStyle::ScatterShape shapes[] = {QCPScatterStyle::ssDisc, QCPScatterStyle::ssSquare,
                                                    QCPScatterStyle::ssTriangle, QCPScatterStyle::ssDiamond,
                                                    QCPScatterStyle::ssCross};

}  // namespace

TemperaturePlot::TemperaturePlot(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* split = new QSplitter(Qt::Vertical, this);
  map_ = new QCustomPlot(split);
  cycles_ = new QCustomPlot(split);
  map_->setAccessibleName(tr("Temperature of the surface round the arc"));
  cycles_->setAccessibleName(tr("Thermal cycles of chosen points"));
  map_->setFocusPolicy(Qt::NoFocus);
  cycles_->setFocusPolicy(Qt::NoFocus);
  split->addWidget(map_);
  split->addWidget(cycles_);
  split->setSizes({300, 300});
  column->addWidget(split);
  colors_ = new QCPColorMap(map_->xAxis, map_->yAxis);
  colors_->setInterpolate(true);
  map_->axisRect()->setupFullAxesBox();
  for (const Isotherm& isotherm : isotherms) {
    auto* curve = new QCPCurve(map_->xAxis, map_->yAxis);
    curve->setProperty("style", static_cast<int>(isotherm.style));
    isotherms_.push_back(curve);
  }
  connect(map_, &QCustomPlot::mousePress, this, [this](QMouseEvent* event) {
    emit pointChosen(
        std::abs(UnitView::shared().fromShown(map_->yAxis->pixelToCoord(event->position().y()), "mm")));
  });
  connect(map_, &QCustomPlot::mouseMove, this, [this](QMouseEvent* event) {
    double key = 0, value = 0;
    map_->axisRect();
    key = map_->xAxis->pixelToCoord(event->position().x());
    value = map_->yAxis->pixelToCoord(event->position().y());
    const UnitView& units = UnitView::shared();
    const double at_C = colors_->data()->data(key, value);
    emit readOut(tr("%1 behind the arc, %2 beside the seam: %3 in one plate")
                     .arg(units.quantityText(units.fromShown(-key, "mm"), "mm", 3),
                          units.quantityText(units.fromShown(std::abs(value), "mm"), "mm", 3),
                          units.quantityText(units.fromShown(at_C, "C"), "C", 4)));
  });
  restyle();
}

void TemperaturePlot::restyle() {
  for (QCustomPlot* plot : {map_, cycles_}) style_plot(*plot);
  if (!field_.ahead_mm.empty()) setField(field_);
  if (!shown_.empty()) setCycles(shown_);
}

void TemperaturePlot::setField(const SurfaceField& field) {
  field_ = field;
  const UnitView& units = UnitView::shared();
  const int along = static_cast<int>(field.ahead_mm.size()), across = static_cast<int>(field.aside_mm.size());
  QCPColorMapData* cells = colors_->data();
  cells->setSize(along, across);
  cells->setRange({units.toShown(field.ahead_mm.front(), "mm"), units.toShown(field.ahead_mm.back(), "mm")},
                  {units.toShown(field.aside_mm.front(), "mm"), units.toShown(field.aside_mm.back(), "mm")});
  for (int row = 0; row < across; ++row)
    for (int column = 0; column < along; ++column)
      cells->setCell(column, row,
                     units.toShown(field.temperature_C[static_cast<std::size_t>(row * along + column)], "C"));
  colors_->setGradient(heat_gradient());
  colors_->rescaleDataRange(true);
  map_->xAxis->setLabel(tr("along the seam, ahead of the arc to the right (%1)").arg(units.unitText("mm")));
  map_->yAxis->setLabel(tr("beside the seam (%1)").arg(units.unitText("mm")));
  map_->xAxis->setRange(cells->keyRange());
  map_->yAxis->setRange(cells->valueRange());
  drawIsotherms(field);
  map_->replot(QCustomPlot::rpQueuedReplot);
}

void TemperaturePlot::drawIsotherms(const SurfaceField& field) {
  const UnitView& units = UnitView::shared();
  map_->clearItems();
  for (std::size_t i = 0; i < isotherms_.size(); ++i) {
    const auto pieces =
        contour(field.ahead_mm, field.aside_mm, field.temperature_C.data(), isotherms[i].at_C);
    QVector<double> t, x, y;
    double left = 0, at = 0;
    const ContourLines lines = joined_contour(pieces);
    for (std::size_t point = 0; point < lines.x.size(); ++point) {
      t.push_back(static_cast<double>(t.size()));
      x.push_back(units.toShown(lines.x[point], "mm"));
      y.push_back(units.toShown(lines.y[point], "mm"));
      if (lines.x[point] < left && lines.y[point] > 0) {
        left = lines.x[point];
        at = lines.y[point];
      }
    }
    isotherms_[i]->setData(t, x, y, true);
    isotherms_[i]->setPen(QPen(QColor(0xfb, 0xf4, 0xdc), 1.6, isotherms[i].style));
    if (!pieces.empty())
      map_text(*map_, units.toShown(left, "mm"), units.toShown(at, "mm"),
               units.quantityText(i == 0 ? steel_melting_C : isotherms[i].at_C, "C", 4))
          ->setPositionAlignment(Qt::AlignHCenter | Qt::AlignBottom);
  }
}

void TemperaturePlot::setCycles(const std::vector<ThermalCycle>& cycles) {
  shown_ = cycles;
  const Palette& p = Palette::current();
  const UnitView& units = UnitView::shared();
  cycles_->clearGraphs();
  cycles_->clearItems();
  double latest = 1;
  for (const double level : {800.0, 500.0}) {
    auto* line = new QCPItemStraightLine(cycles_);
    line->setPen(QPen(p.quiet, 1, level == 800 ? Qt::DashLine : Qt::DotLine));
    line->point1->setCoords(0, units.toShown(level, "C"));
    line->point2->setCoords(1, units.toShown(level, "C"));
  }
  for (std::size_t i = 0; i < cycles.size(); ++i) {
    const ThermalCycle& cycle = cycles[i];
    QCPGraph* graph = cycles_->addGraph();
    QVector<double> time, temperature;
    for (std::size_t k = 0; k < cycle.time_s.size(); ++k) {
      time.push_back(cycle.time_s[k]);
      temperature.push_back(units.toShown(cycle.temperature_C[k], "C"));
    }
    latest = std::max(latest, cycle.time_s.back());
    const QColor color = p.series(static_cast<int>(i));
    graph->setData(time, temperature, true);
    graph->setPen(QPen(color, 2, dashes[i % std::size(dashes)]));
    graph->setScatterStyle(QCPScatterStyle(shapes[i % std::size(shapes)], color, 6));
    graph->setScatterSkip(static_cast<int>(cycle.time_s.size() / 9));
    QString name =
        tr("%1 beside: peak %2")
            .arg(units.quantityText(cycle.aside_mm, "mm", 3), units.quantityText(cycle.peak_C, "C", 4));
    if (cycle.at_800_s && cycle.at_500_s)
      name += tr(", t8/5 of one plate %1 s")
                  .arg(UnitView::shared().rounded(*cycle.at_500_s - *cycle.at_800_s, 3));
    graph->setName(name);
  }
  cycles_->legend->setVisible(!cycles.empty());
  cycles_->legend->setBrush(p.paper);
  cycles_->legend->setBorderPen(Qt::NoPen);
  cycles_->legend->setTextColor(p.ink);
  cycles_->legend->setFont(font());
  cycles_->xAxis->setLabel(tr("time after the arc has passed, s"));
  cycles_->yAxis->setLabel(tr("in one plate (%1)").arg(units.unitText("C")));
  cycles_->xAxis->setRange(-latest / 10, latest);
  cycles_->yAxis->setRange(0, units.toShown(steel_melting_C * 1.05, "C"));
  cycles_->replot(QCustomPlot::rpQueuedReplot);
}

}  // namespace seamtakt::desk
