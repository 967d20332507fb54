#pragma once

#include <QWidget>
#include <map>
#include <vector>

#include "pages/page.hpp"

class QLabel;
class QPushButton;

namespace seamtakt::desk {

/// In place of a page that has nothing to show yet: the first step in words, and buttons that take it.
class EmptySide : public QWidget {
  Q_OBJECT

 public:
  /// A button that is pressed is told by the page's stepAsked.
  explicit EmptySide(Page& page);
  void offer(const QString& step, const std::vector<FirstStep>& offered);
  /// The button that Enter presses.
  QPushButton* first() const { return first_; }

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QPushButton* makeButton(FirstStep step);

  QLabel* step_;
  std::map<FirstStep, QPushButton*> buttons_;
  QPushButton* first_ = nullptr;
};

}  // namespace seamtakt::desk
