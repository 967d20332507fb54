#pragma once

#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <vector>

#include "document/document.hpp"

namespace seamtakt::desk {

/// The recovery file of a desk that ended without saving.
struct Leftover {
  QString file;    ///< the kept plan
  QString origin;  ///< the file it was opened from; empty for a new plan
};

/// Keeps unsaved edits in a file of this session, at most a second after the last one, so that a crash or a
/// kill loses almost nothing. The file is deleted when the plan is saved or the desk closes normally.
class Recovery : public QObject {
  Q_OBJECT

 public:
  Recovery(Document& document, const QString& folder, QObject* parent = nullptr);
  ~Recovery() override;

  /// Plans of sessions that are no longer running.
  std::vector<Leftover> leftovers() const;
  /// Opens a leftover as a changed document. It is deleted once the session has saved it in its own file.
  void recover(const Leftover& leftover);
  void discard(const Leftover& leftover);
  /// Writes the unsaved changes now.
  void keep();

  static QString standardFolder();

 private:
  void drop();
  QString file() const;

  Document& document_;
  QString folder_, session_;
  std::unique_ptr<QLockFile> lock_;
  QTimer timer_;
};

}  // namespace seamtakt::desk
