#pragma once

#include <QObject>
#include <QStringList>
#include <memory>

#include "document/document.hpp"
#include "jobs/trace.hpp"
#include "jobs/worker.hpp"
#include "records/actual/cycle_actual.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::desk {

/// What is to be imported, as a person chose it; paths of files, empty: none.
struct ImportRequest {
  QStringList logs;
  QString columns;     ///< names, units and job numbers of the logs' columns
  QString unit_times;  ///< which unit was in the cell from when to when
  QString manual;      ///< the manual seams
};

/// What was read from logs: pass records with their verdicts, and their samples.
struct ImportedLogs {
  PlanPtr plan;
  ImportRequest request;
  AuditResult audit;
  CycleActual cycles;  ///< the units beside their planned cycles; refers to the audit's passes
  TraceMap traces;
};
using ImportedLogsPtr = std::shared_ptr<const ImportedLogs>;

/// The trace of a pass record, and its stretch; nullptr where no samples were kept.
const Trace* trace_of(const ImportedLogs& logs, const PassRecord& record, std::size_t& begin,
                      std::size_t& end);

/// Reads arc logs on a thread of its own, with progress; it can be stopped at any time and then leaves
/// nothing.
class LogImport : public QObject {
  Q_OBJECT

 public:
  explicit LogImport(QObject* parent = nullptr);

  void start(const ImportRequest& request, const PlanPtr& plan);
  void cancel() { worker_.stop(); }
  /// Ends the import; nothing of it follows, not even that it was cancelled.
  void drop() { worker_.drop(); }
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  /// Bytes taken and in all (0: not known).
  void progress(qulonglong taken, qulonglong total);
  void finished(seamtakt::desk::ImportedLogsPtr logs);
  void cancelled();
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
