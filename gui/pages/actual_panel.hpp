#pragma once

#include <QWidget>

#include "jobs/log_import.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

class GridView;

/// Imported units beside their planned cycles: the units, and below them the arcs and gaps of the chosen one.
class ActualPanel : public QWidget {
  Q_OBJECT

 public:
  explicit ActualPanel(QWidget* parent = nullptr);

  /// nullptr: none are imported.
  void setLogs(const ImportedLogsPtr& logs);
  GridView& units() { return *unit_table_; }
  GridView& steps() { return *step_table_; }

 private:
  void showSteps(int unit);

  ImportedLogsPtr logs_;
  ValueModel *units_, *steps_;
  GridView *unit_table_, *step_table_;
};

}  // namespace seamtakt::desk
