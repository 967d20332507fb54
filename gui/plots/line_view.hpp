#pragma once

#include <QWidget>
#include <memory>

#include "line/line_result.hpp"

namespace seamtakt::desk {

/// The line's day: what each stage's servers did (busy, blocked, starved, stopped, told apart by hatch), and
/// when each unit left against takt.
class LineView : public QWidget {
  Q_OBJECT

 public:
  explicit LineView(QWidget* parent = nullptr);
  void setResult(std::shared_ptr<const LineResult> result);
  /// Of which draw the picture is: "one draw of 200, seed 68"; empty where there is one run alone.
  QString drawText() const;
  QSize minimumSizeHint() const override { return {300, 260}; }

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  void paintStages(QPainter& painter, const QRectF& area) const;
  void paintDepartures(QPainter& painter, const QRectF& area) const;
  std::shared_ptr<const LineResult> result_;
};

}  // namespace seamtakt::desk
