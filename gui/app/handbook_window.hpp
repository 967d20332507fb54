#pragma once

#include <QDialog>

class QTextBrowser;

namespace seamtakt::desk {

/// The installed handbook, or the build folder's, in the language of the desk, without a browser or a
/// network.
class HandbookWindow : public QDialog {
  Q_OBJECT

 public:
  explicit HandbookWindow(QWidget* parent = nullptr);
  /// Opens it, or says where it was looked for.
  static HandbookWindow* open(QWidget* parent);
  /// The first page in this language; empty where there is none.
  static QString firstPage(const QString& language);
  QTextBrowser& browser() { return *browser_; }

 private:
  QTextBrowser* browser_;
};

}  // namespace seamtakt::desk
