#pragma once

#include <QDialog>

#include "models/tables/pasted_range.hpp"

class QListWidget;
class QPushButton;

namespace seamtakt::desk {

/// The preview of a paste: how many rows and cells would change, which are refused and why. It is taken whole
/// or not at all: with a refused cell there is no button for it.
class PasteDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PasteDialog(const PastedRange& range, QWidget* parent = nullptr);
  QListWidget& lines() { return *lines_; }
  /// "Rows: 3. Cells: 5. New rows: 1. Refused: 2. ..."
  static QString summary(const PastedRange& range);

 private:
  QListWidget* lines_;
};

}  // namespace seamtakt::desk
