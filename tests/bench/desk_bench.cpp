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
#include <memory>

#include "app/main_window.hpp"
#include "app/theme_choice.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/axonometric_view.hpp"
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

/// 60 plates in a grid of cells with 160 seams at their feet, each in a few stitches or whole.
Plan plan_of_plates() {
  Plan plan;
  Weldment& weldment = plan.weldments.emplace_back();
  weldment.id = "bench";
  const auto add_plate = [&](Point_mm origin, Point_mm u, Point_mm v, double wide, double high) {
    Plate plate;
    plate.id = "P" + std::to_string(weldment.plates.size() + 1);
    plate.origin_mm = origin;
    plate.u = u;
    plate.v = v;
    plate.outline_mm = {{0, 0}, {wide, 0}, {wide, high}, {0, high}};
    plate.thickness_mm = 10;
    weldment.plates.push_back(plate);
  };
  const auto add_seam = [&](Point_mm a, Point_mm b) {
    Seam seam;
    seam.id = "S" + std::to_string(weldment.seams.size() + 1);
    seam.thickness_mm = {10, 10};
    seam.path_mm = {a, b};
    if (weldment.seams.size() % 2 == 0) seam.intermittent = Intermittent{60, 90, {}};
    weldment.seams.push_back(seam);
  };
  add_plate({0, 0, 0}, {1, 0, 0}, {0, 1, 0}, 6000, 2000);
  for (int i = 0; i < 29; ++i) {
    const double x = 100 + 200 * i;
    add_plate({x, 0, 10}, {0, 1, 0}, {0, 0, 1}, 2000, 400);
    add_seam({x, 0, 10}, {x, 2000, 10});
    add_seam({x + 10, 0, 10}, {x + 10, 2000, 10});
    add_seam({x, 60, 10}, {x, 60, 400});
  }
  for (int i = 0; i < 30; ++i) {
    const double x = 110 + 190 * (i % 15), y = i < 15 ? 600 : 1300;
    add_plate({x, y, 10}, {1, 0, 0}, {0, 0, 1}, 170, 250);
    add_seam({x, y, 10}, {x + 170, y, 10});
    add_seam({x, y - 10, 10}, {x + 170, y - 10, 10});
  }
  while (weldment.seams.size() < 160) {
    const double x = 110 + 40 * static_cast<double>(weldment.seams.size() % 100);
    add_seam({x, 10, 10}, {x + 150, 10, 10});
  }
  return plan;
}

/// A weldment that is turned by the hand: each frame looks from another side and is painted.
void bench_space() {
  const auto plan = std::make_shared<const Plan>(plan_of_plates());
  const Weldment& weldment = plan->weldments[0];
  std::vector<DrawnSeam> seams(weldment.seams.size());
  for (std::size_t i = 0; i < seams.size(); ++i) {
    seams[i].name = QString::fromStdString(weldment.seams[i].id);
    if (i % 20 == 0) seams[i].severity = Severity::fail;
  }
  AxonometricView view;
  view.resize(900, 640);
  view.show();
  measure("weldment in space: 60 plates and 160 seams made ready", 10, [&](int) {
    view.setWeldment(nullptr, 0);
    view.setWeldment(plan, 0);
    static_cast<void>(view.scene());
  });
  view.setSeams(seams);
  view.setPicked(3);
  QImage frame(view.size(), QImage::Format_ARGB32_Premultiplied);
  measure("weldment in space: a frame while turning, 60 plates and 160 seams", 120, [&](int run) {
    view.setAngles({3.0 * run, 20 + 40 * std::sin(0.1 * run)});
    frame.fill(Qt::white);
    view.render(&frame);
  });
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
  bench_space();
  bench_trace(samples);
  return 0;
}
