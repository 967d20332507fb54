#pragma once

#include <QObject>
#include <memory>

#include "document/document.hpp"
#include "exchange/drawing/drawing_import.hpp"
#include "jobs/worker.hpp"

namespace seamtakt::desk {

/// A drawing as the program read it, and how it was asked.
struct ProgramReading {
  std::string up;
  double gap_mm = 1;
  DrawingResult result;
  PlanPtr picture;  ///< of one weldment: its solids, and a seam for each side
};
using ProgramReadingPtr = std::shared_ptr<const ProgramReading>;

/// A drawing that is to be imported, and how.
struct DrawingQuestion {
  QString path;
  std::string kept_path;  ///< as the plan keeps it
  double gap_mm = 1;
  ProgramReadingPtr reading;  ///< where the file was read before; another `up` reads it again
  DrawingImportOptions options;
};

/// A drawing as it was read, and what it would make of the plan.
struct ReadDrawing {
  PlanPtr plan;
  ProgramReadingPtr reading;
  DrawingImport import;  ///< borrows the reading
};
using ReadDrawingPtr = std::shared_ptr<const ReadDrawing>;

/// Reads drawings with seamtakt-drawing, a process that is killed when nobody waits for it any more, and
/// proposes seams. Only the newest question counts.
class DrawingReading : public QObject {
  Q_OBJECT

 public:
  explicit DrawingReading(QObject* parent = nullptr);

  void start(const DrawingQuestion& question, const PlanPtr& plan);
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  /// The file is read, the import isn't worked out yet: also where that is refused.
  void read(seamtakt::desk::ProgramReadingPtr reading);
  void finished(seamtakt::desk::ReadDrawingPtr drawing);
  void failed(const QString& reason);

 private:
  ProgramReadingPtr readFile(const DrawingQuestion& question) const;

  Worker worker_;
};

/// A file that ends as a drawing's does: STEP.
bool is_drawing_file(const QString& path);

}  // namespace seamtakt::desk
