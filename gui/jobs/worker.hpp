#pragma once

#include <QObject>
#include <QString>
#include <QThreadPool>
#include <atomic>
#include <functional>

namespace seamtakt::desk {

/// Does a job's work on a thread of its own, one piece at a time. Only the newest piece counts: messages of
/// an outdated or dropped one are ignored on purpose. All methods except `say` and `is…` belong to the GUI
/// thread. A job keeps it as its last member: it then ends before anything that the work uses.
class Worker : public QObject {
 public:
  /// Done on the GUI thread.
  using Said = std::function<void()>;
  /// A piece of work, given its number; what it returns is done last, when the worker is free again.
  using Work = std::function<Said(unsigned run)>;
  using Failed = std::function<void(const QString& reason)>;
  /// Thrown by work that was asked to stop and has nothing to show.
  struct Stopped {};

  explicit Worker(Failed failed, Said stopped = {});
  ~Worker() override;

  /// Begins when the piece before has ended.
  void queue(Work work);
  /// The same, and asks the piece before to stop.
  void start(Work work);
  /// Asks the newest piece to end early, also where it hasn't begun.
  void stop() { stop_ = is_next_stopped_ = true; }
  /// Ends the work; nothing of it follows.
  void drop();
  /// The newest piece isn't done yet.
  bool isBusy() const { return is_busy_; }
  /// Waits for the newest piece and for what it says.
  void wait();

  bool isStopped() const { return stop_; }
  bool isNewest(unsigned run) const { return run == run_; }
  /// From within the work: a word on its way.
  void say(unsigned run, Said said);

 private:
  void begin();
  Said done(const Work& work, unsigned run) const;
  void end(unsigned run, const Said& last);

  Failed failed_;
  Said stopped_;
  Work next_;
  std::atomic<bool> stop_ = false;
  std::atomic<unsigned> run_ = 0;
  bool is_next_stopped_ = false, is_busy_ = false, is_thread_taken_ = false;
  QThreadPool thread_;
};

}  // namespace seamtakt::desk
