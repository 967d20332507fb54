#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <memory>

#include "cell/search/best_order.hpp"
#include "jobs/evaluator.hpp"
#include "jobs/worker.hpp"

namespace seamtakt::desk {

/// How far a search for the best order is, in times of the cycle.
struct SearchState {
  double best_s = 0, bound_s = 0, gap_pct = 0, elapsed_s = 0;
};

/// What a search found, and for what.
struct FoundOrder {
  ResultsPtr of;
  std::size_t weldment = 0;
  CycleResult cycle;
};
using FoundOrderPtr = std::shared_ptr<const FoundOrder>;

/// Searches a weldment's best order on a thread of its own until it is stopped, the order is proven, or its
/// time is over.
class BestJob : public QObject {
  Q_OBJECT

 public:
  explicit BestJob(QObject* parent = nullptr);

  /// A search that still runs is dropped.
  void start(const ResultsPtr& results, std::size_t weldment, int seconds);
  /// Ends the search; what it found is kept and `found` follows.
  void stop() { worker_.stop(); }
  /// Ends the search; nothing follows.
  void drop() { worker_.drop(); }
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void progress(const seamtakt::desk::SearchState& state);
  void found(seamtakt::desk::FoundOrderPtr order);
  void failed(const QString& reason);

 private:
  BestOptions options(const ResultsPtr& results, std::size_t weldment, qint64 longest_ms, unsigned run);

  QElapsedTimer since_start_;
  Worker worker_;
};

}  // namespace seamtakt::desk
