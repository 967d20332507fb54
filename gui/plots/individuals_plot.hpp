#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "plan/plan.hpp"
#include "records/pass_record.hpp"

class QCustomPlot;

namespace seamtakt::desk {

/// One logged value a pass, in the order in which they were welded, between its limits; each verdict has a
/// shape of its own.
class IndividualsPlot : public QWidget {
  Q_OBJECT

 public:
  explicit IndividualsPlot(QWidget* parent = nullptr);
  struct Point {
    double value;
    double expanded;  ///< uncertainty (k = 2); 0: not known
    std::optional<Verdict> verdict;
  };
  void setPoints(std::vector<Point> points, const std::optional<Interval>& limits, const QString& heading,
                 const char* unit);
  void restyle();

 private:
  QCustomPlot* plot_;
  std::vector<Point> points_;
  std::optional<Interval> limits_;
  QString heading_;
  const char* unit_ = "";
};

}  // namespace seamtakt::desk
