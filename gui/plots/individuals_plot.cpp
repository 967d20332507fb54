#include "plots/individuals_plot.hpp"

#include <qcustomplot.h>

#include <QVBoxLayout>
#include <algorithm>
#include <limits>

#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "plots/plot_style.hpp"

namespace seamtakt::desk {

namespace {

struct VerdictMark {
  std::optional<Verdict> verdict;
  QColor color;
  QCPScatterStyle::ScatterShape shape;
};

std::array<VerdictMark, 4> verdict_marks() {
  const Palette& p = Palette::current();
  return {VerdictMark{Verdict::pass, p.ok, QCPScatterStyle::ssDisc},
          VerdictMark{Verdict::fail, p.fail, QCPScatterStyle::ssCrossSquare},
          VerdictMark{Verdict::undecided, p.warn, QCPScatterStyle::ssTriangle},
          VerdictMark{std::nullopt, p.quiet, QCPScatterStyle::ssCircle}};
}

}  // namespace

IndividualsPlot::IndividualsPlot(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Control chart"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  plot_ = new QCustomPlot(this);
  plot_->setFocusPolicy(Qt::NoFocus);
  plot_->setAccessibleName(tr("Control chart"));
  plot_->setToolTip(
      tr("Values pass by pass. Dashed: the schedule's limits. Line: mean. Dots and dashes: control limits, "
         "three sigma about the mean. Ring: the value completes a pattern that chance rarely makes."));
  column->addWidget(plot_);
  restyle();
}

void IndividualsPlot::restyle() {
  style_plot(*plot_);
  draw();
}

void IndividualsPlot::setChart(IndividualsChart chart) {
  chart_ = std::move(chart);
  draw();
}

void IndividualsPlot::widen(double shown) {
  low_ = std::min(low_, shown);
  high_ = std::max(high_, shown);
}

void IndividualsPlot::drawPoints() {
  const UnitView& units = UnitView::shared();
  for (const VerdictMark& kind : verdict_marks()) {
    QVector<double> x, y, u;
    for (std::size_t i = 0; i < chart_.points.size(); ++i) {
      const IndividualsChart::Point& point = chart_.points[i];
      if (point.verdict != kind.verdict) continue;
      x.push_back(static_cast<double>(i + 1));
      y.push_back(units.toShown(point.value, chart_.unit));
      u.push_back(units.toShown(point.expanded, chart_.unit));
      widen(y.back() - u.back());
      widen(y.back() + u.back());
    }
    QCPGraph* graph = plot_->addGraph();
    graph->setLineStyle(QCPGraph::lsNone);
    graph->setScatterStyle(
        QCPScatterStyle(kind.shape, QPen(kind.color, 1.6),
                        QBrush(kind.shape == QCPScatterStyle::ssDisc ? kind.color : Qt::transparent), 7));
    graph->setData(x, y, true);
    auto* bars = new QCPErrorBars(plot_->xAxis, plot_->yAxis);
    bars->setDataPlottable(graph);
    bars->setData(u);
    bars->setPen(QPen(Palette::current().quiet, 1));
    bars->setWhiskerWidth(4);
  }
}

void IndividualsPlot::drawRuns() {
  QVector<double> x, y;
  for (const RunsSignal& signal : chart_.runs)
    if (signal.at < chart_.points.size()) {
      x.push_back(static_cast<double>(signal.at + 1));
      y.push_back(UnitView::shared().toShown(chart_.points[signal.at].value, chart_.unit));
    }
  QCPGraph* rings = plot_->addGraph();
  rings->setLineStyle(QCPGraph::lsNone);
  rings->setScatterStyle(
      QCPScatterStyle(QCPScatterStyle::ssCircle, QPen(Palette::current().ink, 1.4), Qt::NoBrush, 14));
  rings->setData(x, y, true);
}

/// A level line with its name at the right edge, above or below it.
void IndividualsPlot::drawLine(double value, const QString& name, Qt::PenStyle style, bool is_below) {
  const Palette& p = Palette::current();
  const double at = UnitView::shared().toShown(value, chart_.unit);
  auto* line = new QCPItemStraightLine(plot_);
  line->point1->setCoords(0, at);
  line->point2->setCoords(1, at);
  line->setPen(QPen(style == Qt::SolidLine ? p.quiet : p.ink, 1, style));
  auto* text = new QCPItemText(plot_);
  text->position->setTypeX(QCPItemPosition::ptAxisRectRatio);
  text->position->setTypeY(QCPItemPosition::ptPlotCoords);
  text->position->setCoords(1, at);
  text->setPositionAlignment(Qt::AlignRight | (is_below ? Qt::AlignTop : Qt::AlignBottom));
  text->setText(name);
  text->setFont(plot_->font());
  text->setColor(p.quiet);
  text->setPadding(QMargins(0, 0, 4, 0));
  widen(at);
}

void IndividualsPlot::draw() {
  plot_->clearPlottables();
  plot_->clearItems();
  low_ = std::numeric_limits<double>::max();
  high_ = std::numeric_limits<double>::lowest();
  drawPoints();
  drawRuns();
  if (chart_.limits) {
    if (chart_.limits->lower) drawLine(*chart_.limits->lower, tr("lower limit"), Qt::DashLine, true);
    if (chart_.limits->upper) drawLine(*chart_.limits->upper, tr("upper limit"), Qt::DashLine);
  }
  if (chart_.chart) {
    drawLine(chart_.chart->centre, tr("mean"), Qt::SolidLine);
    drawLine(chart_.chart->lower, tr("mean − 3 σ"), Qt::DashDotLine, true);
    drawLine(chart_.chart->upper, tr("mean + 3 σ"), Qt::DashDotLine);
  }
  plot_->xAxis->setLabel(chart_.heading.isEmpty() ? QString()
                                                  : tr("%1: passes in order").arg(chart_.heading));
  plot_->yAxis->setLabel(UnitView::shared().unitText(chart_.unit));
  // Room at the right for the names of the lines.
  const double wide = static_cast<double>(std::max<std::size_t>(chart_.points.size(), 1)) + 1;
  plot_->xAxis->setRange(0, chart_.chart || chart_.limits ? wide * 1.22 : wide);
  if (high_ > low_) plot_->yAxis->setRange(low_ - (high_ - low_) * 0.15, high_ + (high_ - low_) * 0.15);
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

}  // namespace seamtakt::desk
