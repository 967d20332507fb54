#pragma once

#include <QDialog>

#include "jobs/fit_job.hpp"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;

namespace seamtakt::desk {

class GridView;
class ValueModel;

/// Settings inside all limits for seams: before and after side by side, conflicts in sentences, taken over as
/// one step of undo. Schedules that are approved, reviewed or used elsewhere stay: the seam gets a draft.
class FitDialog : public QDialog {
  Q_OBJECT

 public:
  /// `seams`: "WELDMENT/SEAM".
  FitDialog(Document& document, std::vector<std::string> seams, QWidget* parent);

  FitJob& job() { return job_; }
  GridView& table() { return *table_; }
  QCheckBox& onlyExisting() { return *only_existing_; }
  /// What the fit has to say: conflicts and by how much a limit would have to give way.
  QString said() const;
  /// The plan takes what is shown.
  void take();

 signals:
  void message(const QString& text);

 private:
  void ask();
  void showFound(const FoundFitPtr& found);
  void showRows();

  Document& document_;
  std::vector<std::string> seams_;
  FoundFitPtr found_;
  ValueModel* rows_;
  GridView* table_;
  QComboBox* objective_;
  QCheckBox* only_existing_;
  QLabel *state_, *said_;
  QPushButton* take_;
  FitJob job_;
};

}  // namespace seamtakt::desk
