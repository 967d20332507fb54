#include "app/pictures.hpp"

#include <QApplication>
#include <QBuffer>
#include <QDir>
#include <QElapsedTimer>
#include <QPixmap>
#include <QTabWidget>

#include "app/main_window.hpp"
#include "base/files/output_file.hpp"
#include "pages/heat_page.hpp"
#include "pages/records_page.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

namespace {

/// Waits for deferred drawing (fields, queued plots).
void settle(int ms = 160) {
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < ms) QApplication::processEvents(QEventLoop::AllEvents, 20);
}

QString take(MainWindow& window, const QString& folder, const QString& name) {
  settle();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  window.grab().save(&buffer, "PNG", 1);
  const QString path = folder + QStringLiteral("/") + name + QStringLiteral(".png");
  save_output(path.toStdString(), FileKind::picture,
              std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
  return path;
}

}  // namespace

QStringList take_pictures(MainWindow& window, const QString& folder) {
  QDir().mkpath(folder);
  window.evaluator().wait();
  static const char* names[desk_pages.size()] = {"seams", "schedules", "heat",    "cell",
                                                 "line",  "records",   "findings"};
  QStringList paths;
  for (const DeskPage each : desk_pages) {
    window.showPage(each);
    auto* heat = qobject_cast<HeatPage*>(&window.page(each));
    if (heat) heat->views().setCurrentIndex(0);
    paths << take(window, folder, QString::fromUtf8(names[position_of(each)]));
    if (auto* records = qobject_cast<RecordsPage*>(&window.page(each)); records && records->logs()) {
      records->tabs().setCurrentIndex(1);
      records->statistics().selectRow(0);
      paths << take(window, folder, QStringLiteral("charts"));
      records->tabs().setCurrentIndex(0);
    }
    if (!heat) continue;
    heat->views().setCurrentIndex(1);
    paths << take(window, folder, QStringLiteral("temperature"));
    heat->views().setCurrentIndex(0);
  }
  return paths;
}

}  // namespace seamtakt::desk
