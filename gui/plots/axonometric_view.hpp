#pragma once

#include <QBrush>
#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "exchange/picture/weldment_scene.hpp"
#include "plots/seam_view.hpp"

class QAction;

namespace seamtakt::desk {

/// Where a robot's torch is.
struct TorchMark {
  QString robot;
  Point_mm at_mm{0, 0, 0};
  bool is_welding = false;
};

/// One weldment in parallel projection: plates and tubes in three tones, a large wall in front translucent,
/// seams as beads on top, their hidden parts thin, stitches as stitches. The chosen seam and those that fail
/// have labels; its plates are tinted. Dragging turns, with Shift or the middle button moves; the wheel
/// zooms; arrow keys turn, plus and minus zoom, 1 to 6 are the six views along the axes, Home is the first
/// view.
class AxonometricView : public QWidget {
  Q_OBJECT

 public:
  explicit AxonometricView(QWidget* parent = nullptr);

  /// What is drawn: nothing where the plan has no such weldment. The same plan and weldment again costs
  /// nothing.
  void setWeldment(const std::shared_ptr<const Plan>& plan, std::size_t weldment);
  /// The weldment's seams, in their order; paths are the plan's.
  void setSeams(std::vector<DrawnSeam> seams);
  void setPicked(int index);
  /// What colours the seams, as in SeamView.
  void setMeaning(const QString& heading, const std::function<QString(double)>& text);
  void setTorches(std::vector<TorchMark> torches);

  ViewAngles angles() const { return angles_; }
  void setAngles(ViewAngles angles);
  double zoomFactor() const { return zoom_; }
  const WeldmentScene& scene() const;
  /// The six views along the axes and the first view, as the context menu has them.
  const QList<QAction*>& viewActions() const { return view_actions_; }
  /// Where a seam's label points to.
  QPointF pointOf(int index) const;
  /// "S49 5.1 of 6 mm" of each label that is shown.
  QStringList labelTexts() const;
  QSize minimumSizeHint() const override { return {220, 160}; }

 signals:
  void picked(int index);

 protected:
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool event(QEvent* event) override;

 private:
  void makeActions();
  const WeldmentFrame& frame() const;
  ViewFit fit() const;
  QPointF at(const ViewFit& fit, const ViewPoint& point) const;
  int seamAt(const QPointF& at) const;
  void zoomAt(double factor, const QPointF& at);
  void turn(double yaw_deg, double pitch_deg);
  bool isTinted(std::uint32_t solid) const;
  QColor colorOf(const DrawnSeam& seam) const;
  std::vector<std::size_t> labelled() const;
  QString labelText(std::size_t seam) const;
  QString titleText() const;
  void paintFaces(QPainter& painter, const ViewFit& fit) const;
  void paintBeads(QPainter& painter, const ViewFit& fit, Sight sight) const;
  void paintLabels(QPainter& painter, const ViewFit& fit) const;
  void paintOrder(QPainter& painter, const ViewFit& fit) const;
  void paintTorches(QPainter& painter, const ViewFit& fit) const;
  void paintAxes(QPainter& painter) const;
  void paintLegend(QPainter& painter) const;

  std::shared_ptr<const Plan> plan_;
  std::size_t weldment_ = 0;
  std::vector<DrawnSeam> seams_;
  std::vector<TorchMark> torches_;
  int picked_ = -1;
  QString heading_;
  std::function<QString(double)> text_;
  ValueClasses values_;
  ViewAngles angles_ = first_view;
  double zoom_ = 1;
  QPointF shift_px_, pressed_px_, last_px_;
  bool is_turning_ = false;
  QList<QAction*> view_actions_;
  // What one direction shows, and lists that a frame fills again.
  mutable WeldmentScene scene_;
  mutable bool is_scene_old_ = false;
  mutable WeldmentFrame frame_;
  mutable bool is_frame_old_ = true;
  mutable std::vector<QPointF> corners_px_;
  mutable std::vector<QLineF> lines_px_;
};

}  // namespace seamtakt::desk
