#include "writers.hpp"

#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <mutex>
#include <sstream>
#include <thread>

namespace seamtakt::test {

bool long_tests() {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  return length != nullptr && std::string(length) == "long";
}

std::unique_ptr<LedgerBackend> unchanged(std::unique_ptr<LedgerBackend> backend) {
  return backend;
}

void begin_store(const std::string& uri, KeyRing& keys) {
  Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, true, false});
  ledger.write(keys.provider(), stamp(0), [](LedgerBatch& batch) { batch.add(some_pass(0)); });
}

std::vector<std::string> write_at_once(const std::string& uri, const SigningKey& key, int writers,
                                       int batches, int records_a_batch, const Wrap& wrap) {
  std::mutex mutex;
  std::vector<std::string> errors;
  std::vector<std::thread> threads;
  for (int w = 0; w < writers; ++w)
    threads.emplace_back([&, w] {
      try {
        Ledger ledger(wrap(open_ledger_backend(uri, {StoreOpening::For::writing, false, false})));
        for (int b = 0; b < batches; ++b)
          ledger.write([&](const std::string&, const std::string&) { return key; },
                       stamp(1, "writer " + std::to_string(w)),
                       [&](LedgerBatch& batch) {
                         for (int r = 0; r < records_a_batch; ++r)
                           batch.add(some_pass(w * 100000 + b * 10 + r));
                       });
      } catch (const std::exception& error) {
        const std::lock_guard lock(mutex);
        errors.push_back(error.what());
      }
    });
  for (std::thread& thread : threads) thread.join();
  return errors;
}

namespace {

/// Says what it has committed, or (a planted fault) what it is about to.
class SayingBackend : public WrappedBackend {
 public:
  SayingBackend(std::unique_ptr<LedgerBackend> inner, int output, WriterProcesses::Acknowledges when)
      : WrappedBackend(std::move(inner)), output_(output), when_(when) {}
  void insert_head(const SignedHead& head) override {
    line_ = head.anchor_line() + "\n";
    WrappedBackend::insert_head(head);
  }
  void commit() override {
    if (when_ == WriterProcesses::Acknowledges::before_commit) {
      say();
      std::this_thread::sleep_for(std::chrono::milliseconds(3));
    }
    WrappedBackend::commit();
    if (when_ == WriterProcesses::Acknowledges::after_commit) say();
  }

 private:
  void say() {
    if (::write(output_, line_.data(), line_.size()) < 0) _exit(3);
  }
  int output_;
  WriterProcesses::Acknowledges when_;
  std::string line_;
};

[[noreturn]] void write_without_end(const std::string& uri, const SigningKey& key, int output, int number,
                                    WriterProcesses::Acknowledges when) {
  try {
    Ledger ledger(std::make_unique<SayingBackend>(
        open_ledger_backend(uri, {StoreOpening::For::writing, false, false}), output, when));
    for (int i = 0;; ++i)
      ledger.write([&](const std::string&, const std::string&) { return key; }, stamp(1),
                   [&](LedgerBatch& batch) {
                     batch.add(some_pass(number * 1000000 + i));
                     batch.add(some_pass(number * 1000000 + i + 1));
                   });
  } catch (const std::exception&) {
    _exit(4);
  }
}

}  // namespace

WriterProcesses::WriterProcesses(const std::string& uri, const SigningKey& key, int writers,
                                 Acknowledges when) {
  int ends[2];
  if (pipe(ends) != 0) throw std::runtime_error("no pipe");
  for (int i = 0; i < writers; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      close(ends[0]);
      write_without_end(uri, key, ends[1], i, when);
    }
    children_.push_back(child);
  }
  close(ends[1]);
  output_ = ends[0];
}

WriterProcesses::~WriterProcesses() {
  for (const int child : children_) kill(child, SIGKILL);
  for (const int child : children_) waitpid(child, nullptr, 0);
  close(output_);
}

std::vector<std::string> WriterProcesses::collect() {
  std::string text;
  char block[65536];
  for (ssize_t count = 0; (count = read(output_, block, sizeof block)) > 0;)
    text.append(block, static_cast<std::size_t>(count));
  text.erase(text.rfind('\n') + 1);
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

void WriterProcesses::await_first() {
  pollfd waiting{output_, POLLIN, 0};
  poll(&waiting, 1, 60000);
}

std::vector<std::string> WriterProcesses::kill_after_ms(int ms) {
  await_first();
  std::this_thread::sleep_for(std::chrono::milliseconds(ms));
  for (const int child : children_) kill(child, SIGKILL);
  for (const int child : children_) waitpid(child, nullptr, 0);
  children_.clear();
  return collect();
}

std::vector<std::string> WriterProcesses::wait() {
  auto lines = collect();  // ends when the last of them has
  for (const int child : children_) waitpid(child, nullptr, 0);
  children_.clear();
  return lines;
}

}  // namespace seamtakt::test
