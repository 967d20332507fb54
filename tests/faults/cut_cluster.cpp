#include "cut_cluster.hpp"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>

#include "base/postgres_programs.hpp"

namespace seamtakt {

namespace {

int port() {
  return 54800 + getpid() % 90;
}

bool run(const std::string& command) {
  return std::system(("timeout -k 5 60 sh -c '" + command + "' >/dev/null 2>&1").c_str()) == 0;
}

/// The server refuses root.
std::string as_its_user(const std::string& command) {
  return "runuser -u postgres -- " + postgres_programs() + "/" + command;
}

}  // namespace

bool CutCluster::is_there() {
  return !postgres_programs().empty() && std::system("id postgres >/dev/null 2>&1") == 0;
}

std::string CutCluster::uri() const {
  return "postgresql://postgres@127.0.0.1:" + std::to_string(port()) + "/cuts";
}

std::string CutCluster::server(const std::string& what) const {
  return as_its_user(
      "pg_ctl -w -t 50 -D " + folder_ + "/data -l /dev/null -o \"-p " + std::to_string(port()) +
      " -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c max_connections=8\" " + what);
}

std::string CutCluster::make(const std::string& command) const {
  // Its user must come through to the folder.
  std::filesystem::permissions(std::filesystem::path(folder_).parent_path(),
                               std::filesystem::perms::others_exec, std::filesystem::perm_options::add);
  const std::string data = folder_ + "/data";
  if (!run("mkdir " + data + " && chown postgres " + data)) return "no folder for the cluster";
  if (!run(as_its_user(
          "initdb -A trust -U postgres -E UTF8 --locale=C.UTF-8 --data-checksums --wal-segsize=1 -D " +
          data)))
    return "initdb failed";
  if (!start()) return "the server doesn't start";
  const bool made = run("psql -X -q -h 127.0.0.1 -p " + std::to_string(port()) +
                        " -U postgres -c \"CREATE DATABASE cuts\"");
  const bool done = made && std::system(command.c_str()) == 0;
  if (!run(server("-m fast stop"))) return "the server doesn't stop";
  return done ? "" : made ? command + " failed" : "no database";
}

bool CutCluster::start() const {
  return run(server("start"));
}
void CutCluster::stop() const {
  run(server("-m immediate stop"));
}

std::string CutCluster::while_it_runs(const std::string& command) const {
  return "sh -c '" + server("start") + " >/dev/null 2>&1 && " + command + "; code=$?; " +
         server("-m immediate stop") + " >/dev/null 2>&1; exit $code'";
}

}  // namespace seamtakt
