#pragma once

#include <QWidget>
#include <vector>

#include "plan/evaluate/heat_picture.hpp"

class QCPColorMap;
class QCPCurve;
class QCPItemText;
class QCustomPlot;

namespace seamtakt::desk {

/// The surface round the moving arc as a colour map with isotherms that carry their value, and below it what
/// chosen points go through, with the 800 to 500 degree span marked.
class TemperaturePlot : public QWidget {
  Q_OBJECT

 public:
  explicit TemperaturePlot(QWidget* parent = nullptr);
  void setField(const SurfaceField& field);
  void setCycles(const std::vector<ThermalCycle>& cycles);
  void restyle();

 signals:
  /// A click beside the seam: how far from its middle (mm).
  void pointChosen(double aside_mm);
  void readOut(const QString& text);

 private:
  void drawIsotherms(const SurfaceField& field);
  QCustomPlot *map_, *cycles_;
  QCPColorMap* colors_;
  std::vector<QCPCurve*> isotherms_;
  SurfaceField field_;
  std::vector<ThermalCycle> shown_;
};

}  // namespace seamtakt::desk
