#include "ledger/store/postgres.hpp"

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/ledger_backend.hpp"
#include "ledger/store/libpq.hpp"

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

/// A password that contains / or @ ends early and continues in the host, port or database, which messages
/// name.
bool has_odd_part(const PQconninfoOption* options) {
  for (; options->keyword != nullptr; ++options) {
    const std::string_view key = options->keyword, value = options->val != nullptr ? options->val : "";
    const bool is_place = key == "host" || key == "dbname";
    if (is_place && value.find('@') != std::string_view::npos) return true;
    if (key == "port" && value.find_first_not_of("0123456789,") != std::string_view::npos) return true;
  }
  return false;
}

}  // namespace

PostgresResult::PostgresResult(pg_result* result) : result_(result, libpq().clear) {}

int PostgresResult::rows() const {
  return libpq().tuple_count(result_.get());
}

bool PostgresResult::is_null(int row, int column) const {
  return libpq().get_is_null(result_.get(), row, column) != 0;
}

std::string_view PostgresResult::view(int row, int column) const {
  return {libpq().get_value(result_.get(), row, column),
          static_cast<std::size_t>(libpq().get_length(result_.get(), row, column))};
}

std::int64_t PostgresResult::integer(int row, int column) const {
  const char* data = libpq().get_value(result_.get(), row, column);
  const int size = libpq().get_length(result_.get(), row, column);
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
  PQconninfoOption* options = libpq().parse_connection_info(uri.c_str(), &message);
  if (options == nullptr) {
    libpq().free_memory(message);  // it may hold the password
    throw InputError("--store", "a postgresql URI that can't be read"_word,
                     "postgresql://user@host:port/database");
  }
  const bool has_odd_parts = has_odd_part(options);
  libpq().free_connection_info(options);
  if (has_odd_parts)
    throw InputError("--store", "a postgresql URI whose parts can't be told"_word,
                     "postgresql://user@host:port/database; in a password / is %2F, @ is %40, : is %3A"_word);
  connection_ = {libpq().connect(uri.c_str()), libpq().finish};
  if (connection_ == nullptr) throw std::bad_alloc();
  const auto part = [](const char* text) { return std::string(text != nullptr ? text : ""); };
  name_ = printable("postgresql://" + part(libpq().host(connection_.get())) + ":" +
                    part(libpq().port(connection_.get())) + "/" + part(libpq().database(connection_.get())));
  if (libpq().status(connection_.get()) != CONNECTION_OK)
    throw std::system_error(
        ECONNREFUSED, std::generic_category(),
        "can't reach the store " + name_ + " (" + one_line(libpq().error_message(connection_.get())) + ")");
  libpq().set_notice_processor(
      connection_.get(), [](void*, const char*) {}, nullptr);
}

void Postgres::fail(pg_result* result) {
  const PostgresResult held(result);
  const char* given = libpq().result_error_field(result, PG_DIAG_SQLSTATE);
  const std::string state = given != nullptr ? given : "";
  const std::string message = one_line(result != nullptr ? libpq().result_error_message(result)
                                                         : libpq().error_message(connection_.get()));
  if (state == "42501")
    throw InputError(
        name_, Sentence("store.role"_key, {{"message", message}}),
        "a member of seamtakt_writer; the store is made by a superuser or by one who may create roles"_word);
  if (state == "55P03")
    throw std::system_error(EBUSY, std::generic_category(),
                            "the store " + name_ + " is kept locked by another writer");
  // The statements are the program's own: where they don't fit, or pages don't, the database was changed.
  for (const std::string_view damaged : {"22", "23", "42", "P0", "XX"})
    if (state.starts_with(damaged)) throw StoreDamaged("the store " + name_ + ": " + message);
  const int code = state == "53100" ? ENOSPC : state == "25006" ? EROFS : EIO;
  throw std::system_error(code, std::generic_category(), "the store " + name_ + ": " + message);
}

void Postgres::run(const char* sql) {
  pg_result* result = libpq().exec(connection_.get(), sql);
  const auto status = libpq().result_status(result);
  if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) fail(result);
  libpq().clear(result);
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
  pg_result* result = libpq().exec_params(connection_.get(), sql, static_cast<int>(values.size()),
                                          types.data(), data.data(), sizes.data(), formats.data(), 1);
  const auto status = libpq().result_status(result);
  if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) fail(result);
  return PostgresResult(result);
}

void Postgres::copy(const char* sql, PostgresCopy& rows) {
  pg_result* begun = libpq().exec(connection_.get(), sql);
  if (libpq().result_status(begun) != PGRES_COPY_IN) fail(begun);
  libpq().clear(begun);
  const std::string& data = rows.take();
  if (libpq().put_copy_data(connection_.get(), data.data(), static_cast<int>(data.size())) != 1 ||
      libpq().put_copy_end(connection_.get(), nullptr) != 1)
    fail(nullptr);
  pg_result* ended = libpq().get_result(connection_.get());
  if (libpq().result_status(ended) != PGRES_COMMAND_OK) fail(ended);
  libpq().clear(ended);
  while (pg_result* rest = libpq().get_result(connection_.get())) libpq().clear(rest);
}

bool Postgres::in_transaction() const {
  const auto status = libpq().transaction_status(connection_.get());
  return status == PQTRANS_INTRANS || status == PQTRANS_INERROR;
}

}  // namespace seamtakt
