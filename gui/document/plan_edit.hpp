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

  void undo() override {
    // A step that is taken back is removed: it can't be redone.
    setObsolete(document_.takes_back_);
    document_.setPlan(before_);
  }
  void redo() override { document_.setPlan(after_); }
  int id() const override { return merge_key_.empty() ? -1 : 1; }
  bool mergeWith(const QUndoCommand* later) override {
    const auto& other = static_cast<const PlanEdit&>(*later);
    if (other.merge_key_ != merge_key_) return false;
    after_ = other.after_;
    return true;
  }

  /// Whether an edit with this key extends the entry that the step holds.
  bool isEntry(const std::string& merge_key) const { return !merge_key.empty() && merge_key == merge_key_; }
  /// The plan before the entry began.
  const PlanPtr& before() const { return before_; }

 private:
  /// The text for lists, and after the line's end the one for the menu, where '&' would make a shortcut.
  static QString texts(QString what) {
    what.replace('\n', ' ');
    return what + '\n' + QString(what).replace('&', QStringLiteral("&&"));
  }

  Document& document_;
  std::string merge_key_;
  PlanPtr before_, after_;
};

}  // namespace seamtakt::desk
