#include "ledger/store/libpq.hpp"

#include <dlfcn.h>

#include <cerrno>
#include <string>
#include <system_error>

namespace seamtakt {

namespace {

/// The library by the version of its interface.
constexpr const char* library_name = "libpq.so.5";

[[noreturn]] void fail() {
  const char* const reason = ::dlerror();
  throw std::system_error(ELIBACC, std::generic_category(),
                          "can't load PostgreSQL's client library (" +
                              std::string(reason != nullptr ? reason : library_name) + ")");
}

template <class Function>
void find(void* library, const char* name, Function& function) {
  function = reinterpret_cast<Function>(::dlsym(library, name));
  if (function == nullptr) fail();
}

Libpq load() {
  // It stays loaded: it keeps state of its own.
  void* const library = ::dlopen(library_name, RTLD_NOW | RTLD_LOCAL);
  if (library == nullptr) fail();
  Libpq found{};
  find(library, "PQclear", found.clear);
  find(library, "PQconnectdb", found.connect);
  find(library, "PQconninfoFree", found.free_connection_info);
  find(library, "PQconninfoParse", found.parse_connection_info);
  find(library, "PQdb", found.database);
  find(library, "PQerrorMessage", found.error_message);
  find(library, "PQexec", found.exec);
  find(library, "PQexecParams", found.exec_params);
  find(library, "PQfinish", found.finish);
  find(library, "PQfreemem", found.free_memory);
  find(library, "PQgetResult", found.get_result);
  find(library, "PQgetisnull", found.get_is_null);
  find(library, "PQgetlength", found.get_length);
  find(library, "PQgetvalue", found.get_value);
  find(library, "PQhost", found.host);
  find(library, "PQntuples", found.tuple_count);
  find(library, "PQport", found.port);
  find(library, "PQputCopyData", found.put_copy_data);
  find(library, "PQputCopyEnd", found.put_copy_end);
  find(library, "PQresultErrorField", found.result_error_field);
  find(library, "PQresultErrorMessage", found.result_error_message);
  find(library, "PQresultStatus", found.result_status);
  find(library, "PQsetNoticeProcessor", found.set_notice_processor);
  find(library, "PQstatus", found.status);
  find(library, "PQtransactionStatus", found.transaction_status);
  return found;
}

}  // namespace

const Libpq& libpq() {
  static const Libpq loaded = load();
  return loaded;
}

}  // namespace seamtakt
