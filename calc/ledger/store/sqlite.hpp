#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <utility>

struct sqlite3;
struct sqlite3_stmt;

namespace seamtakt {

/// An open SQLite database. Every outcome but success is thrown: InputError where the file is no database,
/// std::system_error for the machine's failures, StoreDamaged for a damaged file. A file may be hostile:
/// nothing of its own is trusted, a statement that takes more steps than a file of its size can need is
/// ended, and no value may be longer than what a record holds.
class Sqlite {
 public:
  enum class Mode { read_only, read_write, create };
  /// `create` makes the file where it is absent.
  Sqlite(std::string path, Mode mode);
  ~Sqlite();
  Sqlite(const Sqlite&) = delete;
  Sqlite& operator=(const Sqlite&) = delete;

  /// Runs statements that give no rows (fixed texts of the program only).
  void run(const char* sql);
  /// The one integer that a statement gives.
  std::int64_t integer(const char* sql);
  std::string text(const char* sql);
  sqlite3* handle() const { return handle_; }
  const std::string& path() const { return path_; }
  [[noreturn]] void fail(int code) const;
  /// Whether views and triggers that the file brings may run.
  void allow_views_and_triggers(bool allowed);
  /// The file was moved or deleted since it was opened.
  bool has_moved() const;
  /// Ends a statement with StoreReadingStopped once this says so; asked every few milliseconds.
  void stop_when(std::function<bool()> stopped) { stopped_ = std::move(stopped); }
  /// A statement begins.
  void renew_steps();

 private:
  static int count_steps(void* self);

  std::string path_;
  std::function<bool()> stopped_;
  std::int64_t steps_left_ = 0;  ///< in units of steps_a_call
  sqlite3* handle_ = nullptr;
};

/// A prepared statement with its values bound from 1 on. Texts and blobs are copied.
class SqliteStatement {
 public:
  SqliteStatement(Sqlite& database, const char* sql);
  ~SqliteStatement();
  SqliteStatement(const SqliteStatement&) = delete;
  SqliteStatement& operator=(const SqliteStatement&) = delete;

  SqliteStatement& bind(int index, std::int64_t value);
  SqliteStatement& bind_text(int index, std::string_view text);
  SqliteStatement& bind_blob(int index, std::string_view bytes);
  /// True if there is a row, false at the end.
  bool step();
  /// Runs it to its end and makes it ready to run again.
  void run();
  void reset();
  std::int64_t integer(int column) const;
  std::string bytes(int column) const { return std::string(view(column)); }
  /// Until the next step.
  std::string_view view(int column) const;
  enum class Class { text, blob, other };
  struct TypedView {
    Class storage_class;
    std::string_view bytes;
  };
  /// With the class in which the database holds it.
  TypedView typed_view(int column) const;

 private:
  Sqlite& database_;
  sqlite3_stmt* statement_ = nullptr;
};

}  // namespace seamtakt
