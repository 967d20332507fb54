#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "jobs/evaluator.hpp"
#include "jobs/worker.hpp"
#include "line/line_result.hpp"

namespace seamtakt::desk {

/// What the line is asked.
struct LineQuestion {
  QString orders;  ///< CSV of the day's orders
  QString carts;   ///< folder of carts; empty: every order is released
  bool level = false;
};
using LineResultPtr = std::shared_ptr<const LineResult>;

/// Runs the day's orders through the line on a thread of its own; an answer that was overtaken is dropped.
class LineJob : public QObject {
  Q_OBJECT

 public:
  explicit LineJob(QObject* parent = nullptr);
  void ask(const LineQuestion& question, const ResultsPtr& results);
  /// Cancels the present computation; no answer follows.
  void drop() { worker_.drop(); }
  bool isBusy() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void answered(seamtakt::desk::LineResultPtr result);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
