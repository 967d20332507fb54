#pragma once

#include <QWidget>
#include <optional>

#include "jobs/best_job.hpp"
#include "pages/page.hpp"
#include "plots/timeline_view.hpp"

class QLabel;
class QPushButton;
class QSpinBox;

namespace seamtakt::desk {

/// The cycle with which a cell's own is compared.
struct Comparison {
  QString name;
  CycleResult cycle;
  /// It was the plan's before a change: differences are from it to the plan's, else to it.
  bool is_before = false;
};

/// The row above the timelines: a seam moved to another place or robot, the best order searched and taken
/// over, another plan to compare with. Each change of the plan is one step of undo.
class OrderBar : public QWidget {
  Q_OBJECT

 public:
  explicit OrderBar(const Desk& desk, QWidget* parent = nullptr);

  /// What the page shows. `is_plan`: it is of the plan on the desk, so it can be changed.
  void setShown(const ResultsPtr& results, std::size_t weldment, const QString& seam, bool is_plan);
  const std::optional<Comparison>& comparison() const { return comparison_; }
  BestJob& job() { return job_; }
  Evaluator& otherPlan() { return other_; }
  /// Compares with the same weldment of a plan file.
  void compareWith(const QString& path);

  void search();
  void take();
  void close();
  void place(const QString& seam, const OrderPlace& to);
  /// What the cycle would be after `place`.
  QString preview(const QString& seam, const OrderPlace& to) const;
  /// Moves one pass of the chosen seam past what its robot welds before or after it.
  void step(bool later);
  /// Of the chosen seam, the pass that is moved.
  void setPass(int pass);
  int pass() const { return pass_; }
  void changeRobot();
  /// How long a search lasts.
  QSpinBox& seconds() { return *seconds_; }

 signals:
  void comparisonChanged();
  void message(const QString& text);

 private:
  void makeButtons();
  const CycleResult* cycle() const;
  bool canArrange() const;
  /// The cycle of the present plan.
  CycleResult cycleNow() const;
  const Weldment& weldmentNow() const;
  void showFound(const FoundOrderPtr& order);
  void showOther();
  void showState();
  void say(const QString& text);

  Desk desk_;
  BestJob job_;
  Evaluator other_;
  ResultsPtr shown_;
  std::size_t weldment_ = 0;
  QString seam_, other_name_;
  int pass_ = 1;
  bool is_plan_ = false;
  FoundOrderPtr found_;
  std::optional<Comparison> comparison_;
  QPushButton *search_, *stop_, *take_, *close_, *compare_, *earlier_, *later_, *robot_;
  QLabel *place_, *state_;
  QSpinBox* seconds_;
};

}  // namespace seamtakt::desk
