#pragma once

#include "jobs/log_import.hpp"
#include "pages/page.hpp"

class QLabel;
class QProgressBar;
class QPushButton;
class QTabWidget;

namespace seamtakt::desk {

class GridView;
class IndividualsPlot;
class ActualPanel;
class RecordBrowser;
struct StoreReportQuestion;
class StorePanel;
class TraceView;
class ValueModel;

/// Records: logs are imported and judged; verdicts by unit, passes, the trace of a pass between its limits,
/// control charts and capability; a record store is verified and its units looked at.
class RecordsPage : public Page {
  Q_OBJECT

 public:
  explicit RecordsPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;

  void importLogs(const ImportRequest& request);
  void importLogs(const QStringList& paths, const QString& manual_csv = {});
  LogImport& job() { return import_; }
  const ImportedLogsPtr& logs() const { return logs_; }
  GridView& units() { return *unit_table_; }
  GridView& passes() { return *pass_table_; }
  GridView& statistics() { return *statistics_table_; }
  TraceView& trace() { return *trace_; }
  IndividualsPlot& chart() { return *individuals_; }
  StorePanel& store() { return *store_; }
  RecordBrowser& browser() { return *browser_; }
  ActualPanel& actual() { return *actual_; }
  QTabWidget& tabs() { return *tabs_; }

  /// For the chain: "41 of 44 complete".
  QString figure() const;
  QString figureDetail() const;
  std::optional<Severity> worst() const;

  /// A unit's certificate, of the one chosen in the store; says so where none is.
  void askCertificate();

 signals:
  void figureChanged();
  /// A unit's report from the store is asked for.
  void unitReportAsked(const QString& uri, const QString& unit);
  /// Another report from the store is asked for.
  void storeReportAsked(const seamtakt::desk::StoreReportQuestion& question);

 protected:
  /// A logged number is explained by its record.
  void explainCell(GridView* table, const QString& place, const QString& key) override;

 private:
  void makeTools();
  QWidget* makeWhat();
  QWidget* makeWhy();
  void show(const ImportedLogsPtr& logs);
  /// Another plan: logs judged by the previous plan are removed.
  void dropLogs();
  void showPasses();
  void showTrace(int row);
  /// The control chart of a quantity of a schedule's passes.
  void showChart();
  void working(bool is_working);
  /// Asks for the logs and for the files that describe them.
  void askWhatToImport();
  Findings recordFindings() const;

  LogImport import_;
  ImportRequest last_request_;
  ImportedLogsPtr logs_;
  ValueModel *units_, *passes_, *statistics_;
  GridView *unit_table_, *pass_table_, *statistics_table_;
  QTabWidget* tabs_;
  StorePanel* store_;
  RecordBrowser* browser_;
  ActualPanel* actual_;
  TraceView* trace_;
  IndividualsPlot* individuals_;
  QLabel *summary_, *read_out_;
  QProgressBar* progress_;
  QPushButton *import_button_, *with_button_, *demo_button_, *cancel_button_;
  std::string chart_schedule_, chart_quantity_ = "heat_input_kJ_mm";
  std::vector<std::size_t> shown_;  ///< passes shown, as indices of the audit's
};

}  // namespace seamtakt::desk
