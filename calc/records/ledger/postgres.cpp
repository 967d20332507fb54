#include "records/ledger/postgres.hpp"

#include <libpq-fe.h>

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include "base/error.hpp"

namespace seamtakt {

namespace {

constexpr unsigned text_oid = 25, bytea_oid = 17, bigint_oid = 20;

template <class Number>
void append_network(std::string& out, Number number) {
  for (int shift = 8 * static_cast<int>(sizeof number) - 8; shift >= 0; shift -= 8)
    out += static_cast<char>(static_cast<unsigned char>(number >> shift));
}

std::string one_line(const char* text) {
  std::string line = text != nullptr ? text : "";
  for (char& c : line)
    if (c == '\n' || c == '\t') c = ' ';
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return printable(line, 300);
}

}  // namespace

PostgresResult::PostgresResult(pg_result* result) : result_(result, PQclear) {}

int PostgresResult::rows() const {
  return PQntuples(result_.get());
}

bool PostgresResult::is_null(int row, int column) const {
  return PQgetisnull(result_.get(), row, column) != 0;
}

std::string_view PostgresResult::view(int row, int column) const {
  return {PQgetvalue(result_.get(), row, column),
          static_cast<std::size_t>(PQgetlength(result_.get(), row, column))};
}

std::int64_t PostgresResult::integer(int row, int column) const {
  const char* data = PQgetvalue(result_.get(), row, column);
  const int size = PQgetlength(result_.get(), row, column);
  std::uint64_t number = size > 0 && (data[0] & 0x80) != 0 && size > 1 ? ~std::uint64_t{0} : 0;
  for (int i = 0; i < size; ++i) number = number << 8 | static_cast<unsigned char>(data[i]);
  return static_cast<std::int64_t>(number);
}

PostgresValue PostgresValue::bigint(std::uint64_t number) {
  PostgresValue value{Type::bigint, {}};
  append_network(value.bytes, number);
  return value;
}

PostgresCopy::PostgresCopy() : data_("PGCOPY\n\377\r\n\0", 11) {
  append_network(data_, std::uint32_t{0});
  append_network(data_, std::uint32_t{0});
}

void PostgresCopy::begin_row(int columns) {
  append_network(data_, static_cast<std::uint16_t>(columns));
}

void PostgresCopy::value(std::string_view bytes) {
  append_network(data_, static_cast<std::uint32_t>(bytes.size()));
  data_ += bytes;
}

void PostgresCopy::bigint(std::uint64_t number) {
  append_network(data_, std::uint32_t{8});
  append_network(data_, number);
}

const std::string& PostgresCopy::take() {
  append_network(data_, static_cast<std::uint16_t>(0xffff));
  return data_;
}

Postgres::Postgres(const std::string& uri) : name_("postgresql store") {
  char* message = nullptr;
  PQconninfoOption* options = PQconninfoParse(uri.c_str(), &message);
  if (options == nullptr) {
    PQfreemem(message);  // it may hold the password
    throw InputError("--store", "a postgresql URI that can't be read",
                     "postgresql://user@host:port/database");
  }
  PQconninfoFree(options);
  connection_ = {PQconnectdb(uri.c_str()), PQfinish};
  if (connection_ == nullptr) throw std::bad_alloc();
  const auto part = [](const char* text) { return std::string(text != nullptr ? text : ""); };
  name_ = printable("postgresql://" + part(PQhost(connection_.get())) + ":" +
                    part(PQport(connection_.get())) + "/" + part(PQdb(connection_.get())));
  if (PQstatus(connection_.get()) != CONNECTION_OK)
    throw std::system_error(
        ECONNREFUSED, std::generic_category(),
        "can't reach the store " + name_ + " (" + one_line(PQerrorMessage(connection_.get())) + ")");
  PQsetNoticeProcessor(
      connection_.get(), [](void*, const char*) {}, nullptr);
}

void Postgres::fail(pg_result* result) {
  const PostgresResult held(result);
  const char* given = PQresultErrorField(result, PG_DIAG_SQLSTATE);
  const std::string state = given != nullptr ? given : "";
  const std::string message =
      one_line(result != nullptr ? PQresultErrorMessage(result) : PQerrorMessage(connection_.get()));
  if (state == "42501")
    throw InputError(
        name_, "a role that may not do this (" + message + ")",
        "a member of seamtakt_writer; the store is made by a superuser or by one who may create roles");
  if (state == "55P03")
    throw std::system_error(EBUSY, std::generic_category(),
                            "the store " + name_ + " is kept locked by another writer");
  const int code = state == "53100" ? ENOSPC : state == "25006" ? EROFS : EIO;
  throw std::system_error(code, std::generic_category(), "the store " + name_ + ": " + message);
}

void Postgres::run(const char* sql) {
  pg_result* result = PQexec(connection_.get(), sql);
  const auto status = PQresultStatus(result);
  if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) fail(result);
  PQclear(result);
}

PostgresResult Postgres::query(const char* sql, const std::vector<PostgresValue>& values) {
  std::vector<Oid> types;
  std::vector<const char*> data;
  std::vector<int> sizes, formats;
  for (const PostgresValue& value : values) {
    types.push_back(value.type == PostgresValue::Type::text    ? text_oid
                    : value.type == PostgresValue::Type::bytea ? bytea_oid
                                                               : bigint_oid);
    data.push_back(value.bytes.data());
    sizes.push_back(static_cast<int>(value.bytes.size()));
    formats.push_back(1);
  }
  pg_result* result = PQexecParams(connection_.get(), sql, static_cast<int>(values.size()), types.data(),
                                   data.data(), sizes.data(), formats.data(), 1);
  const auto status = PQresultStatus(result);
  if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) fail(result);
  return PostgresResult(result);
}

void Postgres::copy(const char* sql, PostgresCopy& rows) {
  pg_result* begun = PQexec(connection_.get(), sql);
  if (PQresultStatus(begun) != PGRES_COPY_IN) fail(begun);
  PQclear(begun);
  const std::string& data = rows.take();
  if (PQputCopyData(connection_.get(), data.data(), static_cast<int>(data.size())) != 1 ||
      PQputCopyEnd(connection_.get(), nullptr) != 1)
    fail(nullptr);
  pg_result* ended = PQgetResult(connection_.get());
  if (PQresultStatus(ended) != PGRES_COMMAND_OK) fail(ended);
  PQclear(ended);
  while (pg_result* rest = PQgetResult(connection_.get())) PQclear(rest);
}

bool Postgres::in_transaction() const {
  const auto status = PQtransactionStatus(connection_.get());
  return status == PQTRANS_INTRANS || status == PQTRANS_INERROR;
}

}  // namespace seamtakt
