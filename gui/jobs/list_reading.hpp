#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <vector>

#include "document/document.hpp"
#include "exchange/lists/list_import.hpp"
#include "jobs/worker.hpp"

namespace seamtakt::desk {

/// A list that is to be read, and how.
struct ListQuestion {
  QString path;
  std::shared_ptr<const Book> book;    ///< where the file was read before; nullptr: it is read
  std::optional<ListMapping> mapping;  ///< as a person chose it; nothing: by the heads
  ListColumnsFile remembered;
  ListImportOptions options;
};

/// A list as it was read, and what it would make of the plan.
struct ReadList {
  PlanPtr plan;
  std::shared_ptr<const Book> book;
  ListMapping mapping;
  ListImport import;
  std::vector<Sentence> notes;
};
using ReadListPtr = std::shared_ptr<const ReadList>;

/// Reads lists of seams or schedules on a thread of its own. Only the newest question counts.
class ListReading : public QObject {
  Q_OBJECT

 public:
  explicit ListReading(QObject* parent = nullptr);

  void start(const ListQuestion& question, const PlanPtr& plan);
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void finished(seamtakt::desk::ReadListPtr list);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

/// Whether a file holds a list of seams, judged by its heads; of a CSV only its beginning is read, since a
/// long one may be an arc log.
bool is_seam_list(const QString& path);

}  // namespace seamtakt::desk
