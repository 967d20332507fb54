#include "jobs/browse_job.hpp"

namespace seamtakt::desk {

namespace {

RecordFilter filter_of(const BrowseQuestion& question) {
  const auto text = [](const QString& typed) { return typed.trimmed().toStdString(); };
  RecordFilter filter;
  filter.unit_serial = text(question.unit);
  filter.welder = text(question.welder);
  filter.lot = text(question.lot);
  filter.robot = text(question.robot);
  filter.schedule = text(question.schedule);
  filter.range.set_times(text(question.from), text(question.to));
  return filter;
}

}  // namespace

BrowseJob::BrowseJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void BrowseJob::start(const BrowseQuestion& question) {
  worker_.start([this, question](unsigned) -> Worker::Said {
    auto answer = std::make_shared<BrowseAnswer>();
    answer->question = question;
    const RecordFilter filter = filter_of(question);
    const Ledger ledger = Ledger::open(question.uri.toStdString(), {});
    answer->page = browse_records(ledger, filter, question.first, page_rows, [this] {
      if (worker_.isStopped()) throw Worker::Stopped();
    });
    return [this, answer] { emit answered(answer); };
  });
}

}  // namespace seamtakt::desk
