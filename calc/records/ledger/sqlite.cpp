#include "records/ledger/sqlite.hpp"

#include <sqlite3.h>

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include "base/error.hpp"

namespace seamtakt {

namespace {

constexpr int busy_timeout_ms = 10'000;

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
    case SQLITE_CANTOPEN:
      return ENOENT;
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
    // The message belongs to the handle, so it is taken before the handle goes.
    const std::string message = handle_ != nullptr ? sqlite3_errmsg(handle_) : "no memory";
    sqlite3_close(handle_);
    handle_ = nullptr;
    throw std::system_error(errno_of(code), std::generic_category(),
                            "can't open the store " + printable(path_) + " (" + message + ")");
  }
  sqlite3_extended_result_codes(handle_, 1);
  sqlite3_busy_timeout(handle_, busy_timeout_ms);
}

Sqlite::~Sqlite() {
  sqlite3_close(handle_);
}

void Sqlite::fail(int code) const {
  const std::string message = sqlite3_errmsg(handle_);
  if ((code & 0xff) == SQLITE_NOTADB)
    throw InputError(printable(path_), "a file that is no SQLite database",
                     "a store of this program, or a name that isn't taken");
  throw std::system_error(errno_of(code), std::generic_category(),
                          "the store " + printable(path_) + ": " + message);
}

void Sqlite::run(const char* sql) {
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
// up anew. That a value isn't "protected" has no meaning on a connection without locks.

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
