#pragma once

#include <string>
#include <vector>

#include "store_fixture.hpp"
#include "wrapped_backend.hpp"

namespace seamtakt::test {

bool long_tests();

/// What a planted fault does to a backend; nothing by default.
using Wrap = std::function<std::unique_ptr<LedgerBackend>(std::unique_ptr<LedgerBackend>)>;
std::unique_ptr<LedgerBackend> unchanged(std::unique_ptr<LedgerBackend> backend);

/// Several threads, each with a connection of its own, add batches. Messages of what went wrong.
std::vector<std::string> write_at_once(const std::string& uri, const SigningKey& key, int writers,
                                       int batches, int records_a_batch, const Wrap& wrap = unchanged);

/// Makes an empty store with its genesis and one record.
void begin_store(const std::string& uri, KeyRing& keys);

/// Writers as processes of their own, which can be killed.
class WriterProcesses {
 public:
  enum class Acknowledges { after_commit, before_commit };
  WriterProcesses(const std::string& uri, const SigningKey& key, int writers, Acknowledges when);
  ~WriterProcesses();
  WriterProcesses(const WriterProcesses&) = delete;
  WriterProcesses& operator=(const WriterProcesses&) = delete;

  /// Waits until one of them has acknowledged something, a minute at most.
  void await_first();
  /// Kills all with SIGKILL so long after that; the anchors of what they had acknowledged.
  std::vector<std::string> kill_after_ms(int ms);
  /// Waits until they end by themselves, because their store is gone; what they had acknowledged.
  std::vector<std::string> wait();

 private:
  std::vector<std::string> collect();
  std::vector<int> children_;
  int output_ = -1;
};

}  // namespace seamtakt::test
