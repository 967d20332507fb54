#include "plots/individuals_plot.hpp"

#include <qcustomplot.h>

#include <QVBoxLayout>
#include <algorithm>

#include "models/palette.hpp"
#include "models/unit_view.hpp"
#include "plots/plot_style.hpp"

namespace seamtakt::desk {

IndividualsPlot::IndividualsPlot(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Heat input pass by pass"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  plot_ = new QCustomPlot(this);
  plot_->setFocusPolicy(Qt::NoFocus);
  plot_->setAccessibleName(tr("Heat input pass by pass"));
  column->addWidget(plot_);
  restyle();
}

void IndividualsPlot::restyle() {
  style_plot(*plot_);
  setPoints(points_, limits_, heading_, unit_);
}

void IndividualsPlot::setPoints(std::vector<Point> points, const std::optional<Interval>& limits,
                                const QString& heading, const char* unit) {
  points_ = std::move(points);
  limits_ = limits;
  heading_ = heading;
  unit_ = unit;
  const Palette& p = Palette::current();
  const UnitView& units = UnitView::shared();
  plot_->clearPlottables();
  plot_->clearItems();
  struct Kind {
    std::optional<Verdict> verdict;
    QColor color;
    QCPScatterStyle::ScatterShape shape;
  };
  const Kind kinds[] = {{Verdict::pass, p.ok, QCPScatterStyle::ssDisc},
                        {Verdict::fail, p.fail, QCPScatterStyle::ssCrossSquare},
                        {Verdict::undecided, p.warn, QCPScatterStyle::ssTriangle},
                        {std::nullopt, p.quiet, QCPScatterStyle::ssCircle}};
  double low = 1e300, high = -1e300;
  for (const Kind& kind : kinds) {
    QVector<double> x, y, u;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      if (points_[i].verdict != kind.verdict) continue;
      x.push_back(static_cast<double>(i + 1));
      y.push_back(units.toShown(points_[i].value, unit));
      u.push_back(units.toShown(points_[i].expanded, unit));
      low = std::min(low, y.back() - u.back());
      high = std::max(high, y.back() + u.back());
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
    bars->setPen(QPen(p.quiet, 1));
    bars->setWhiskerWidth(4);
  }
  for (const auto& bound : {limits ? limits->lower : std::nullopt, limits ? limits->upper : std::nullopt})
    if (bound) {
      auto* line = new QCPItemStraightLine(plot_);
      const double at = units.toShown(*bound, unit);
      line->point1->setCoords(0, at);
      line->point2->setCoords(1, at);
      line->setPen(QPen(p.ink, 1, Qt::DashLine));
      low = std::min(low, at);
      high = std::max(high, at);
    }
  plot_->xAxis->setLabel(heading_.isEmpty() ? QString() : tr("%1: passes in order").arg(heading_));
  plot_->yAxis->setLabel(units.unitText(unit));
  plot_->xAxis->setRange(0, static_cast<double>(std::max<std::size_t>(points_.size(), 1)) + 1);
  if (high > low) plot_->yAxis->setRange(low - (high - low) * 0.15, high + (high - low) * 0.15);
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

}  // namespace seamtakt::desk
