#pragma once

#include <QFrame>
#include <vector>

#include "widgets/desk_page.hpp"

class QLabel;
class QPushButton;

namespace seamtakt::desk {

class MainWindow;

/// Six steps through the desk, a panel beside the pages. It opens the demo where no plan is open and changes
/// nothing. Enter goes on, Escape ends it.
class TourPanel : public QFrame {
  Q_OBJECT

 public:
  /// Shows the tour in the window, from its first step where it is open already.
  static TourPanel& start(MainWindow& window);
  /// Whether it was never ended here before.
  static bool isNew();

  int step() const { return step_; }
  int stepCount() const { return static_cast<int>(steps_.size()); }
  QString text() const;
  void end();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Step {
    DeskPage page;
    bool with_explain;
    QString title, text;
  };
  explicit TourPanel(MainWindow& window, QWidget* parent);
  std::vector<Step> makeSteps() const;
  void goTo(int step);

  MainWindow& window_;
  std::vector<Step> steps_;
  int step_ = 0;
  bool explain_was_shown_;
  QLabel *count_, *title_, *text_;
  QPushButton *back_, *next_, *end_;
};

}  // namespace seamtakt::desk
