#pragma once

#include <QDialog>
#include <vector>

class QCheckBox;
class QListWidget;

namespace seamtakt::desk {

/// Offers a new revision where an edit would change a reviewed or approved schedule, and lists the seams that
/// are welded by it: those that are ticked move to the draft. None is ticked to begin with.
class RevisionDialog : public QDialog {
  Q_OBJECT

 public:
  /// `seams`: one line for each seam. Texts are shown as they are.
  RevisionDialog(const QString& text, const QStringList& seams, QWidget* parent = nullptr);
  /// Whether the seam of each line is ticked.
  std::vector<bool> ticked() const;
  QListWidget& seams() { return *seams_; }

 private:
  void tickAll(bool ticked);
  QListWidget* seams_;
  QCheckBox* all_;
};

}  // namespace seamtakt::desk
