#pragma once

#include <cstddef>
#include <functional>
#include <memory>

namespace seamtakt {

/// Threads that live as long as the pool and share out the pieces of one job after another. They are kept
/// because a thread started for a few milliseconds of work often lands on a core that is busy already.
class ThreadPool {
 public:
  /// Work on the items begin <= i < end.
  using Piece = std::function<void(std::size_t begin, std::size_t end)>;

  /// `threads` work on a job, the caller among them; 0: as many as the machine runs at once.
  explicit ThreadPool(unsigned threads = 0);
  ~ThreadPool();
  ThreadPool(const ThreadPool&) = delete;
  ThreadPool& operator=(const ThreadPool&) = delete;

  unsigned threads() const;

  /// Calls `piece` for [0, grain), [grain, 2 grain) ... up to count, on at most `most_threads` threads (0:
  /// all), and returns when all are done. The pieces depend on count and grain alone, so the results that
  /// each writes to its own place are the same for any number of threads. If pieces throw, the exception of
  /// the first of them (by index, not by time) is rethrown here, and pieces not yet begun are skipped. Called
  /// within a piece, or while another thread uses the pool, it runs the pieces on the calling thread. A grain
  /// of 0 counts as 1.
  void parallel_for(std::size_t count, std::size_t grain, const Piece& piece, unsigned most_threads = 0);

  /// Whether this thread works on a piece of some pool, so that parallel_for would use no other thread.
  static bool is_inside_piece();

  /// The program's one pool, made at the first call.
  static ThreadPool& shared();

 private:
  class Workers;
  std::unique_ptr<Workers> workers_;
};

}  // namespace seamtakt
