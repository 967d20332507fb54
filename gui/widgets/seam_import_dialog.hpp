#pragma once

#include <QDialog>

#include "jobs/list_reading.hpp"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QTableWidget;

namespace seamtakt::desk {

/// Shows how a list of seams or schedules is read (which column as what, in which unit), what it would change
/// and which cells it refuses; a person may choose other columns. Importing is possible where nothing is
/// refused, or where the refused rows are left out on purpose. Headings that were chosen are remembered.
class SeamImportDialog : public QDialog {
  Q_OBJECT

 public:
  SeamImportDialog(const PlanPtr& plan, const QString& path, QWidget* parent = nullptr);

  /// What was read last; nullptr where nothing could be read yet.
  const ReadListPtr& list() const { return list_; }
  ListReading& reading() { return reading_; }

 private:
  void makeChoices(const QString& path);
  void makeTables();
  void makeButtons();
  /// Reads again: by the heads, or with the columns as they are now.
  void read(bool by_heads);
  void showList(const ReadListPtr& list);
  void showFailure(const QString& reason);
  void showMapping();
  void showRows();
  void mapColumn(int row, const QString& key, const Unit* unit);
  void remember() const;
  void accept() override;
  ListKind kind() const;
  ListColumnsFile remembered() const;
  QComboBox* keyChoice(int row);
  QComboBox* unitChoice(int row);

  PlanPtr plan_;
  QString path_;
  ReadListPtr list_;
  std::optional<ListMapping> mapping_;  ///< as a person changed it
  QComboBox *kind_, *weldment_, *metal_;
  QTableWidget *columns_, *rows_;
  QLabel *counts_, *notes_;
  QCheckBox* skip_;
  QPushButton* import_;
  ListReading reading_;
};

}  // namespace seamtakt::desk
