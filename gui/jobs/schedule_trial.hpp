#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <vector>

#include "base/error.hpp"
#include "base/finding.hpp"
#include "document/document.hpp"
#include "document/selection.hpp"
#include "jobs/worker.hpp"

namespace seamtakt::desk {

/// What calc finds first against a seam that is welded with a schedule.
struct TriedSchedule {
  std::optional<Finding> worst;
  std::optional<InputError> refused;  ///< the seam can't be welded with it
};
/// One for each schedule of the plan, in its order.
using TriedSchedules = std::vector<TriedSchedule>;
using TriedSchedulesPtr = std::shared_ptr<const TriedSchedules>;

/// Welds a seam with every schedule of a plan, on a thread of its own: a plan may have hundreds.
class ScheduleTrial : public QObject {
  Q_OBJECT

 public:
  explicit ScheduleTrial(QObject* parent = nullptr);
  void ask(const PlanPtr& plan, const SeamPlace& seam);
  bool isBusy() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void answered(seamtakt::desk::TriedSchedulesPtr tried);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
