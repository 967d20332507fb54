#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "jobs/worker.hpp"
#include "ledger/verify/verify.hpp"
#include "records/keep/nonconformance.hpp"

namespace seamtakt::desk {

/// A record store's place, and what it is checked against.
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

  void start(const StoreQuestion& question);
  void cancel() { worker_.stop(); }
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  /// Records verified, or units listed, of all.
  void progress(bool is_listing, qulonglong done, qulonglong all);
  void answered(seamtakt::desk::StoreAnswerPtr answer);
  void cancelled();
  void failed(const QString& reason);

 private:
  StoreAnswerPtr ask(const StoreQuestion& question, unsigned run);
  StoreOpening opening() const;
  void list(StoreAnswer& answer, unsigned run);
  void tell(unsigned run, bool is_listing, std::uint64_t done, std::uint64_t all);

  Worker worker_;
};

/// "Trusted", "Trusted, but unanchored" or "Not trusted", and why, in the user's language.
QString verdict_text(const VerifyReport& report);

}  // namespace seamtakt::desk
