#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QSortFilterProxyModel>
#include <QTabWidget>
#include <QTest>
#include <cstdio>
#include <functional>

#include "app/main_window.hpp"
#include "models/grid_model.hpp"
#include "pages/page.hpp"
#include "widgets/chain_strip.hpp"

namespace seamtakt::desk {

inline QString demo_path() {
  return QStringLiteral(SEAMTAKT_SOURCE_DIR "/reference/demo/ground-equipment.weldplan.json");
}

/// Someone at the desk: keys go to whatever has the focus, clicks to where a thing is drawn, and all are
/// counted.
class Hands {
 public:
  explicit Hands(MainWindow& window) : window_(window) {}

  void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    ++keys;
    QTest::keyClick(focus(), key, modifiers);
    QApplication::processEvents();
  }
  void type(const QString& text) {
    // Each key to whatever has the focus by then: the first one may open an editor.
    for (const QChar letter : text) {
      ++keys;
      QTest::keyClicks(focus(), QString(letter));
      QApplication::processEvents();
    }
  }
  /// Selects what stands in the field and types over it.
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
  void clickAt(QWidget* widget, const QPoint& at) {
    ++clicks;
    QTest::mouseClick(widget, Qt::LeftButton, Qt::NoModifier, at);
    QApplication::processEvents();
  }
  /// Goes to a page by its key.
  void page(int index) {
    ++pages;
    key(static_cast<Qt::Key>(Qt::Key_1 + index), Qt::ControlModifier);
    ASSERT_EQ(window_.currentPage(), index);
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
  bool has_fail(const std::string& where) const {
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.severity == Severity::fail && finding.where.rfind(where, 0) == 0) return true;
    return false;
  }
  std::unique_ptr<MainWindow> window;
};

}  // namespace seamtakt::desk
