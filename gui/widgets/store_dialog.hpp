#pragma once

#include <QDialog>

#include "jobs/store_job.hpp"

class QLineEdit;

namespace seamtakt::desk {

/// Asks for a record store, a file or a server, and for the anchors that it is checked against.
class StoreDialog : public QDialog {
  Q_OBJECT

 public:
  explicit StoreDialog(const StoreQuestion& last, QWidget* parent = nullptr);
  StoreQuestion question() const;

 private:
  QLineEdit *store_, *anchors_;
};

/// The store at a plain path.
QString store_uri(const QString& text);

}  // namespace seamtakt::desk
