#include "ledger/store/sqlite.hpp"

#include <sqlite3.h>
#include <sys/stat.h>

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

namespace {

constexpr int busy_timeout_ms = 10'000;
constexpr int longest_value = (64 << 20) + (1 << 20);  // a bundle's line, and something over
// A row takes some 20 steps of the database's machine, and at least as many bytes of its file; a check of its
// structure some more. One step takes about 20 ns.
constexpr int steps_a_call = 100'000;
constexpr std::int64_t steps_a_byte = 20, steps_of_any_file = 200'000'000;

std::int64_t bytes_of_file(const std::string& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 ? static_cast<std::int64_t>(status.st_size) : 0;
}

int errno_of(int code) {
  switch (code & 0xff) {
    case SQLITE_FULL:
      return ENOSPC;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return EBUSY;
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return EACCES;
    case SQLITE_NOMEM:
      return ENOMEM;
    default:
      return EIO;
  }
}

}  // namespace

Sqlite::Sqlite(std::string path, Mode mode) : path_(std::move(path)) {
  // A connection is used by one thread at a time, so it needs no locks of its own.
  const int flags =
      SQLITE_OPEN_NOMUTEX | (mode == Mode::read_only    ? SQLITE_OPEN_READONLY
                             : mode == Mode::read_write ? SQLITE_OPEN_READWRITE
                                                        : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
  const int code = sqlite3_open_v2(path_.c_str(), &handle_, flags, nullptr);
  if (code != SQLITE_OK) {
    // Message and reason belong to the handle, so they are taken before the handle goes.
    const int reason = handle_ != nullptr ? sqlite3_system_errno(handle_) : 0;
    const std::string message = handle_ != nullptr ? sqlite3_errmsg(handle_) : "no memory";
    sqlite3_close(handle_);
    handle_ = nullptr;
    const bool is_place = (code & 0xff) == SQLITE_CANTOPEN;
    throw std::system_error(is_place ? (reason != 0 ? reason : ENOENT) : errno_of(code),
                            std::generic_category(),
                            "can't open the store " + printable(path_) + " (" + message + ")");
  }
  sqlite3_extended_result_codes(handle_, 1);
  sqlite3_busy_timeout(handle_, busy_timeout_ms);
  sqlite3_db_config(handle_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(handle_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  sqlite3_limit(handle_, SQLITE_LIMIT_LENGTH, longest_value);
  sqlite3_limit(handle_, SQLITE_LIMIT_ATTACHED, 0);
  renew_steps();
  sqlite3_progress_handler(handle_, steps_a_call, count_steps, this);
}

int Sqlite::count_steps(void* self) {
  Sqlite& database = *static_cast<Sqlite*>(self);
  return --database.steps_left_ < 0 || (database.stopped_ && database.stopped_());
}

void Sqlite::renew_steps() {
  const std::int64_t bytes = bytes_of_file(path_) + bytes_of_file(path_ + "-wal");
  steps_left_ = (steps_of_any_file + steps_a_byte * bytes) / steps_a_call;
}

void Sqlite::allow_views_and_triggers(bool allowed) {
  sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_VIEW, allowed ? 1 : 0, nullptr);
  sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_TRIGGER, allowed ? 1 : 0, nullptr);
}

bool Sqlite::has_moved() const {
  int moved = 0;
  return sqlite3_file_control(handle_, "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK && moved != 0;
}

Sqlite::~Sqlite() {
  sqlite3_close(handle_);
}

void Sqlite::fail(int code) const {
  const std::string message = sqlite3_errmsg(handle_);
  if ((code & 0xff) == SQLITE_NOTADB)
    throw InputError(printable(path_), "a file that is no SQLite database"_word,
                     "a store of this program, or a name that isn't taken"_word);
  const std::string what = "the store " + printable(path_) + ": ";
  switch (code & 0xff) {
    case SQLITE_CANTOPEN:
      throw std::system_error(sqlite3_system_errno(handle_) != 0 ? sqlite3_system_errno(handle_) : ENOENT,
                              std::generic_category(), what + message);
    case SQLITE_INTERRUPT:
      if (steps_left_ >= 0) throw StoreReadingStopped();
      throw StoreDamaged(what + "reading takes more steps than a file of its size can need");
    case SQLITE_CORRUPT:
    case SQLITE_ERROR:
    case SQLITE_FORMAT:
    case SQLITE_TOOBIG:
    case SQLITE_MISMATCH:
    case SQLITE_CONSTRAINT:
    case SQLITE_SCHEMA:
      throw StoreDamaged(what + message);
    default:
      if (code == SQLITE_IOERR_SHORT_READ || code == SQLITE_IOERR_CORRUPTFS)
        throw StoreDamaged(what + message);
      throw std::system_error(errno_of(code), std::generic_category(), what + message);
  }
}

void Sqlite::run(const char* sql) {
  renew_steps();
  const int code = sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(code);
}

std::int64_t Sqlite::integer(const char* sql) {
  SqliteStatement statement(*this, sql);
  if (!statement.step()) throw std::logic_error("a statement that gives no row");
  return statement.integer(0);
}

std::string Sqlite::text(const char* sql) {
  SqliteStatement statement(*this, sql);
  if (!statement.step()) throw std::logic_error("a statement that gives no row");
  return statement.bytes(0);
}

SqliteStatement::SqliteStatement(Sqlite& database, const char* sql) : database_(database) {
  database.renew_steps();
  const int code = sqlite3_prepare_v2(database.handle(), sql, -1, &statement_, nullptr);
  if (code != SQLITE_OK) database.fail(code);
}

SqliteStatement::~SqliteStatement() {
  sqlite3_finalize(statement_);
}

SqliteStatement& SqliteStatement::bind(int index, std::int64_t value) {
  const int code = sqlite3_bind_int64(statement_, index, value);
  if (code != SQLITE_OK) database_.fail(code);
  return *this;
}

SqliteStatement& SqliteStatement::bind_text(int index, std::string_view text) {
  const int code =
      sqlite3_bind_text64(statement_, index, text.data(), text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
  if (code != SQLITE_OK) database_.fail(code);
  return *this;
}

SqliteStatement& SqliteStatement::bind_blob(int index, std::string_view bytes) {
  const int code = sqlite3_bind_blob64(statement_, index, bytes.data(), bytes.size(), SQLITE_TRANSIENT);
  if (code != SQLITE_OK) database_.fail(code);
  return *this;
}

bool SqliteStatement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  database_.fail(code);
}

void SqliteStatement::run() {
  while (step()) {
  }
  reset();
}

void SqliteStatement::reset() {
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
}

std::int64_t SqliteStatement::integer(int column) const {
  return sqlite3_column_int64(statement_, column);
}

// The column's value is asked for once and then looked at: each of the column's own functions would look it
// up again. That a value isn't "protected" has no meaning on a connection without locks.

std::string_view SqliteStatement::view(int column) const {
  sqlite3_value* value = sqlite3_column_value(statement_, column);
  const void* data = sqlite3_value_blob(value);
  const int size = sqlite3_value_bytes(value);
  return data != nullptr ? std::string_view(static_cast<const char*>(data), static_cast<std::size_t>(size))
                         : std::string_view();
}

SqliteStatement::TypedView SqliteStatement::typed_view(int column) const {
  sqlite3_value* value = sqlite3_column_value(statement_, column);
  const int type = sqlite3_value_type(value);
  const auto* data = static_cast<const char*>(sqlite3_value_blob(value));
  const auto size = static_cast<std::size_t>(sqlite3_value_bytes(value));
  return {type == SQLITE_TEXT   ? Class::text
          : type == SQLITE_BLOB ? Class::blob
                                : Class::other,
          data != nullptr ? std::string_view(data, size) : std::string_view()};
}

}  // namespace seamtakt
