#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QDialog>
#include <QDir>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QPushButton>
#include <QSortFilterProxyModel>
#include <QTabWidget>
#include <QTest>
#include <cstdio>
#include <functional>

#include "app/main_window.hpp"
#include "models/tables/grid_model.hpp"
#include "pages/page.hpp"
#include "support/source_path.hpp"
#include "widgets/chain_strip.hpp"

namespace seamtakt::desk {

inline QString demo_path() {
  return QString::fromStdString(source_path("/reference/demo/ground-equipment.weldplan.json"));
}

inline QString demo_log() {
  return QString::fromStdString(source_path("/reference/demo/arc-log.csv.gz"));
}

/// Schedules that nobody has reviewed or approved: they may be changed in place.
inline void make_drafts(Document& document) {
  const auto release = [](Plan& plan) {
    for (Schedule& schedule : plan.schedules) schedule.status = "draft";
  };
  ASSERT_FALSE(document.edit("drafts", {}, release, WhenLocked::withdraw));
  document.undo().clear();
}

/// The dialog that asks something; nullptr where none comes up.
inline QDialog* question(int wait_ms = 2000) {
  QDialog* found = nullptr;
  static_cast<void>(QTest::qWaitFor(
      [&] { return (found = qobject_cast<QDialog*>(QApplication::activeModalWidget())) != nullptr; },
      wait_ms));
  return found;
}

/// Keys go to this window, once the window in front of it has closed.
inline void bring_to_front(QWidget& window) {
  window.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  QApplication::processEvents();
}

/// As it is called where a test fails.
inline std::ostream& operator<<(std::ostream& out, DeskPage page) {
  return out << "page " << position_of(page) + 1;
}

template <class Wanted>
Wanted& page_of(MainWindow& window, DeskPage page) {
  return dynamic_cast<Wanted&>(window.page(page));
}

/// Someone at the desk: keys go to whatever has the focus, clicks to where a thing is drawn, and all are
/// counted.
class UserActions {
 public:
  explicit UserActions(MainWindow& window) : window_(window) {}

  void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    ++keys;
    QTest::keyClick(focus(), key, modifiers);
    QApplication::processEvents();
  }
  void type(const QString& text) {
    // Each key to the widget that then has the focus: the first one may open an editor.
    for (const QChar letter : text) {
      ++keys;
      QTest::keyClicks(focus(), QString(letter));
      QApplication::processEvents();
    }
  }
  /// Selects the field's text and types over it.
  void typeOver(const QString& text) {
    key(Qt::Key_A, Qt::ControlModifier);
    type(text);
  }
  void click(QWidget* widget) {
    ++clicks;
    ASSERT_NE(widget, nullptr);
    ASSERT_TRUE(widget->isVisible()) << widget->accessibleName().toStdString();
    QTest::mouseClick(widget, Qt::LeftButton);
    QApplication::processEvents();
  }
  /// The button of that name that can be seen.
  void press(QWidget& page, const QString& name) {
    for (QPushButton* button : page.findChildren<QPushButton*>())
      if (button->accessibleName() == name && button->isVisible()) return click(button);
    FAIL() << "no button " << name.toStdString();
  }
  /// Presses, moves in steps, and lets go.
  void drag(QWidget* widget, const QPoint& from, const QPoint& to) {
    ++clicks;
    QTest::mousePress(widget, Qt::LeftButton, Qt::NoModifier, from);
    for (int step = 1; step <= 6; ++step) {
      const QPointF at = QPointF(from) + QPointF(to - from) * step / 6;
      QMouseEvent move(QEvent::MouseMove, at, widget->mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                       Qt::NoModifier);
      QApplication::sendEvent(widget, &move);
    }
    QTest::mouseRelease(widget, Qt::LeftButton, Qt::NoModifier, to);
    QApplication::processEvents();
  }
  void clickAt(QWidget* widget, const QPoint& at) {
    ++clicks;
    QTest::mouseClick(widget, Qt::LeftButton, Qt::NoModifier, at);
    QApplication::processEvents();
  }
  /// Goes to a page by its key.
  void page(DeskPage page) {
    ++pages;
    key(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(page)), Qt::ControlModifier);
    ASSERT_EQ(window_.currentPage(), page);
  }
  void report(const char* task) const {
    std::printf("[ task     ] %s: %d keys, %d clicks, %d pages\n", task, keys, clicks, pages);
  }

  int keys = 0, clicks = 0, pages = 0;

 private:
  QWidget* focus() const {
    QWidget* widget = QApplication::focusWidget();
    return widget ? widget : &window_;
  }
  MainWindow& window_;
};

/// The desk with the demo open and evaluated.
class DeskTest : public ::testing::Test {
 protected:
  void SetUp() override {
    window = std::make_unique<MainWindow>();
    window->resize(1280, 800);
    window->show();
    // A bare X server has no window manager that would do it.
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->document().open(demo_path());
    settle();
  }
  void TearDown() override {
    if (window) window->document().undo().setClean();
    window.reset();
  }
  /// Waits until what follows from the last edit is on the screen.
  void settle() {
    QApplication::processEvents();
    window->evaluator().wait();
    QApplication::processEvents();
  }
  /// A picture of the window in its present state, in the build folder, for a person to look at.
  void photograph(const QString& name) {
    QApplication::processEvents();
    QDir().mkpath(QString::fromStdString(build_path("/screenshots")));
    EXPECT_TRUE(window->grab().save(QString::fromStdString(build_path("/screenshots/%1.png")).arg(name)));
  }
  bool has_fail(const std::string& where) const {
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.severity == Severity::fail && finding.where.rfind(where, 0) == 0) return true;
    return false;
  }
  std::unique_ptr<MainWindow> window;
};

}  // namespace seamtakt::desk
