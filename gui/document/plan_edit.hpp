#pragma once

#include <QUndoCommand>

#include "document/document.hpp"

namespace seamtakt::desk {

/// One step of undo: from one whole plan to another.
class PlanEdit : public QUndoCommand {
 public:
  PlanEdit(Document& document, const QString& what, std::string merge_key, PlanPtr before, PlanPtr after)
      : QUndoCommand(texts(what)),
        document_(document),
        merge_key_(std::move(merge_key)),
        before_(std::move(before)),
        after_(std::move(after)) {}

  void undo() override { document_.setPlan(before_); }
  void redo() override { document_.setPlan(after_); }
  int id() const override { return merge_key_.empty() ? -1 : 1; }
  bool mergeWith(const QUndoCommand* later) override {
    const auto& other = static_cast<const PlanEdit&>(*later);
    if (other.merge_key_ != merge_key_) return false;
    after_ = other.after_;
    return true;
  }

 private:
  /// The text for lists, and behind the line's end the one for the menu, where '&' would make a shortcut.
  static QString texts(QString what) {
    what.replace('\n', ' ');
    return what + '\n' + QString(what).replace('&', QStringLiteral("&&"));
  }

  Document& document_;
  std::string merge_key_;
  PlanPtr before_, after_;
};

}  // namespace seamtakt::desk
