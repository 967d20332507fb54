#pragma once

#include "pages/page.hpp"

class QCheckBox;
class QComboBox;
class QLineEdit;
class QLabel;
class QPushButton;

namespace seamtakt::desk {

class FindingModel;
class GridView;

/// All findings: filtered, gone to, accepted with a reason.
class FindingsPage : public Page {
  Q_OBJECT

 public:
  explicit FindingsPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  GridView& table() { return *table_; }
  /// Accepts the chosen finding with the reason and name entered in their fields.
  void accept();
  /// Puts the cursor on the first finding at a place or within it.
  void chooseAt(const QString& place);

 private:
  QWidget* makeDetail();
  void makeTools();
  void showFirstStep();
  void filter();
  void showFinding(int row);
  void openRow(int row);
  void group(bool grouped);

  FindingModel* model_;
  GridView* table_;
  QComboBox* severity_;
  QCheckBox* grouped_;
  QLineEdit *words_, *reason_, *by_;
  QLabel *text_, *figures_, *source_, *refusal_;
  QPushButton *accept_, *jump_;
};

}  // namespace seamtakt::desk
