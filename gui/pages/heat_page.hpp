#pragma once

#include <QTimer>

#include "pages/page.hpp"

class QLabel;
class QLineEdit;
class QTabWidget;

namespace seamtakt::desk {

class GridView;
class TemperaturePlot;
class ValueModel;
class WindowPanel;

/// Heat and cooling: every pass's figures, the operating window of its schedule, and the temperatures round
/// its arc.
class HeatPage : public Page {
  Q_OBJECT

 public:
  explicit HeatPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  void opened() override;
  GridView& table() { return *table_; }
  WindowPanel& window() { return *window_; }
  TemperaturePlot& temperature() { return *temperature_; }
  QTabWidget& views() { return *views_; }

 private:
  void showFirstStep();
  const PassEvaluation* pass() const;
  void fillTable();
  void follow();
  void choosePass(int row);
  void drawTemperature();
  void drawNow();
  static QString modelText(const PassEvaluation& pass, double thickness_mm);

  ValueModel* passes_;
  GridView* table_;
  QTabWidget* views_;
  WindowPanel* window_;
  TemperaturePlot* temperature_;
  QLabel* model_;  ///< what the map and the curves are computed by, beside the table's t8/5
  QLineEdit* distances_;
  QLabel* read_out_;
  QTimer draw_later_;
  int pass_ = 1;
};

}  // namespace seamtakt::desk
