#pragma once

#include <QWidget>

#include "jobs/browse_job.hpp"
#include "jobs/store_report.hpp"

class QLabel;
class QLineEdit;
class QPushButton;

namespace seamtakt::desk {

class GridView;
class RecordForms;
class ValueModel;

/// Stored passes and manual seams, looked for by serial number, welder, lot, robot, schedule and day, a page
/// at a time; what a person writes about them, and the reports of what was looked for.
class RecordBrowser : public QWidget {
  Q_OBJECT

 public:
  explicit RecordBrowser(QWidget* parent = nullptr);

  /// Another store: nothing of the one before stays.
  void setStore(const QString& uri);
  void look();
  BrowseJob& job() { return job_; }
  RecordForms& forms() { return *forms_; }
  GridView& table() { return *table_; }
  const BrowseAnswerPtr& answer() const { return answer_; }
  /// The record in the current row; nullptr where there is none.
  const BrowsedRecord* chosen() const;

 signals:
  void message(const QString& text);
  /// A form has written a record.
  void written();
  void reportAsked(const seamtakt::desk::StoreReportQuestion& question);

 private:
  void makeFilter();
  void makeButtons();
  void lookFrom(std::uint64_t first);
  void show(const BrowseAnswerPtr& answer);
  void enable();
  void askReport(StoreReportQuestion::Kind kind, bool of_seam);

  BrowseJob job_;
  QString uri_;
  BrowseAnswerPtr answer_;
  ValueModel* rows_;
  RecordForms* forms_;
  GridView* table_;
  QLineEdit *unit_, *welder_, *lot_, *robot_, *schedule_, *from_, *to_;
  QPushButton *look_, *more_, *dispose_, *correct_, *sign_, *note_, *calibrate_, *shift_, *seam_,
      *certificate_;
  QLabel* said_;
};

}  // namespace seamtakt::desk
