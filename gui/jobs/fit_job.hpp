#pragma once

#include <QObject>
#include <memory>

#include "document/document.hpp"
#include "jobs/worker.hpp"
#include "plan/fit/fit.hpp"

namespace seamtakt::desk {

/// Settings that calc found for seams, and the plan that they are for.
struct FoundFit {
  PlanPtr of;
  FitResult result;
};
using FoundFitPtr = std::shared_ptr<const FoundFit>;

/// Fits seams on a thread of its own; an answer that was overtaken is dropped.
class FitJob : public QObject {
  Q_OBJECT

 public:
  explicit FitJob(QObject* parent = nullptr);
  void ask(const PlanPtr& plan, const FitOptions& options);
  bool isBusy() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void answered(seamtakt::desk::FoundFitPtr found);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
