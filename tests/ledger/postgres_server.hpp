#pragma once

#include <memory>
#include <string>

#include "support/scratch_folder.hpp"

namespace seamtakt::test {

/// A PostgreSQL server of its own for a test: a cluster in a scratch folder, run as the user postgres, on
/// 127.0.0.1. It is ended, by its own process id, with the object.
class PostgresServer {
 public:
  /// nullptr where no server can be had here; `why` says why.
  static std::unique_ptr<PostgresServer> start(std::string& why);
  ~PostgresServer();
  PostgresServer(const PostgresServer&) = delete;
  PostgresServer& operator=(const PostgresServer&) = delete;

  std::string uri(const std::string& database, const std::string& user = "postgres") const;
  /// Runs SQL as the superuser through psql; what it prints.
  std::string sql(const std::string& database, const std::string& text, bool* failed = nullptr) const;
  /// A new database.
  std::string make_database(const std::string& name) const;
  int process_id() const;
  void stop_immediately();
  /// After a stop or a crash, from which it recovers; waits until it answers.
  bool restart(const std::string& options = "");
  bool answers_within_s(int seconds) const;
  bool page_checksums_hold();
  /// "NAME=VALUE ..." for the next start of the server's programs.
  void set_environment(const std::string& variables) { environment_ = variables; }
  /// A folder that the server's user can read.
  std::string folder() const { return folder_ / "pg"; }
  /// What the server has written about itself.
  std::string log() const;

 private:
  PostgresServer() = default;
  int run(const std::string& command) const;
  bool start_once(const std::string& options);
  ScratchFolder folder_;
  std::string programs_, environment_;
  int port_ = 0;
};

}  // namespace seamtakt::test
