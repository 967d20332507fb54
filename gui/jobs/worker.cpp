#include "jobs/worker.hpp"

#include <QCoreApplication>
#include <QMetaObject>
#include <exception>
#include <utility>

#include "document/shown_text.hpp"
#include "ledger/store/refusal_sentence.hpp"

namespace seamtakt::desk {

Worker::Worker(Failed failed, Said stopped) : failed_(std::move(failed)), stopped_(std::move(stopped)) {
  thread_.setMaxThreadCount(1);
}

Worker::~Worker() {
  drop();
  thread_.waitForDone();
}

void Worker::queue(Work work) {
  ++run_;
  next_ = std::move(work);
  is_next_stopped_ = false;
  is_busy_ = true;
  if (!is_thread_taken_) begin();
}

void Worker::start(Work work) {
  stop_ = true;
  queue(std::move(work));
}

void Worker::drop() {
  ++run_;
  stop_ = true;
  next_ = {};
  is_busy_ = false;
}

void Worker::begin() {
  is_thread_taken_ = true;
  stop_ = is_next_stopped_;
  thread_.start([this, work = std::exchange(next_, {}), run = run_.load()] {
    const Said last = done(work, run);
    QMetaObject::invokeMethod(
        this, [this, run, last] { end(run, last); }, Qt::QueuedConnection);
  });
}

Worker::Said Worker::done(const Work& work, unsigned run) const {
  try {
    return work(run);
  } catch (const Stopped&) {
    return stopped_;
  } catch (const InputError& error) {
    // Made to a text where it is shown: the language is the window's.
    return [this, refusal = refusal_sentence(error)] { failed_(shown_text(refusal)); };
  } catch (const std::exception& error) {
    return [this, reason = QString::fromUtf8(error.what())] { failed_(reason); };
  }
}

void Worker::end(unsigned run, const Said& last) {
  is_thread_taken_ = false;
  if (next_) return begin();
  if (!isNewest(run)) return;  // dropped
  is_busy_ = false;
  if (last) last();
}

void Worker::say(unsigned run, Said said) {
  QMetaObject::invokeMethod(
      this,
      [this, run, said = std::move(said)] {
        if (isNewest(run)) said();
      },
      Qt::QueuedConnection);
}

void Worker::wait() {
  while (is_busy_) {
    thread_.waitForDone();
    QCoreApplication::processEvents();
  }
}

}  // namespace seamtakt::desk
