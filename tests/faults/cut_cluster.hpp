#pragma once

#include <string>

namespace seamtakt {

/// A small PostgreSQL cluster in a folder of a disk whose power will go. Commands are for the shell.
class CutCluster {
 public:
  explicit CutCluster(std::string folder) : folder_(std::move(folder)) {}
  static bool is_there();

  std::string uri() const;
  /// Makes the cluster with an empty database, runs a command while the server runs, and stops it; returns
  /// the error, or an empty text.
  std::string make(const std::string& command) const;
  bool start() const;
  void stop() const;
  /// A command that starts the server, runs another one, and stops the server without a checkpoint.
  std::string while_it_runs(const std::string& command) const;

 private:
  std::string server(const std::string& what) const;
  std::string folder_;
};

}  // namespace seamtakt
