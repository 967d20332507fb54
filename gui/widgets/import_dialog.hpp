#pragma once

#include <QDialog>

#include "jobs/log_import.hpp"

class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace seamtakt::desk {

/// Asks for logs and for the files that say what is in them: a columns file (names, units, job numbers), the
/// units by time, the manual seams.
class ImportDialog : public QDialog {
  Q_OBJECT

 public:
  explicit ImportDialog(const ImportRequest& last, QWidget* parent = nullptr);
  ImportRequest request() const;

 private:
  void chooseLogs();
  QPlainTextEdit* logs_;
  QLineEdit *columns_, *unit_times_, *manual_;
  QPushButton* import_;
};

}  // namespace seamtakt::desk
