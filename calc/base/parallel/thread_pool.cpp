#include "base/parallel/thread_pool.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <limits>
#include <mutex>
#include <thread>
#include <vector>

namespace seamtakt {

namespace {

thread_local bool inside_piece = false;

class InsidePiece {
 public:
  InsidePiece() { inside_piece = true; }
  ~InsidePiece() { inside_piece = false; }
  InsidePiece(const InsidePiece&) = delete;
  InsidePiece& operator=(const InsidePiece&) = delete;
};

/// One call of parallel_for. Pieces are taken in ascending order, and when one fails, those before it are
/// still processed; so the first failure by index is always found.
class Job {
 public:
  Job(std::size_t count, std::size_t grain, const ThreadPool::Piece& piece)
      : count_(count), grain_(grain), pieces_(count / grain + (count % grain != 0)), piece_(piece) {}

  std::size_t pieces() const { return pieces_; }

  void work() {
    const InsidePiece mark;
    for (;;) {
      const std::size_t index = next_.fetch_add(1, std::memory_order_relaxed);
      if (index >= pieces_ || index > failed_piece_.load(std::memory_order_relaxed)) return;
      try {
        const std::size_t begin = index * grain_;
        piece_(begin, begin + std::min(grain_, count_ - begin));
      } catch (...) {
        note_failure(index);
      }
    }
  }

  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

 private:
  void note_failure(std::size_t index) {
    const std::lock_guard guard(mutex_);
    if (index >= failed_piece_.load(std::memory_order_relaxed)) return;
    failed_piece_.store(index, std::memory_order_relaxed);
    failure_ = std::current_exception();
  }

  std::size_t count_, grain_, pieces_;
  const ThreadPool::Piece& piece_;
  std::atomic<std::size_t> next_ = 0;
  std::mutex mutex_;
  std::atomic<std::size_t> failed_piece_ = std::numeric_limits<std::size_t>::max();
  std::exception_ptr failure_;
};

}  // namespace

class ThreadPool::Workers {
 public:
  explicit Workers(unsigned count) {
    for (unsigned i = 0; i < count; ++i) {
      threads_.emplace_back([this](const std::stop_token& stop) { serve(stop); });
    }
  }

  unsigned count() const { return static_cast<unsigned>(threads_.size()); }

  /// False where another thread has the workers.
  bool run(Job& job, std::size_t helpers) {
    const std::unique_lock turn(turn_, std::try_to_lock);
    if (!turn.owns_lock()) return false;
    {
      const std::lock_guard guard(mutex_);
      job_ = &job;
      places_ = std::min<std::size_t>(helpers, threads_.size());
    }
    wake_.notify_all();
    job.work();
    std::unique_lock lock(mutex_);
    places_ = 0;
    done_.wait(lock, [this] { return working_ == 0; });
    job_ = nullptr;
    return true;
  }

 private:
  void serve(const std::stop_token& stop) {
    std::unique_lock lock(mutex_);
    while (wake_.wait(lock, stop, [this] { return places_ > 0; })) {
      Job* job = job_;
      --places_;
      ++working_;
      lock.unlock();
      job->work();
      lock.lock();
      if (--working_ == 0) done_.notify_one();
    }
  }

  std::mutex turn_, mutex_;
  std::condition_variable_any wake_;
  std::condition_variable_any done_;
  Job* job_ = nullptr;
  std::size_t places_ = 0;   ///< workers that may still join the job
  std::size_t working_ = 0;  ///< workers that are at it
  std::vector<std::jthread> threads_;
};

ThreadPool::ThreadPool(unsigned threads) {
  const unsigned wanted = threads > 0 ? threads : std::max(1u, std::thread::hardware_concurrency());
  workers_ = std::make_unique<Workers>(wanted - 1);
}

ThreadPool::~ThreadPool() = default;

unsigned ThreadPool::threads() const {
  return workers_->count() + 1;
}

void ThreadPool::parallel_for(std::size_t count, std::size_t grain, const Piece& piece,
                              unsigned most_threads) {
  if (count == 0) return;
  Job job(count, std::max<std::size_t>(grain, 1), piece);
  const std::size_t most = std::min<std::size_t>(most_threads > 0 ? most_threads : threads(), job.pieces());
  // A piece that asks for more must not wait for workers that may be waiting for it.
  if (inside_piece) {
    for (std::size_t begin = 0, step = std::max<std::size_t>(grain, 1); begin < count;) {
      const std::size_t end = begin + std::min(step, count - begin);
      piece(begin, end);
      begin = end;
    }
    return;
  }
  if (most < 2 || !workers_->run(job, most - 1)) job.work();
  job.rethrow();
}

bool ThreadPool::is_inside_piece() {
  return inside_piece;
}

ThreadPool& ThreadPool::shared() {
  static ThreadPool pool;
  return pool;
}

}  // namespace seamtakt
