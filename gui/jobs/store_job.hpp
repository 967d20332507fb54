#pragma once

#include <QObject>
#include <QString>
#include <QThreadPool>
#include <atomic>
#include <memory>

#include "records/ledger/nonconformance.hpp"
#include "records/ledger/verify.hpp"

namespace seamtakt::desk {

/// Where a record store lies, and what it is held against.
struct StoreQuestion {
  QString uri;      ///< "sqlite:FILE" or "postgresql://..."
  QString anchors;  ///< file of anchor lines kept outside the store; empty: none
};

/// What a store says: whether it can be trusted, and its units.
struct StoreAnswer {
  StoreQuestion question;
  VerifyReport report;
  std::vector<UnitStatus> units;
  bool has_all_units = false;  ///< false: the listing was stopped
};
using StoreAnswerPtr = std::shared_ptr<const StoreAnswer>;

/// Verifies a store's ledger and lists its units, on a thread of its own.
class StoreJob : public QObject {
  Q_OBJECT

 public:
  explicit StoreJob(QObject* parent = nullptr);
  ~StoreJob() override;

  void start(const StoreQuestion& question);
  void cancel() { stop_ = true; }
  bool isRunning() const { return is_running_; }
  void wait();

 signals:
  /// Records verified, or units listed, of all.
  void progress(bool is_listing, qulonglong done, qulonglong all);
  void answered(seamtakt::desk::StoreAnswerPtr answer);
  void cancelled();
  void failed(const QString& reason);

 private:
  struct Stopped {};
  StoreAnswerPtr ask(const StoreQuestion& question, unsigned run);
  void list(StoreAnswer& answer, unsigned run);
  void tell(unsigned run, bool is_listing, std::uint64_t done, std::uint64_t all);
  template <class Action>
  void send(unsigned run, Action action);

  std::atomic<bool> stop_ = false;
  bool is_running_ = false;
  unsigned run_ = 0;
  QThreadPool thread_;
};

/// "Trusted", "Trusted, but unanchored" or "Not trusted", and why, in the user's language.
QString verdict_text(const VerifyReport& report);

}  // namespace seamtakt::desk
