#include "jobs/drawing_reading.hpp"

#include "exchange/drawing/drawing_program.hpp"
#include "exchange/drawing/drawing_solids.hpp"

namespace seamtakt::desk {

namespace {

PlanPtr picture_of(const DrawingResult& drawing) {
  Plan plan;
  plan.weldments.push_back(drawn_weldment(drawing));
  return std::make_shared<const Plan>(std::move(plan));
}

}  // namespace

DrawingReading::DrawingReading(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

ProgramReadingPtr DrawingReading::readFile(const DrawingQuestion& question) const {
  DrawingProgramOptions program;
  program.file = question.path.toStdString();
  program.up = question.options.up;
  program.gap_mm = question.gap_mm;
  program.is_stopped = [this] { return worker_.isStopped(); };
  auto reading = std::make_shared<ProgramReading>();
  reading->up = program.up;
  reading->gap_mm = program.gap_mm;
  try {
    reading->result = read_drawing_result(run_drawing_program(program), "seamtakt-drawing");
  } catch (const std::system_error&) {
    if (worker_.isStopped()) throw Worker::Stopped();
    throw;
  }
  reading->result.path = question.kept_path;
  reading->picture = picture_of(reading->result);
  return reading;
}

void DrawingReading::start(const DrawingQuestion& question, const PlanPtr& plan) {
  worker_.start([this, question, plan](unsigned run) -> Worker::Said {
    const bool is_known = question.reading && question.reading->up == question.options.up &&
                          question.reading->gap_mm == question.gap_mm;
    auto drawing = std::make_shared<ReadDrawing>();
    drawing->plan = plan;
    drawing->reading = is_known ? question.reading : readFile(question);
    if (!is_known) worker_.say(run, [this, reading = drawing->reading] { emit read(reading); });
    drawing->import = import_drawing(*plan, drawing->reading->result, question.options);
    return [this, drawing] { emit finished(drawing); };
  });
}

bool is_drawing_file(const QString& path) {
  for (const char* end : {".step", ".stp", ".p21"})
    if (path.endsWith(QLatin1String(end), Qt::CaseInsensitive)) return true;
  return false;
}

}  // namespace seamtakt::desk
