#pragma once

#include "cell/timeline/without_robot.hpp"
#include "pages/page.hpp"

class QComboBox;
class QLabel;
class QSplitter;
class QStackedWidget;

namespace seamtakt::desk {

class AxonometricView;
class GridView;
class OrderBar;
class SeamView;
class TimelineView;
class ValueModel;

/// The cell: what each weldment's cycle is made of, the robots' timelines against takt and beside those of
/// another order or plan, the seams in welding order.
class CellPage : public Page {
  Q_OBJECT

 public:
  explicit CellPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  void opened() override { showCycle(); }
  bool goTo(const QString& address, const QString& key) override;
  TimelineView& timeline() { return *timeline_; }
  /// What it is compared with, on the same axis.
  TimelineView& otherTimeline() { return *other_; }
  OrderBar& order() { return *bar_; }
  /// The cell without one of its robots for a shift; an empty text: with all of them.
  void setWithout(const QString& robot);
  QString withoutText() const;
  /// Cycle, arc-on share and margin, or how many seams are unwelded.
  const QLabel& headline() const { return *headline_; }
  GridView& losses() { return *loss_table_; }
  /// The weldment in space with the order's numbers and, as the cursor is on the timeline, the torches.
  AxonometricView& space() { return *space_; }

 private:
  QWidget* makeWhat();
  QWidget* makeWhy();
  void makeTools();
  void connectParts();
  /// Results of the plan, or of the plan without the robot that is out.
  const ResultsPtr& shown() const;
  const CycleResult* cycle() const;
  void showCycle();
  void showChoices(const Plan& plan);
  void showTimelines(const CycleResult& cycle);
  void showHeadline(const CycleResult& cycle);
  void showOrder(const CycleResult& cycle);
  void showTorches(double at_s);
  void pick(const QString& seam, int pass);
  /// The table of moves is at the chosen seam's.
  void followMoves();

  QComboBox *weldments_, *without_;
  QLabel *headline_, *without_note_;
  Evaluator what_if_;
  ResultsPtr what_if_results_;
  PlanPtr asked_;  ///< the plan without the robot that is out
  PlanWithoutRobot out_;
  ValueModel *loss_, *moves_;
  GridView *loss_table_, *move_table_;
  OrderBar* bar_;
  QSplitter* pictures_;
  TimelineView *timeline_, *other_;
  SeamView* order_;
  AxonometricView* space_;
  QStackedWidget* order_pictures_;
};

}  // namespace seamtakt::desk
