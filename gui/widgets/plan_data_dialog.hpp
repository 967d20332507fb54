#pragma once

#include <QDialog>

#include "document/document.hpp"

class QLabel;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;

namespace seamtakt::desk {

class FieldForm;

/// What pages have no room for: metals, wires, gases, power sources, qualifications, instruments, the cell,
/// the line, costs. A tree of them, and the form of the chosen one.
class PlanDataDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PlanDataDialog(Document& document, QWidget* parent = nullptr);
  QTreeWidget& tree() { return *tree_; }
  FieldForm& form() { return *form_; }

 private:
  void fill();
  void choose();
  void duplicate();
  void remove();
  std::string chosen() const;

  Document& document_;
  QTreeWidget* tree_;
  FieldForm* form_;
  QLabel* refusal_;
  QPushButton *duplicate_, *remove_;
  std::string shown_;  ///< all pointers and ids in the tree: refilled only when they change
};

}  // namespace seamtakt::desk
