#pragma once

#include <QDialog>

#include "jobs/drawing_reading.hpp"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QTableWidget;

namespace seamtakt::desk {

class AxonometricView;

/// A drawing before it is imported: its picture and the sides of its joints beside each other, and what the
/// drawing can't say. A side that lacks something stays in the list with what it lacks, and isn't taken.
class DrawingDialog : public QDialog {
  Q_OBJECT

 public:
  /// `path`: the file. `kept_path`: as the plan keeps it.
  DrawingDialog(const PlanPtr& plan, const QString& path, const QString& kept_path, QWidget* parent);

  DrawingReading& reading() { return reading_; }
  AxonometricView& picture() { return *picture_; }
  QTableWidget& sides() { return *sides_; }
  /// What is taken; nullptr while nothing is to be.
  ReadDrawingPtr drawing() const { return drawing_; }

 private:
  void makeChoices();
  void makePicture();
  void makeButtons();
  const DrawingFile* fileBefore() const;
  QString startingWeldment() const;
  void fillIn();
  void ask();
  std::optional<DrawingImportOptions> options(QString& refusal) const;
  void showReading(const ProgramReadingPtr& reading);
  void showDrawing(const ReadDrawingPtr& drawing);
  void showFailure(const QString& reason);
  void showSides();
  void showSeams();
  void showCounts();
  void chooseSide(int row);

  PlanPtr plan_;
  QString path_, kept_path_;
  ProgramReadingPtr reading_of_file_;
  ReadDrawingPtr drawing_;
  std::map<std::pair<std::string, std::string>, bool> choices_;
  QFormLayout* form_ = nullptr;
  QComboBox *up_ = nullptr, *metal_ = nullptr, *schedule_ = nullptr, *weldment_ = nullptr;
  QLineEdit *thickness_ = nullptr, *throat_ = nullptr, *leg_ = nullptr;
  QCheckBox *butts_ = nullptr, *by_use_ = nullptr;
  AxonometricView* picture_ = nullptr;
  QTableWidget* sides_ = nullptr;
  QLabel *counts_ = nullptr, *notes_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QPushButton* import_ = nullptr;
  bool is_filling_ = false;
  DrawingReading reading_;
};

}  // namespace seamtakt::desk
