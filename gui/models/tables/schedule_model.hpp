#pragma once

#include "document/document.hpp"
#include "jobs/evaluator.hpp"
#include "models/tables/finding_index.hpp"
#include "models/tables/grid_model.hpp"

namespace seamtakt::desk {

/// Schedules as a table, edited in place, with the number of passes that use each.
class ScheduleModel : public GridModel {
  Q_OBJECT

 public:
  explicit ScheduleModel(Document& document, QObject* parent = nullptr);
  void setResults(const ResultsPtr& results);
  int rowCount(const QModelIndex& parent = {}) const override;
  /// A draft like the last schedule.
  std::string appendRow(Plan& plan) const override;
  /// Worst findings on the schedule, on its qualification and on the passes welded by it.
  RowState rowState(int row) const;

 protected:
  QString cellText(int row, int column) const override;
  std::optional<double> cellNumber(int row, int column) const override;
  QString rowAddress(int row) const override;
  QString cellPlace(int row, int column) const override;
  std::optional<Severity> rowSeverity(int row) const override;
  std::optional<Severity> rowBeyond(int row) const override;
  bool rowPartlyJudged(int row) const override;

 private:
  void rebuild();
  const Schedule& schedule(int row) const { return plan_->schedules[static_cast<std::size_t>(row)]; }

  Document& document_;
  PlanPtr plan_;
  std::vector<int> uses_;
  std::map<std::string, RowState> states_;  ///< by schedule: its own findings and those of its passes
  bool judged_ = false;
};

}  // namespace seamtakt::desk
