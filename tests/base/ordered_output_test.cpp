#include "base/files/ordered_output.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <stdexcept>
#include <string>
#include <thread>

#include "base/parallel/thread_pool.hpp"

using namespace seamtakt;

namespace {

std::string numbers_of(ThreadPool& pool, std::size_t count) {
  std::string text;
  const TextSink sink = [&](std::string_view part) { text += part; };
  OrderedOutput output(sink);
  ObjectPool<std::string> spares;
  pool.parallel_for(count, 1, [&](std::size_t begin, std::size_t) {
    std::unique_ptr<std::string> own = spares.take();
    output.put(begin, [&] {
      *own = std::to_string(begin) + ",";
      return std::string_view(*own);
    });
    spares.give_back(std::move(own));
  });
  return text;
}

TEST(OrderedOutput, any_number_of_threads_gives_the_same_order) {
  std::string wanted;
  for (std::size_t i = 0; i < 2000; ++i) wanted += std::to_string(i) + ",";
  for (const unsigned threads : {1u, 2u, 5u}) {
    ThreadPool pool(threads);
    EXPECT_EQ(numbers_of(pool, 2000), wanted) << threads;
  }
}

TEST(OrderedOutput, a_piece_that_fails_lets_nobody_wait_and_ends_the_text) {
  for (const unsigned threads : {1u, 2u, 5u}) {
    ThreadPool pool(threads);
    std::string text;
    const TextSink sink = [&](std::string_view part) { text += part; };
    OrderedOutput output(sink);
    const auto work = [&](std::size_t begin, std::size_t) {
      output.put(begin, [&]() -> std::string_view {
        if (begin == 40) throw std::runtime_error("no paper");
        return "x";
      });
    };
    EXPECT_THROW(pool.parallel_for(1000, 1, work), std::runtime_error) << threads;
    EXPECT_EQ(text, std::string(40, 'x')) << threads;
  }
}

TEST(OrderedOutput, text_before_a_piece_that_fails_is_written_however_late) {
  ThreadPool pool(3);
  for (int run = 0; run < 20; ++run) {
    std::string text;
    const TextSink sink = [&](std::string_view part) { text += part; };
    OrderedOutput output(sink);
    const auto work = [&](std::size_t begin, std::size_t) {
      output.put(begin, [&]() -> std::string_view {
        if (begin == 2) throw std::runtime_error("no paper");
        if (begin < 2) std::this_thread::sleep_for(std::chrono::milliseconds(2 - begin));
        return "x";
      });
    };
    EXPECT_THROW(pool.parallel_for(3, 1, work), std::runtime_error);
    EXPECT_EQ(text, "xx");
  }
}

}  // namespace
