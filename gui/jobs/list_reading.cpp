#include "jobs/list_reading.hpp"

#include <QFile>

namespace seamtakt::desk {

namespace {

ReadListPtr read_list(const ListQuestion& question, const PlanPtr& plan) {
  auto list = std::make_shared<ReadList>();
  list->plan = plan;
  list->book =
      question.book ? question.book : std::make_shared<const Book>(read_book(question.path.toStdString()));
  const ListKind kind = question.options.kind;
  list->mapping = question.mapping ? *question.mapping : find_list(*list->book, kind, question.remembered);
  list->import = import_list(*plan, *list->book, list->mapping, question.options);
  list->notes = mapping_notes(*list->book, kind, list->mapping);
  return list;
}

/// The whole lines at the beginning of a file.
std::string beginning_of(const QString& path) {
  constexpr qint64 bytes = 1 << 16;
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return {};
  std::string text = file.read(bytes).toStdString();
  const std::size_t end = text.rfind('\n');
  return file.atEnd() || end == std::string::npos ? text : text.substr(0, end + 1);
}

}  // namespace

ListReading::ListReading(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void ListReading::start(const ListQuestion& question, const PlanPtr& plan) {
  worker_.start([this, question, plan](unsigned) -> Worker::Said {
    const ReadListPtr list = read_list(question, plan);
    return [this, list] { emit finished(list); };
  });
}

bool is_seam_list(const QString& path) {
  if (path.endsWith(QStringLiteral(".xlsx"), Qt::CaseInsensitive) ||
      path.endsWith(QStringLiteral(".ods"), Qt::CaseInsensitive))
    return true;
  if (!path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive)) return false;
  try {
    const Book book = parse_book(beginning_of(path), path.toStdString());
    const ListMapping mapping = find_list(book, ListKind::seams);
    // A log names seams and robots too.
    for (const MappedColumn& column : mapping.columns)
      for (const char* key : {"joint", "thickness_mm", "leg_mm", "throat_mm", "path_mm"})
        if (whole_key(column.key) == key) return true;
  } catch (const std::exception&) {
    // What can't be read as a list is none.
  }
  return false;
}

}  // namespace seamtakt::desk
