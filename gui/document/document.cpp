#include "document/document.hpp"
#include "base/files/digest.hpp"

#include <QFileInfo>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_node.hpp"
#include "document/plan_address.hpp"
#include "document/plan_edit.hpp"
#include "document/shown_text.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::desk {

namespace {

/// Steps of undo share their plans, each step one whole plan: large plans keep fewer of them.
int undo_limit(const Plan& plan) {
  std::size_t seams = 0;
  for (const Weldment& weldment : plan.weldments) seams += weldment.seams.size();
  return seams > 1000 ? 100 : 1000;
}

std::string bytes_of(const QString& path) {
  return read_file(path.toStdString(), JsonLimits{}.bytes);
}

}  // namespace

Document::Document(QObject* parent) : QObject(parent), plan_(std::make_shared<const Plan>()) {
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &Document::lookAtFile);
  connect(&undo_, &QUndoStack::cleanChanged, this, &Document::fileChanged);
}

QString Document::name() const {
  return path_.isEmpty() ? tr("New plan") : QFileInfo(path_).fileName();
}

void Document::put(Plan plan, const QString& path, const std::string& sha256, bool recovered) {
  plan_ = std::make_shared<const Plan>(std::move(plan));
  path_ = path;
  sha256_ = sha256;
  recovered_ = recovered;
  changed_on_disk_ = false;
  undo_.clear();
  undo_.setUndoLimit(undo_limit(*plan_));
  watch();
  emit replaced();
  emit planChanged();
  emit fileChanged();
}

void Document::open(const QString& path) {
  const std::string bytes = bytes_of(path);
  put(parse_plan(bytes, path.toStdString()), QFileInfo(path).absoluteFilePath(), sha256_hex(bytes), false);
}

void Document::openCopy(const QString& path) {
  put(parse_plan(bytes_of(path), path.toStdString()), {}, {}, false);
}

void Document::start(Plan plan, const QString& path, bool recovered) {
  std::string sha256;
  if (recovered && QFileInfo::exists(path)) sha256 = sha256_hex(bytes_of(path));
  put(std::move(plan), path, sha256, recovered);
}

void Document::write(const QString& path, const std::string& expected_sha256) {
  const std::string text = write_plan(*plan_);
  const QSignalBlocker quiet(watcher_);
  save_made(path.toStdString(), FileKind::plan,
            [&] {
              if (!watcher_.files().isEmpty()) watcher_.removePaths(watcher_.files());
              return std::string_view(text);
            },
            {expected_sha256, true});
  path_ = QFileInfo(path).absoluteFilePath();
  sha256_ = sha256_hex(text);
  recovered_ = false;
  changed_on_disk_ = false;
  endTyping();
  undo_.setClean();
  watch();
  emit fileChanged();
}

void Document::save(bool overwrite) {
  const bool known = QFileInfo::exists(path_) && !overwrite;
  write(path_, known ? sha256_ : std::string());
}

void Document::saveAs(const QString& path) {
  write(path, {});
}

void Document::watch() {
  if (!watcher_.files().isEmpty()) watcher_.removePaths(watcher_.files());
  if (!path_.isEmpty() && QFileInfo::exists(path_)) watcher_.addPath(path_);
}

void Document::lookAtFile() {
  watch();
  bool other = true;
  try {
    other = sha256_hex(bytes_of(path_)) != sha256_;
  } catch (const std::exception&) {
    // An absent or unreadable file is a changed one too.
  }
  if (other == changed_on_disk_) return;
  changed_on_disk_ = other;
  if (other) emit changedOnDisk();
}

void Document::setPlan(PlanPtr plan) {
  plan_ = std::move(plan);
  emit planChanged();
}

std::string Document::entryKey(const std::string& merge_key) const {
  return merge_key.empty() ? merge_key : merge_key + "#" + std::to_string(typing_);
}

/// The last step where it is the entry with this key; nullptr where it isn't.
const PlanEdit* Document::entry(const std::string& key) const {
  const auto* last = dynamic_cast<const PlanEdit*>(undo_.command(undo_.index() - 1));
  return last && last->isEntry(key) ? last : nullptr;
}

void Document::takeBack(const std::string& merge_key) {
  if (!entry(entryKey(merge_key))) return;
  takes_back_ = true;
  undo_.undo();
  takes_back_ = false;
}

std::optional<Refusal> Document::refuseLocked(const LockedEdit& asked, WhenLocked when_locked) {
  const LockedChange& change = asked.change;
  if (change.none() || when_locked == WhenLocked::withdraw) return std::nullopt;
  const auto refusal = [&](const std::string& pointer, const QString& text,
                           const std::vector<std::size_t>& schedules) {
    return Refusal{pointer, text.arg(locked_names(*asked.before, schedules)), true};
  };
  if (!change.removed.empty())
    return refusal(schedule_address(change.removed[0]), tr("Locked: %1. Withdraw the approval first."),
                   change.removed);
  if (when_locked == WhenLocked::offer) emit lockedEdit(asked);
  if (!change.changed.empty())
    return refusal(schedule_address(change.changed[0]),
                   tr("Locked: %1. The change may go into a new revision."), change.changed);
  if (!change.withdrawn.empty())
    return refusal(schedule_address(change.withdrawn[0]),
                   tr("Locked: %1, until someone withdraws the approval."), change.withdrawn);
  return refusal(change.item, tr("Used by locked schedules: %1. The change may go into a copy."),
                 change.users);
}

std::optional<Refusal> Document::edit(const QString& what, const std::string& merge_key,
                                      const std::function<void(Plan&)>& change, WhenLocked when_locked) {
  auto after = std::make_shared<Plan>(*plan_);
  try {
    change(*after);
    check_plan(*after, name().toStdString());
  } catch (const InputError& error) {
    takeBack(merge_key);
    return Refusal{error.pointer(), refusal_text(error)};
  }
  const std::string key = entryKey(merge_key);
  // Within one entry, its initial value counts: typing a name isn't a change of the letters typed before.
  const PlanEdit* entry_before = entry(key);
  const LockedChange locked = locked_change(entry_before ? *entry_before->before() : *plan_, *after);
  if (auto refusal = refuseLocked({what, plan_, after, locked}, when_locked)) {
    takeBack(merge_key);
    return refusal;
  }
  seal_approvals(*plan_, *after);
  undo_.push(new PlanEdit(*this, what, key, plan_, std::move(after)));
  return std::nullopt;
}

std::optional<Refusal> Document::setField(const std::string& pointer, const std::string& key,
                                          const std::string& text, WhenLocked when_locked) {
  if (const FieldInfo* info = field_info(*plan_, pointer, key)) {
    if (field_text(*plan_, pointer, key) == text) return std::nullopt;
    const QString what = tr("Change %1").arg(shown_word(info->label));
    const std::string before = field_text(*plan_, pointer, key);
    return edit(
        what, pointer + "." + key,
        [&](Plan& plan) {
          set_field_text(plan, pointer, key, text);
          if (key == "id") follow_rename(plan, pointer, before, text);
        },
        when_locked);
  }
  return Refusal{pointer, tr("there is no such field")};
}

}  // namespace seamtakt::desk
