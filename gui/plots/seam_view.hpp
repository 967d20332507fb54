#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

/// The directions from which the seams are looked at.
enum class Projection { plan, front, side };

/// One seam as it is drawn: its line, and the value that colours it.
struct DrawnSeam {
  QString name, tip;
  std::vector<Point_mm> path_mm;
  std::optional<double> value;
  std::optional<Severity> severity;
  bool is_partly_judged = false;  ///< without a severity: not in order, but partly judged
  bool by_hand = false;
  int order = 0;    ///< place in the welding order, from 1; 0: not said
  QString figures;  ///< of what fails on it: "5.1 of 6 mm"
};

/// The seams' values in classes of equal width.
class ValueClasses {
 public:
  static constexpr int count = 5;

  ValueClasses() = default;
  explicit ValueClasses(const std::vector<DrawnSeam>& seams);
  int classOf(double value) const;
  /// Whether all values are one.
  bool isOne() const { return !(high_ > low_); }
  /// Each class that is in use, with the value up to which it goes; none without values.
  std::vector<std::pair<int, double>> shown() const;

 private:
  bool has_values_ = false;
  double low_ = 0, high_ = 0;
};

/// The heat ramp's colour of a class.
QColor seam_ramp_color(int which);

/// Seams in plan and elevation. Colour and dash both tell the class of the value; the picked seam is thick
/// and named.
class SeamView : public QWidget {
  Q_OBJECT

 public:
  explicit SeamView(QWidget* parent = nullptr);

  void setSeams(std::vector<DrawnSeam> seams);
  void setPicked(int index);
  void setProjection(Projection projection);
  Projection projection() const { return projection_; }
  /// What colours the seams: "" is the state, else the heading of the value, with the text of a number.
  void setMeaning(const QString& heading, const std::function<QString(double)>& text);
  QPointF pointOf(int index) const;
  QSize minimumSizeHint() const override { return {220, 160}; }

 signals:
  void picked(int index);

 protected:
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent* event) override;
  bool event(QEvent* event) override;

 private:
  struct Frame;
  Frame frame() const;
  int seamAt(const QPointF& at) const;
  QPen penOf(const DrawnSeam& seam, bool is_picked) const;
  void paintLegend(QPainter& painter) const;
  void paintAxes(QPainter& painter) const;

  std::vector<DrawnSeam> seams_;
  int picked_ = -1;
  Projection projection_ = Projection::plan;
  QString heading_;
  std::function<QString(double)> text_;
  ValueClasses values_;
};

}  // namespace seamtakt::desk
