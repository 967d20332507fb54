#pragma once

#include <QWidget>

#include "jobs/evaluator.hpp"
#include "models/tables/finding_index.hpp"

class QPushButton;

namespace seamtakt::desk {

class FindingModel;
class GridView;

/// The findings of one link at the foot of its page: folded when empty, a double click or Enter jumps to the
/// field.
class FindingList : public QWidget {
  Q_OBJECT

 public:
  explicit FindingList(Link link, QWidget* parent = nullptr);
  void setFindings(const Plan& plan, const Findings& findings);
  void setFolded(bool folded);
  GridView& view() { return *view_; }
  /// Number of listed findings.
  const Tally& tally() const { return tally_; }

 signals:
  void goTo(const QString& address, const QString& key);

 private:
  void paintHead();
  FindingModel* model_;
  GridView* view_;
  QPushButton* head_;
  Tally tally_;
  bool folded_ = false;
};

}  // namespace seamtakt::desk
