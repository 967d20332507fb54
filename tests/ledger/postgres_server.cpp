#include "postgres_server.hpp"

#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include "base/postgres_programs.hpp"

namespace seamtakt::test {

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(path);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

int PostgresServer::run(const std::string& command) const {
  // The server refuses root.
  const std::string as = geteuid() == 0 ? "runuser -u postgres -- " : "";
  const int status = std::system(
      (as + "env " + environment_ + " " + programs_ + "/" + command + " >" + (folder_ / "said.txt") + " 2>&1")
          .c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : 99;
}

std::unique_ptr<PostgresServer> PostgresServer::start(std::string& why) {
  std::unique_ptr<PostgresServer> server(new PostgresServer);
  server->programs_ = postgres_programs();
  if (server->programs_.empty()) {
    why = "no PostgreSQL server is installed";
    return nullptr;
  }
  if (geteuid() == 0 && std::system("id postgres >/dev/null 2>&1") != 0) {
    why = "root without a user postgres can't run a server";
    return nullptr;
  }
  const std::string home = server->folder_ / "pg";
  std::filesystem::create_directory(home);
  if (geteuid() == 0 &&
      std::system(("chown postgres " + home + " && chmod 755 " + server->folder_.path()).c_str()) != 0) {
    why = "the cluster's folder can't be handed over";
    return nullptr;
  }
  if (server->run("initdb -A trust -U postgres -E UTF8 --locale=C.UTF-8 --data-checksums -D " + home +
                  "/data") != 0) {
    why = "initdb failed: " + text_of(server->folder_ / "said.txt");
    return nullptr;
  }
  for (int attempt = 0; attempt < 20; ++attempt) {
    server->port_ = 54900 + (getpid() + 7 * attempt) % 100;
    if (server->start_once("")) return server;
  }
  why = "the server doesn't start: " + text_of(home + "/log");
  return nullptr;
}

bool PostgresServer::restart(const std::string& options) {
  // The children of a server that was killed or stopped at once take their time to end, above all where the
  // machine has much to do; until then the next one doesn't start.
  for (int i = 0; i < 40; ++i) {
    if (start_once(options)) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(500));
  }
  return false;
}

bool PostgresServer::start_once(const std::string& options) {
  const std::string home = folder_ / "pg";
  // syncfs: after a crash a server syncs each of its files by default, thousands where there are many
  // databases.
  return run("pg_ctl -w -t 120 -D " + home + "/data -l " + home + "/log -o \"-k " + home + " -p " +
             std::to_string(port_) +
             " -c listen_addresses=127.0.0.1 -c max_connections=30 -c recovery_init_sync_method=syncfs " +
             options + "\" start") == 0;
}

PostgresServer::~PostgresServer() {
  if (process_id() > 0) stop_immediately();
}

bool PostgresServer::answers_within_s(int seconds) const {
  for (int i = 0; i < 5 * seconds; ++i) {
    if (sql("postgres", "SELECT 'up';") == "up\n") return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
  }
  return false;
}

int PostgresServer::process_id() const {
  std::ifstream file(folder_ / "pg/data/postmaster.pid");
  int id = 0;
  file >> id;
  return id;
}

std::string PostgresServer::log() const {
  return text_of(folder_ / "pg/log");
}

void PostgresServer::stop_immediately() {
  run("pg_ctl -w -D " + (folder_ / "pg/data") + " -m immediate stop");
}

bool PostgresServer::page_checksums_hold() {
  run("pg_ctl -w -D " + (folder_ / "pg/data") + " -m fast stop");
  const bool good = run("pg_checksums --check -D " + (folder_ / "pg/data")) == 0;
  return restart() && good;
}

std::string PostgresServer::uri(const std::string& database, const std::string& user) const {
  return "postgresql://" + user + "@127.0.0.1:" + std::to_string(port_) + "/" + database;
}

std::string PostgresServer::sql(const std::string& database, const std::string& text, bool* failed) const {
  std::ofstream(folder_ / "in.sql") << text;
  const int status = std::system(("psql -X -q -At -v ON_ERROR_STOP=1 -f " + (folder_ / "in.sql") + " \"" +
                                  uri(database) + "\" >" + (folder_ / "out.txt") + " 2>&1")
                                     .c_str());
  if (failed != nullptr) *failed = status != 0;
  return text_of(folder_ / "out.txt");
}

std::string PostgresServer::make_database(const std::string& name) const {
  sql("postgres", "CREATE DATABASE " + name + ";");
  return uri(name);
}

}  // namespace seamtakt::test
