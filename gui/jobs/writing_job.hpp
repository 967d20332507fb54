#pragma once

#include <QObject>
#include <QString>
#include <functional>

#include "jobs/worker.hpp"
#include "records/keep/hand_writing.hpp"

namespace seamtakt::desk {

/// One record that a person writes by hand: where, who, why, and what. `write` is called on another thread,
/// once who and why are known to be fit for a record.
struct WritingOrder {
  QString uri;
  QString key;  ///< the store's key; empty: in its usual place
  QString who, why;
  std::function<WrittenRecord(const HandWriting& to)> write;
};

/// Writes into a store on a thread of its own. What is refused changes nothing.
class WritingJob : public QObject {
  Q_OBJECT

 public:
  explicit WritingJob(QObject* parent = nullptr);

  void start(const WritingOrder& order);
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void written(qulonglong seq, const QString& kind);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
