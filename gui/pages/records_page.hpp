#pragma once

#include "jobs/log_import.hpp"
#include "pages/page.hpp"

class QLabel;
class QProgressBar;
class QPushButton;

namespace seamtakt::desk {

class GridView;
class IndividualsPlot;
class TraceView;
class ValueModel;

/// Records: logs are imported and judged; verdicts by unit, passes, the trace of a pass between its limits.
class RecordsPage : public Page {
  Q_OBJECT

 public:
  explicit RecordsPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;

  void importLogs(const QStringList& paths, const QString& manual_csv = {});
  LogImport& job() { return import_; }
  const ImportedLogsPtr& logs() const { return logs_; }
  GridView& units() { return *unit_table_; }
  GridView& passes() { return *pass_table_; }
  TraceView& trace() { return *trace_; }

  /// For the chain: "41 of 44 complete".
  QString figure() const;
  QString figureDetail() const;
  std::optional<Severity> worst() const;

 signals:
  void figureChanged();

 private:
  void makeTools();
  QWidget* makeWhat();
  QWidget* makeWhy();
  void show(const ImportedLogsPtr& logs);
  void showPasses();
  void showTrace(int row);
  void working(bool is_working);
  Findings recordFindings() const;

  LogImport import_;
  ImportedLogsPtr logs_;
  ValueModel *units_, *passes_;
  GridView *unit_table_, *pass_table_;
  TraceView* trace_;
  IndividualsPlot* individuals_;
  QLabel *summary_, *read_out_;
  QProgressBar* progress_;
  QPushButton *import_button_, *manual_button_, *demo_button_, *cancel_button_;
  std::vector<std::size_t> shown_;  ///< passes shown, as indices of the audit's
};

}  // namespace seamtakt::desk
