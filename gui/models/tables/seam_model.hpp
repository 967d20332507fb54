#pragma once

#include <vector>

#include "document/document.hpp"
#include "document/plan_address.hpp"
#include "jobs/evaluator.hpp"
#include "models/tables/finding_index.hpp"
#include "models/tables/grid_model.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt::desk {

/// Seams as a table: drawn values, edited in place, and derived values.
class SeamModel : public GridModel {
  Q_OBJECT

 public:
  explicit SeamModel(Document& document, QObject* parent = nullptr);

  /// Shows one weldment's seams, or all (-1).
  void setWeldment(int weldment);
  int weldment() const { return weldment_; }
  void setResults(const ResultsPtr& results);

  int rowCount(const QModelIndex& parent = {}) const override;
  /// A seam of the weldment that is shown; of the last one where all are.
  std::string appendRow(Plan& plan) const override;

  const SeamPlace& place(int row) const { return rows_[static_cast<std::size_t>(row)]; }
  int rowOf(const SeamPlace& place) const;
  const Seam& seam(int row) const;
  const Weldment& weldmentOf(int row) const;
  /// Derived values of a seam; nullptr while they aren't known.
  const SeamEvaluation* evaluation(int row) const;
  /// Worst findings on the seam and its passes.
  RowState rowState(int row) const;

 protected:
  QString cellText(int row, int column) const override;
  std::optional<double> cellNumber(int row, int column) const override;
  QString rowAddress(int row) const override;
  QString cellPlace(int row, int column) const override;
  std::optional<Severity> rowSeverity(int row) const override;
  std::optional<Severity> rowBeyond(int row) const override;
  bool rowPartlyJudged(int row) const override;
  const Plan* plan() const override { return plan_.get(); }

 private:
  void rebuild();
  ColumnValue derived(int row, int column) const;
  QString wordShown(int row, int column) const;
  const PassEvaluation* firstPass(const SeamEvaluation& of_seam) const;
  /// Whether one of the seam's passes is.
  bool isPartlyJudged(int row) const;

  Document& document_;
  PlanPtr plan_;
  ResultsPtr results_;
  FindingIndex findings_;
  int weldment_ = -1;
  std::vector<SeamPlace> rows_;
  std::vector<std::size_t> first_seam_;  ///< index into Evaluation::seams of each weldment's first seam
  std::vector<std::size_t> first_pass_;  ///< index into Evaluation::passes of each seam's first pass, by seam
};

}  // namespace seamtakt::desk
