#pragma once

#include "jobs/line_job.hpp"
#include "pages/page.hpp"

class QCheckBox;
class QLabel;
class QTabWidget;

namespace seamtakt::desk {

class FieldForm;
class GridView;
class LineView;
class ValueModel;

/// The line: takt and stages as drafted, and the result of a day's orders.
class LinePage : public Page {
  Q_OBJECT

 public:
  explicit LinePage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  void opened() override { ask(); }

  void readOrders(const QString& path);
  LineJob& job() { return job_; }
  const LineResultPtr& line() const { return line_; }
  GridView& units() { return *unit_table_; }
  const QLabel& summary() const { return *summary_; }

  /// For the chain.
  QString figure() const;
  QString figureDetail() const;
  std::optional<Severity> worst() const;

 signals:
  void figureChanged();

 private:
  void makeTools();
  QWidget* makeWhat();
  QWidget* makeWhy();
  void refresh();
  /// Another plan: the old result of the orders isn't this plan's.
  void drop();
  void ask();
  void show(const LineResultPtr& line);
  static QString headlineOf(const LineResult& line);
  static QString drawOf(const LineResult& line);

  LineJob job_;
  LineQuestion question_;
  LineResultPtr line_;
  FieldForm *takt_, *stage_;
  ValueModel *stages_, *units_, *cures_;
  GridView *stage_table_, *unit_table_, *cure_table_;
  LineView* picture_;
  QTabWidget* tables_;
  QCheckBox* level_;
  QLabel* summary_;
};

}  // namespace seamtakt::desk
