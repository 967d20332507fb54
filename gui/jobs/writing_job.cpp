#include "jobs/writing_job.hpp"

#include "base/version.hpp"
#include "jobs/evaluator.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/store/store_key.hpp"

namespace seamtakt::desk {

namespace {

WrittenRecord written_by(const WritingOrder& order) {
  const std::string uri = order.uri.toStdString(), who = order.who.trimmed().toStdString(),
                    why = order.why.trimmed().toStdString();
  check_record_text("--who", who, longest_who);
  check_record_text("--why", why, longest_why);
  Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, false, false});
  const HandWriting to{ledger,
                       key_provider(uri, order.key.trimmed().toStdString()),
                       {utc_moment(), who, why, std::string("seamtakt-desk ") + program_version}};
  return order.write(to);
}

}  // namespace

WritingJob::WritingJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

void WritingJob::start(const WritingOrder& order) {
  // Queued: what was begun before is written whole, and no two at once.
  worker_.queue([this, order](unsigned) -> Worker::Said {
    const WrittenRecord record = written_by(order);
    return [this, record] { emit written(record.seq, QString::fromStdString(record.kind)); };
  });
}

}  // namespace seamtakt::desk
