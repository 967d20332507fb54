#include "document/recovery.hpp"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>
#include <QUuid>

#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::desk {

namespace {

constexpr int keep_after_ms = 700;
const QString plan_suffix = QStringLiteral(".weldplan.json");
const QString origin_suffix = QStringLiteral(".origin");
const QString lock_suffix = QStringLiteral(".lock");

}  // namespace

QString Recovery::standardFolder() {
  return QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) + QStringLiteral("/recovery");
}

Recovery::Recovery(Document& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      folder_(folder),
      session_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
  QDir().mkpath(folder_);
  lock_ = std::make_unique<QLockFile>(folder_ + "/" + session_ + lock_suffix);
  lock_->setStaleLockTime(0);
  lock_->tryLock(0);
  timer_.setSingleShot(true);
  timer_.setInterval(keep_after_ms);
  connect(&timer_, &QTimer::timeout, this, &Recovery::keep);
  // Not restarted while it runs: edits typed without a pause are saved once per span as well.
  connect(&document_, &Document::planChanged, this, [this] {
    if (!timer_.isActive()) timer_.start();
  });
  connect(&document_, &Document::fileChanged, this, [this] {
    if (!document_.isModified()) drop();
  });
}

Recovery::~Recovery() {
  drop();
}

QString Recovery::file() const {
  return folder_ + "/" + session_ + plan_suffix;
}

void Recovery::keep() {
  if (!document_.isModified()) return drop();
  try {
    save_atomically((folder_ + "/" + session_ + origin_suffix).toStdString(), document_.path().toStdString());
    save_atomically(file().toStdString(), write_plan(*document_.plan()));
  } catch (const std::exception&) {
    // A full or read-only disk: the next edit tries again, and saving itself reports the error.
  }
}

void Recovery::drop() {
  QFile::remove(file());
  QFile::remove(folder_ + "/" + session_ + origin_suffix);
}

std::vector<Leftover> Recovery::leftovers() const {
  std::vector<Leftover> found;
  const QDir folder(folder_);
  for (const QFileInfo& info : folder.entryInfoList({"*" + plan_suffix}, QDir::Files, QDir::Time)) {
    const QString session = info.fileName().chopped(plan_suffix.size());
    if (session == session_) continue;
    QLockFile lock(folder_ + "/" + session + lock_suffix);
    lock.setStaleLockTime(0);
    if (!lock.tryLock(0)) continue;  // its desk still runs
    QFile origin(folder_ + "/" + session + origin_suffix);
    QString path;
    if (origin.open(QIODevice::ReadOnly)) path = QString::fromUtf8(origin.readAll());
    found.push_back({info.absoluteFilePath(), path});
  }
  return found;
}

void Recovery::recover(const Leftover& leftover) {
  document_.start(load_plan(leftover.file.toStdString()), leftover.origin, true);
  keep();
  discard(leftover);
}

void Recovery::discard(const Leftover& leftover) {
  QFile::remove(leftover.file);
  QFile::remove(leftover.file.chopped(plan_suffix.size()) + origin_suffix);
}

}  // namespace seamtakt::desk
