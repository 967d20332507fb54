#include "app/desk_program.hpp"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QScrollBar>
#include <QSettings>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <system_error>

#include "app/desk_options.hpp"
#include "app/main_window.hpp"
#include "app/pictures.hpp"
#include "app/report_export.hpp"
#include "app/theme_choice.hpp"
#include "app/tour_panel.hpp"
#include "base/error.hpp"
#include "base/files/catalogue.hpp"
#include "base/version.hpp"
#include "formula/reference_check.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "pages/heat_page.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

namespace {

enum Exit { done = 0, found_fail = 1, bad_input = 2, machine_failed = 3 };
constexpr int another_language = 1000;  ///< not an exit code: the window is made again

/// Reports and pictures need no display, and nobody reads the platform's messages there.
void go_offscreen(const DeskOptions& options) {
  if (options.export_to.isEmpty() && options.pictures_to.isEmpty()) return;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& text) {
    if (type == QtCriticalMsg || type == QtFatalMsg) std::fprintf(stderr, "%s\n", qPrintable(text));
  });
}

void apply_view(const DeskOptions& options, bool remember) {
  const QSettings settings;
  const QString theme = !options.theme.isEmpty() ? options.theme
                        : remember               ? settings.value("view/theme", "system").toString()
                                                 : QStringLiteral("light");
  const QString units = !options.units.isEmpty() ? options.units
                        : remember               ? settings.value("view/units", "si").toString()
                                                 : QStringLiteral("si");
  look_at_platform();
  choose_theme(theme);
  choose_language(!options.language.isEmpty() ? options.language
                  : remember                  ? settings.value("view/language").toString()
                                              : QStringLiteral("en"));
  UnitView::shared().setSystem(units == QStringLiteral("us") ? UnitSystem::us : UnitSystem::si);
}

int export_report(const DeskOptions& options) {
  bool trusted = true;
  if (!options.store.isEmpty()) {
    trusted = export_unit_pdf(options.store, options.unit, options.export_to);
  } else {
    const auto plan = std::make_shared<const Plan>(load_plan(options.plan.toStdString()));
    if (options.schedules.isEmpty())
      export_pdf(*results_of(plan), options.plan, options.export_to);
    else
      export_schedules_pdf(*results_of(plan), options.plan, options.schedules, options.export_to);
  }
  std::printf("Report written to %s\n", qPrintable(options.export_to));
  if (!trusted) std::printf("The store is NOT TRUSTED (seamtakt ledger verify says why).\n");
  return trusted ? done : found_fail;
}

/// A file in the same folder; empty where there is none.
QString file_beside(const QString& file, const QString& name) {
  const QString path = QFileInfo(file).dir().filePath(name);
  return QFileInfo::exists(path) ? path : QString();
}

/// Chooses a cooling time on each page that has one, for Explain; the tables show their beginnings.
void explain_a_cooling_time(MainWindow& window) {
  GridView& seams = static_cast<SeamsPage&>(window.page(DeskPage::seams)).table();
  seams.focusCell(std::min(1, seams.grid().rowCount() - 1), "pass.cooling_time_s");
  GridView& heat = static_cast<HeatPage&>(window.page(DeskPage::heat)).table();
  heat.focusCell(heat.currentRow(), "cooling_time_s");
  for (GridView* table : {&seams, &heat}) table->horizontalScrollBar()->setValue(0);
}

int make_pictures(const DeskOptions& options) {
  MainWindow window;
  window.resize(options.size.value_or(QSize(1280, 800)));
  window.document().open(options.plan);
  window.show();
  window.evaluator().wait();
  window.setExplainShown(window.width() >= 1500);
  if (window.width() >= 1500) explain_a_cooling_time(window);
  if (!options.log.isEmpty()) {
    auto& records = static_cast<RecordsPage&>(window.page(DeskPage::records));
    records.importLogs({options.log}, file_beside(options.log, QStringLiteral("manual-seams.csv")));
    records.job().wait();
    if (!records.logs())
      throw InputError(options.log.toStdString(), "a log that can't be read", "an arc log");
  }
  auto& line = static_cast<LinePage&>(window.page(DeskPage::line));
  if (const QString orders = file_beside(options.plan, QStringLiteral("orders.csv")); !orders.isEmpty()) {
    line.readOrders(orders);
    line.job().wait();
  }
  for (const QString& path : take_pictures(window, options.pictures_to))
    std::printf("%s\n", qPrintable(path));
  return done;
}

/// One window until it closes or another language is chosen; `open`: what the window before had open.
int open_window_once(const DeskOptions& options, std::optional<OpenPlan>& open) {
  MainWindow window(Recovery::standardFolder());
  window.readSettings();
  if (options.size && !open) window.resize(*options.size);
  window.show();
  QTimer::singleShot(0, &window, [&] {
    if (open) return window.takeUp(*open);
    window.offerRecovery();
    if (!options.plan.isEmpty() && !window.document().isModified()) window.openPlan(options.plan);
    if (!options.log.isEmpty()) window.importLog(options.log);
    // The first start, with nothing to look at: not over a person's own plan, nor over what was recovered.
    if (TourPanel::isNew() && options.plan.isEmpty() && options.log.isEmpty() && window.document().isEmpty())
      TourPanel::start(window);
  });
  QObject::connect(&window, &MainWindow::languageChosen, &window,
                   [] { QApplication::exit(another_language); });
  const int code = QApplication::exec();
  if (code == another_language) {
    window.writeSettings();
    open = window.openPlanNow();
  }
  return code;
}

int open_window(const DeskOptions& options) {
  std::optional<OpenPlan> open;
  for (;;) {
    const int code = open_window_once(options, open);
    if (code != another_language) return code;
    choose_language(QSettings().value("view/language").toString());
  }
}

int run(const DeskOptions& options) {
  if (!options.export_to.isEmpty()) return export_report(options);
  if (!options.pictures_to.isEmpty()) return make_pictures(options);
  return open_window(options);
}

}  // namespace

int run_desk(int argc, char** argv) {
  QStringList arguments;
  for (int i = 1; i < argc; ++i) arguments << QString::fromLocal8Bit(argv[i]);
  try {
    const DeskOptions options = read_options(arguments);
    if (options.is_help)
      return std::fputs(desk_usage().toUtf8().constData(), stdout) < 0 ? machine_failed : done;
    if (options.is_version)
      return std::printf("seamtakt-desk %s\n", program_version) < 0 ? machine_failed : done;
    if (has_reference_folder()) check_reference_tables();
    go_offscreen(options);
    QApplication application(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("seamtakt"));
    QCoreApplication::setApplicationName(QStringLiteral("seamtakt-desk"));
    QCoreApplication::setApplicationVersion(QString::fromUtf8(program_version));
    QGuiApplication::setDesktopFileName(QStringLiteral("seamtakt-desk"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/seamtakt.svg")));
    apply_view(options, options.export_to.isEmpty() && options.pictures_to.isEmpty());
    return run(options);
  } catch (const InputError& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return bad_input;
  } catch (const std::exception& error) {
    std::fprintf(stderr, "seamtakt-desk: %s\n", error.what());
    return machine_failed;
  }
}

}  // namespace seamtakt::desk
