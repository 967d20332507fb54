#pragma once

#include <QObject>

#include "jobs/writing_job.hpp"
#include "records/keep/record_browse.hpp"

class QWidget;

namespace seamtakt::desk {

class RecordForm;

/// The forms by which a person writes into a store: each opens over `window` and writes what the command of
/// the same name writes.
class RecordForms : public QObject {
  Q_OBJECT

 public:
  explicit RecordForms(QWidget* window);

  void dispose(const QString& uri, const BrowsedRecord& record);
  void correct(const QString& uri, const BrowsedRecord& record);
  void signOff(const QString& uri, const BrowsedRecord& record);
  void note(const QString& uri, const BrowsedRecord* record);
  void calibrate(const QString& uri);

  WritingJob& job() { return job_; }

 signals:
  void written(const QString& text);

 private:
  RecordForm* makeForm(const QString& title, const BrowsedRecord* record);
  void open(RecordForm* form);
  void disposeFailed(const QString& uri, const BrowsedRecord& record);
  void disposeUndecided(const QString& uri, const BrowsedRecord& record);

  QWidget* window_;
  RecordForm* open_ = nullptr;  ///< the one that waits for its record
  WritingJob job_;
};

}  // namespace seamtakt::desk
