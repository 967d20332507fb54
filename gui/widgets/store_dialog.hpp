#pragma once

#include <QDialog>

#include "jobs/store_job.hpp"

class QLineEdit;

namespace seamtakt::desk {

/// Asks for a record store, a file or a server, and for the anchors that it is held against.
class StoreDialog : public QDialog {
  Q_OBJECT

 public:
  explicit StoreDialog(const StoreQuestion& last, QWidget* parent = nullptr);
  StoreQuestion question() const;

 private:
  QLineEdit* makeLine(const QString& name, const QString& hint, const QString& filter, bool is_store);
  QLineEdit *store_, *anchors_;
};

/// A plain path as the store that lies there.
QString store_uri(const QString& text);

}  // namespace seamtakt::desk
