#pragma once

#include <QDialog>
#include <array>

#include "jobs/fit_job.hpp"

class QCheckBox;
class QComboBox;
class QLabel;
class QDoubleSpinBox;
class QPushButton;

namespace seamtakt::desk {

class GridView;
class FitRows;

/// Settings inside all limits for seams, with what shall stay and the margin to the limits: before and after
/// side by side, conflicts in sentences; the rows that are ticked are taken over as one step of undo.
/// Schedules that are approved, reviewed or used elsewhere stay: the seam gets a draft.
class FitDialog : public QDialog {
  Q_OBJECT

 public:
  /// `seams`: "WELDMENT/SEAM".
  FitDialog(Document& document, std::vector<std::string> seams, QWidget* parent);

  FitJob& job() { return job_; }
  GridView& table() { return *table_; }
  QCheckBox& onlyExisting() { return *only_existing_; }
  QCheckBox& hold(FitHold hold) { return *holds_[static_cast<std::size_t>(hold)]; }
  QDoubleSpinBox& margin() { return *margin_; }
  /// What the fit has to say: conflicts and by how much a limit would have to give way.
  QString said() const;
  /// The plan takes what is shown.
  void take();

 signals:
  void message(const QString& text);

 private:
  QWidget* makeQuestion();
  void ask();
  void showFound(const FoundFitPtr& found);
  void showRows();
  void showTicked();

  Document& document_;
  std::vector<std::string> seams_;
  FoundFitPtr found_;
  FitRows* rows_;
  GridView* table_;
  QComboBox* objective_;
  QCheckBox* only_existing_;
  std::array<QCheckBox*, std::size(fit_holds)> holds_{};
  QDoubleSpinBox* margin_;
  QLabel *state_, *said_;
  QPushButton* take_;
  FitJob job_;
};

}  // namespace seamtakt::desk
