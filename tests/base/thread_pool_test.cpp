#include "base/parallel/thread_pool.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <mutex>
#include <numeric>
#include <set>
#include <stdexcept>
#include <thread>
#include <vector>

using namespace seamtakt;

TEST(ThreadPoolTest, every_item_is_worked_on_once) {
  ThreadPool pool(4);
  EXPECT_EQ(pool.threads(), 4u);
  for (std::size_t count : {0u, 1u, 7u, 64u, 1000u}) {
    for (std::size_t grain : {0u, 1u, 3u, 64u, 5000u}) {
      std::vector<std::atomic<int>> visits(count);
      pool.parallel_for(count, grain, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) ++visits[i];
      });
      for (const auto& visit : visits) ASSERT_EQ(visit, 1) << count << "/" << grain;
    }
  }
}

TEST(ThreadPoolTest, a_thread_knows_whether_it_is_inside_a_piece) {
  for (const unsigned threads : {1u, 3u}) {
    ThreadPool pool(threads);
    std::atomic<int> inside = 0;
    EXPECT_FALSE(ThreadPool::is_inside_piece());
    pool.parallel_for(20, 1, [&](std::size_t, std::size_t) { inside += ThreadPool::is_inside_piece(); });
    EXPECT_EQ(inside, 20) << threads;
    EXPECT_FALSE(ThreadPool::is_inside_piece());
  }
}

TEST(ThreadPoolTest, pieces_do_not_depend_on_the_number_of_threads) {
  using Pieces = std::set<std::pair<std::size_t, std::size_t>>;
  const auto pieces_with = [](unsigned threads, unsigned most) {
    ThreadPool pool(threads);
    Pieces pieces;
    std::mutex mutex;
    pool.parallel_for(
        103, 10,
        [&](std::size_t begin, std::size_t end) {
          const std::lock_guard guard(mutex);
          pieces.insert({begin, end});
        },
        most);
    return pieces;
  };
  const Pieces one = pieces_with(1, 0);
  EXPECT_EQ(one.size(), 11u);
  EXPECT_TRUE(one.contains({100, 103}));
  EXPECT_EQ(pieces_with(2, 0), one);
  EXPECT_EQ(pieces_with(7, 0), one);
  EXPECT_EQ(pieces_with(7, 2), one);
}

TEST(ThreadPoolTest, several_threads_take_part) {
  ThreadPool pool(3);
  std::set<std::thread::id> seen;
  std::mutex mutex;
  std::atomic<int> waiting = 0;
  pool.parallel_for(3, 1, [&](std::size_t, std::size_t) {
    // Each piece waits until all three are at work: ends only where three threads do work.
    ++waiting;
    while (waiting < 3) std::this_thread::yield();
    const std::lock_guard guard(mutex);
    seen.insert(std::this_thread::get_id());
  });
  EXPECT_EQ(seen.size(), 3u);
}

TEST(ThreadPoolTest, no_more_threads_than_asked_for_take_part) {
  ThreadPool pool(4);
  std::atomic<int> now = 0, most = 0;
  pool.parallel_for(
      200, 1,
      [&](std::size_t, std::size_t) {
        const int together = ++now;
        for (int seen = most; together > seen && !most.compare_exchange_weak(seen, together);) {
        }
        std::this_thread::yield();
        --now;
      },
      2);
  EXPECT_LE(most, 2);
}

TEST(ThreadPoolTest, the_first_failure_by_place_reaches_the_caller) {
  ThreadPool pool(4);
  for (int round = 0; round < 200; ++round) {
    std::string what;
    try {
      pool.parallel_for(100, 1, [](std::size_t begin, std::size_t) {
        if (begin == 17 || begin == 18 || begin > 40) throw std::runtime_error(std::to_string(begin));
      });
    } catch (const std::runtime_error& error) {
      what = error.what();
    }
    ASSERT_EQ(what, "17");
  }
  int done = 0;
  pool.parallel_for(1, 1, [&](std::size_t, std::size_t) { ++done; });
  EXPECT_EQ(done, 1);
}

TEST(ThreadPoolTest, a_piece_may_use_the_pool_itself) {
  ThreadPool pool(3);
  std::atomic<int> total = 0;
  pool.parallel_for(8, 1, [&](std::size_t, std::size_t) {
    pool.parallel_for(10, 3,
                      [&](std::size_t begin, std::size_t end) { total += static_cast<int>(end - begin); });
  });
  EXPECT_EQ(total, 80);
}

TEST(ThreadPoolTest, callers_at_the_same_time_all_get_their_work_done) {
  ThreadPool pool(3);
  std::atomic<long> total = 0;
  {
    std::vector<std::jthread> callers;
    for (int i = 0; i < 4; ++i) {
      callers.emplace_back([&] {
        for (int round = 0; round < 100; ++round) {
          pool.parallel_for(
              50, 7, [&](std::size_t begin, std::size_t end) { total += static_cast<long>(end - begin); });
        }
      });
    }
  }
  EXPECT_EQ(total, 4 * 100 * 50);
}

TEST(ThreadPoolTest, many_short_jobs_leave_nothing_behind) {
  ThreadPool& pool = ThreadPool::shared();
  std::vector<double> values(64);
  for (int round = 0; round < 5000; ++round) {
    pool.parallel_for(values.size(), 16, [&](std::size_t begin, std::size_t end) {
      for (std::size_t i = begin; i < end; ++i) values[i] = round;
    });
    ASSERT_EQ(std::accumulate(values.begin(), values.end(), 0.0), 64.0 * round);
  }
}
