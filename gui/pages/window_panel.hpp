#pragma once

#include <QWidget>

#include "pages/page.hpp"

class QComboBox;
class QLabel;

namespace seamtakt::desk {

class WindowPlot;

/// The operating window of one schedule on one seam, with the working point to drag.
class WindowPanel : public QWidget {
  Q_OBJECT

 public:
  WindowPanel(const Desk& desk, QWidget* parent);
  void setPass(const std::string& weldment, const std::string& seam, const std::string& schedule);
  void setResults(const ResultsPtr& results);
  void restyle();
  WindowPlot& plot() { return *plot_; }

 signals:
  void message(const QString& text);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void compute();
  void describe();
  void move(double wire_feed_speed_m_min, double travel_speed_mm_s, bool last);

  Desk desk_;
  std::string weldment_, seam_, schedule_;
  PlanPtr drawn_;
  bool dragging_ = false;
  QComboBox* value_;
  QLabel *read_out_, *limits_;
  WindowPlot* plot_;
};

}  // namespace seamtakt::desk
