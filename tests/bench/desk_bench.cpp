// How fast the desk draws. Prints one JSON line a measurement: name, median and worst of the runs, in ms.
//   desk_bench PLAN [--samples N]
#include <qcustomplot.h>

#include <QApplication>
#include <QElapsedTimer>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "app/main_window.hpp"
#include "app/theme_choice.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/trace_view.hpp"
#include "plots/window_plot.hpp"

namespace {

using namespace seamtakt;
using namespace seamtakt::desk;

void measure(const char* name, int runs, const std::function<void(int)>& work) {
  std::vector<double> ms;
  for (int run = 0; run < runs; ++run) {
    QElapsedTimer timer;
    timer.start();
    work(run);
    ms.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
  }
  std::sort(ms.begin(), ms.end());
  std::printf("{\"measurement\": \"%s\", \"runs\": %d, \"median_ms\": %.1f, \"worst_ms\": %.1f}\n", name,
              runs, ms[ms.size() / 2], ms.back());
  std::fflush(stdout);
}

void bench_window(const QString& path) {
  measure("window: made, demo opened and evaluated, first picture", 5, [&](int) {
    MainWindow window;
    window.show();
    window.document().open(path);
    window.evaluator().wait();
    window.grab();
  });
}

/// A map of a million points computed again and drawn, as while a limit or the voltage is changed.
void bench_map(const QString& path) {
  Plan plan = load_plan(path.toStdString());
  WindowPlot plot;
  plot.resize(900, 640);
  plot.show();
  const Schedule& schedule = plan.schedules[1];
  const std::string seam = [&] {
    for (const Weldment& weldment : plan.weldments)
      for (const Seam& each : weldment.seams)
        if (each.schedules == std::vector<std::string>{schedule.id} && each.leg_mm)
          return weldment.id + "/" + each.id;
    return std::string();
  }();
  WindowOptions options;
  options.size = 1000;
  const double volts = schedule.arc_voltage_V;
  measure("operating window: 10^6 points computed and drawn", 15, [&](int run) {
    plan.schedules[1].arc_voltage_V = volts + 0.05 * run;
    window_map_into(plot.map(), plan, plan.schedules[1].id, seam, options);
    plot.showMap("heat_input_kJ_mm");
    plot.plot().replot();
  });
  measure("operating window: the computation alone", 15,
          [&](int) { window_map_into(plot.map(), plan, plan.schedules[1].id, seam, options); });
}

void bench_trace(std::size_t samples) {
  Trace trace;
  std::uint32_t noise = 1;
  for (std::size_t i = 0; i < samples; ++i) {
    noise = noise * 1664525u + 1013904223u;
    const float wobble = static_cast<float>(noise >> 16) / 65536.0f;
    const float values[Trace::channels] = {250 + 40 * wobble, 28 + 3 * wobble, 9, 8};
    trace.add(static_cast<double>(i) / 5000, static_cast<std::uint32_t>(i + 2), values, 0b0011);
  }
  QElapsedTimer timer;
  timer.start();
  trace.build();
  std::printf("{\"measurement\": \"trace: pyramid of %zu samples built\", \"ms\": %lld}\n", samples,
              static_cast<long long>(timer.elapsed()));
  TraceView view;
  view.resize(1400, 700);
  view.show();
  view.setTrace(&trace, 0, trace.size(), {}, "bench");
  measure("trace: a frame while panning and zooming", 60, [&](int run) {
    const double span = view.to() - view.from();
    if (run % 3 == 0)
      view.zoom(run < 30 ? 1.7 : 1 / 1.7, view.from() + span * 0.37);
    else
      view.pan(span * 0.05);
    view.grab();
  });
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  if (argc < 2) {
    std::fputs("desk_bench PLAN [--samples N]\n", stderr);
    return 2;
  }
  seamtakt::desk::choose_theme("light");
  std::size_t samples = 50'000'000;
  if (argc >= 4 && std::string_view(argv[2]) == "--samples")
    samples = static_cast<std::size_t>(std::atoll(argv[3]));
  bench_window(argv[1]);
  bench_map(argv[1]);
  bench_trace(samples);
  return 0;
}
