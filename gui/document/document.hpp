#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <functional>
#include <memory>
#include <optional>

#include "document/revision.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

using PlanPtr = std::shared_ptr<const Plan>;

/// Why an edit was refused: the field it is about and one line for the person who typed.
struct Refusal {
  std::string pointer;
  QString text;
  bool locked = false;  ///< it would change what is reviewed or approved
};

/// Called when an edit would change something reviewed or approved (see LockedChange). It isn't made
/// unless a person first withdraws the approval.
enum class WhenLocked {
  offer,     ///< refused, and lockedEdit tells what was asked for
  refuse,    ///< refused: an entry that isn't at its end yet
  withdraw,  ///< made: what was locked is released by it
};

class PlanEdit;

/// The plan on the desk, its file, and the only way to change it. Each edit is an undo command from one
/// complete, checked plan to the next; edits of one field while typing merge.
class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(QObject* parent = nullptr);

  const PlanPtr& plan() const { return plan_; }
  bool isEmpty() const { return plan_->weldments.empty() && plan_->schedules.empty(); }
  const QString& path() const { return path_; }
  /// File name for titles; a word for a plan that was never saved.
  QString name() const;
  QUndoStack& undo() { return undo_; }
  bool isModified() const { return !undo_.isClean() || recovered_; }

  /// Errors: InputError for what the file holds, std::system_error for the machine's failures.
  void open(const QString& path);
  /// Opens a plan that isn't in a file yet. `recovered`: it counts as changed, and `path` is where
  /// it came from.
  void start(Plan plan, const QString& path = {}, bool recovered = false);
  /// A plan that comes from the program itself; saving asks for a name.
  void openCopy(const QString& path);

  /// Saves atomically and keeps the file before as NAME~. InputError where the file on disk was changed by
  /// someone else since it was read, unless `overwrite`.
  void save(bool overwrite = false);
  void saveAs(const QString& path);
  bool isChangedOnDisk() const { return changed_on_disk_; }

  /// Changes a copy of the plan, checks it and makes it the plan. `merge_key`: edits with the same key that
  /// follow one another are one entry, undone as one; empty: an entry of its own. An entry is taken whole or
  /// not at all: where one of its edits is refused, the plan is what it was before the first.
  std::optional<Refusal> edit(const QString& what, const std::string& merge_key,
                              const std::function<void(Plan&)>& change,
                              WhenLocked when_locked = WhenLocked::offer);
  std::optional<Refusal> setField(const std::string& pointer, const std::string& key, const std::string& text,
                                  WhenLocked when_locked = WhenLocked::offer);
  /// The next edit of the same field begins a new undo step.
  void endTyping() { ++typing_; }
  /// Drops the entry with this key if it is the last step and hasn't ended: the plan is what it was before.
  void takeBack(const std::string& merge_key);

 signals:
  void planChanged();
  /// Another plan was opened: the old selection is meaningless.
  void replaced();
  void fileChanged();
  void changedOnDisk();
  /// An edit was refused because of a lock: a person chooses what to do instead.
  void lockedEdit(const LockedEdit& edit);

 private:
  friend class PlanEdit;
  void setPlan(PlanPtr plan);
  void put(Plan plan, const QString& path, const std::string& sha256, bool recovered);
  void write(const QString& path, const std::string& expected_sha256);
  void watch();
  void lookAtFile();
  std::string entryKey(const std::string& merge_key) const;
  const PlanEdit* entry(const std::string& key) const;
  std::optional<Refusal> refuseLocked(const LockedEdit& asked, WhenLocked when_locked);

  PlanPtr plan_;
  QString path_;
  std::string sha256_;  ///< of the file as read or last saved
  bool recovered_ = false, changed_on_disk_ = false, takes_back_ = false;
  QUndoStack undo_;
  QFileSystemWatcher watcher_;
  unsigned typing_ = 0;
};

/// The plan that "New plan" starts from: one metal, wire and gas of the reference tables and one draft
/// schedule, so that a first seam can be drawn at once.
Plan starting_plan();

}  // namespace seamtakt::desk
