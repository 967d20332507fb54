#include <gtest/gtest.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QFontMetrics>
#include <QSettings>
#include <QStandardPaths>
#include <QThread>
#include <cstdio>

#include "app/theme_choice.hpp"
#include "document/document.hpp"
#include "document/recovery.hpp"

namespace {

/// The desk that is killed in the recovery tests: edits a plan, says when the edit was kept, and waits for
/// its end.
int run_victim(const QString& folder, const QString& plan) {
  using namespace seamtakt::desk;
  Document document;
  Recovery recovery(document, folder);
  document.open(plan);
  document.edit("title", {}, [](seamtakt::Plan& changed) { changed.title = "changed before the kill"; });
  QElapsedTimer timer;
  timer.start();
  bool said = false;
  while (timer.elapsed() < 20000) {
    QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    if (!said && timer.elapsed() > 1500) {
      std::puts("edited");
      std::fflush(stdout);
      said = true;
    }
    QThread::msleep(10);
  }
  return 1;
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  ::testing::InitGoogleTest(&argc, argv);
  QApplication application(argc, argv);
  QStandardPaths::setTestModeEnabled(true);
  QCoreApplication::setOrganizationName("seamtakt-tests");
  QCoreApplication::setApplicationName(QString("desk-%1").arg(QCoreApplication::applicationPid()));
  QApplication::setFont(QFont("DejaVu Sans", 9));
  if (QFontMetrics(QApplication::font()).horizontalAdvance('A') == 0) {
    std::fputs("no fonts: install fonts-dejavu-core\n", stderr);
    return 1;
  }
  seamtakt::desk::choose_theme("light");
  if (argc == 4 && QString(argv[1]) == "--victim") return run_victim(argv[2], argv[3]);
  const int code = RUN_ALL_TESTS();
  QSettings().clear();
  return code;
}
