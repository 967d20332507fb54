#include "jobs/store_job.hpp"

#include "base/files/atomic_save.hpp"
#include "document/shown_text.hpp"
#include "ledger/store/refusal_sentence.hpp"

namespace seamtakt::desk {

namespace {
constexpr std::size_t largest_anchor_file = 64u << 20;
}

StoreJob::StoreJob(QObject* parent)
    : QObject(parent),
      worker_([this](const QString& reason) { emit failed(reason); }, [this] { emit cancelled(); }) {}

void StoreJob::tell(unsigned run, bool is_listing, std::uint64_t done, std::uint64_t all) {
  if (worker_.isStopped()) throw Worker::Stopped();
  worker_.say(run, [this, is_listing, done, all] { emit progress(is_listing, done, all); });
}

/// For reading, and ended at once where the window is closed or another store asked for.
StoreOpening StoreJob::opening() const {
  StoreOpening opening;
  opening.stopped = [this] { return worker_.isStopped(); };
  return opening;
}

void StoreJob::list(StoreAnswer& answer, unsigned run) {
  const Ledger ledger = Ledger::open(answer.question.uri.toStdString(), opening());
  const std::vector<std::string> serials = unit_serials(ledger);
  for (std::size_t i = 0; i < serials.size(); ++i) {
    if (i % 8 == 0) tell(run, true, i, serials.size());
    answer.units.push_back(unit_status(ledger, serials[i]));
  }
  answer.has_all_units = true;
}

StoreAnswerPtr StoreJob::ask(const StoreQuestion& question, unsigned run) {
  auto answer = std::make_shared<StoreAnswer>();
  answer->question = question;
  VerifyOptions options;
  options.progress = [&](std::uint64_t done, std::uint64_t all) { tell(run, false, done, all); };
  if (const std::string file = question.anchors.toStdString(); !file.empty())
    options.anchors = parse_anchors(read_file(file, largest_anchor_file), file);
  try {
    answer->report = verify_store(question.uri.toStdString(), opening(), options);
  } catch (const StoreReadingStopped&) {
    throw Worker::Stopped();
  }
  try {
    list(*answer, run);
  } catch (const StoreReadingStopped&) {
  } catch (const Worker::Stopped&) {
    // The verdict is final; the units so far are shown.
  } catch (const InputError& error) {
    // A store that isn't trusted may not even be readable as one.
    if (answer->report.trusted) throw;
    answer->report.warnings.push_back(refusal_sentence(error));
  } catch (const std::exception& error) {
    if (answer->report.trusted) throw;
    answer->report.warnings.push_back(Sentence::verbatim(error.what()));
  }
  return answer;
}

void StoreJob::start(const StoreQuestion& question) {
  worker_.start([this, question](unsigned run) -> Worker::Said {
    const StoreAnswerPtr answer = ask(question, run);
    return [this, answer] { emit answered(answer); };
  });
}

QString verdict_text(const VerifyReport& report) {
  if (!report.trusted) {
    if (const auto [from, to] = report.first_bad(); from > 0 && from == to)
      return StoreJob::tr("Not trusted: record %1 isn't as it was written.").arg(from);
    return StoreJob::tr("Not trusted: the store isn't as it was written.");
  }
  const QString all = shown_text(Sentence("desk.records.sound"_key, {{"records", report.records}}));
  if (report.anchored_to > 0)
    return StoreJob::tr("Trusted: %1, and the anchor covers the first %2.").arg(all).arg(report.anchored_to);
  return StoreJob::tr(
             "Trusted, but unanchored: %1. Only an anchor kept outside shows that the store wasn't "
             "made anew as a whole.")
      .arg(all);
}

}  // namespace seamtakt::desk
