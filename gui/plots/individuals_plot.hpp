#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "plan/plan.hpp"
#include "records/passes/pass_record.hpp"
#include "records/statistics/process_chart.hpp"

class QCPGraph;
class QCustomPlot;

namespace seamtakt::desk {

/// What a chart of individual values shows.
struct IndividualsChart {
  struct Point {
    double value;
    double expanded;  ///< uncertainty (k = 2); 0: not known
    std::optional<Verdict> verdict;
  };
  std::vector<Point> points;
  std::optional<Interval> limits;     ///< the schedule's
  std::optional<ProcessChart> chart;  ///< mean and control limits
  std::vector<RunsSignal> runs;       ///< values that complete a pattern
  QString heading;
  const char* unit = "";
};

/// One logged value a pass, in the order in which they were welded, between the schedule's limits (dashed)
/// and the control limits (dots and dashes) about the mean; each verdict has a shape of its own, and a value
/// that completes a pattern of the runs rules a ring.
class IndividualsPlot : public QWidget {
  Q_OBJECT

 public:
  explicit IndividualsPlot(QWidget* parent = nullptr);
  void setChart(IndividualsChart chart);
  const IndividualsChart& chart() const { return chart_; }
  void restyle();

 private:
  void draw();
  void drawPoints();
  void drawRuns();
  void drawLine(double value, const QString& name, Qt::PenStyle style, bool is_below = false);
  void widen(double shown);

  QCustomPlot* plot_;
  IndividualsChart chart_;
  double low_ = 0, high_ = 0;  ///< of the drawn values, as shown
};

}  // namespace seamtakt::desk
