#pragma once

#include <QObject>
#include <memory>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "document/document.hpp"
#include "jobs/worker.hpp"
#include "plan/evaluate/evaluation.hpp"

namespace seamtakt::desk {

/// What follows from one state of the plan.
struct Results {
  PlanPtr plan;
  Evaluation evaluation;
  std::vector<CycleResult> cycles;  ///< by weldment, in the plan's order; empty without a cell
  bool has_cycles = false;          ///< false: they are still being computed
  Findings findings;                ///< of the evaluation and of the cycles, worst first
};
using ResultsPtr = std::shared_ptr<const Results>;

/// Evaluates plans on a thread of its own. Only the newest plan counts: a result that was overtaken is
/// dropped.
class Evaluator : public QObject {
  Q_OBJECT

 public:
  explicit Evaluator(QObject* parent = nullptr);

  /// Asks for the results of this plan; `ready` follows, first without cycles, then with them.
  void evaluate(const PlanPtr& plan);
  const ResultsPtr& results() const { return results_; }
  bool isBusy() const { return worker_.isBusy(); }
  /// Waits for the newest results (pictures, exports, tests).
  void wait() { worker_.wait(); }

 signals:
  void ready(seamtakt::desk::ResultsPtr results);
  void failed(const QString& reason);

 private:
  void take(const ResultsPtr& results);

  ResultsPtr results_;
  Worker worker_;
};

/// All of it at once, on the calling thread.
ResultsPtr results_of(const PlanPtr& plan);

/// Today's date, UTC, as the core's rules take it; SOURCE_DATE_EPOCH overrides the clock.
std::string date_of_today();
/// The moment, UTC, for reports.
std::string utc_moment();

}  // namespace seamtakt::desk
