#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

struct pg_conn;
struct pg_result;

namespace seamtakt {

/// A statement's result in binary form.
class PostgresResult {
 public:
  explicit PostgresResult(pg_result* result);
  int rows() const;
  bool is_null(int row, int column) const;
  /// Bytes of a text or bytea.
  std::string bytes(int row, int column) const { return std::string(view(row, column)); }
  /// As long as the result lives.
  std::string_view view(int row, int column) const;
  /// Of a bigint, integer or boolean.
  std::int64_t integer(int row, int column) const;

 private:
  std::shared_ptr<pg_result> result_;
};

/// A value of a statement: bytes (bytea or text) or a bigint, as the server takes them in binary form.
struct PostgresValue {
  enum class Type { text, bytea, bigint };
  Type type;
  std::string bytes;

  static PostgresValue text(std::string_view text) { return {Type::text, std::string(text)}; }
  static PostgresValue bytea(std::string_view bytes) { return {Type::bytea, std::string(bytes)}; }
  static PostgresValue bigint(std::uint64_t number);
};

/// Rows for COPY ... FROM STDIN (FORMAT binary).
class PostgresCopy {
 public:
  PostgresCopy();
  void begin_row(int columns);
  void value(std::string_view bytes);
  void bigint(std::uint64_t number);
  const std::string& take();

 private:
  std::string data_;
};

/// A connection. Failures: InputError for a URI that can't be read or a right that is missing,
/// std::system_error for the machine's (EBUSY where a lock wasn't obtained in time).
class Postgres {
 public:
  explicit Postgres(const std::string& uri);

  /// Host, port and database: no user, no password.
  const std::string& name() const { return name_; }
  void run(const char* sql);
  PostgresResult query(const char* sql, const std::vector<PostgresValue>& values = {});
  void copy(const char* sql, PostgresCopy& rows);
  bool in_transaction() const;

 private:
  [[noreturn]] void fail(pg_result* result);

  std::string name_;
  std::shared_ptr<pg_conn> connection_;
};

}  // namespace seamtakt
