#pragma once

#include <libpq-fe.h>

namespace seamtakt {

/// The functions of PostgreSQL's client library that the ledger uses, by the part of their names after PQ.
struct Libpq {
  decltype(&PQclear) clear;
  decltype(&PQconnectdb) connect;
  decltype(&PQconninfoFree) free_connection_info;
  decltype(&PQconninfoParse) parse_connection_info;
  decltype(&PQdb) database;
  decltype(&PQerrorMessage) error_message;
  decltype(&PQexec) exec;
  decltype(&PQexecParams) exec_params;
  decltype(&PQfinish) finish;
  decltype(&PQfreemem) free_memory;
  decltype(&PQgetResult) get_result;
  decltype(&PQgetisnull) get_is_null;
  decltype(&PQgetlength) get_length;
  decltype(&PQgetvalue) get_value;
  decltype(&PQhost) host;
  decltype(&PQntuples) tuple_count;
  decltype(&PQport) port;
  decltype(&PQputCopyData) put_copy_data;
  decltype(&PQputCopyEnd) put_copy_end;
  decltype(&PQresultErrorField) result_error_field;
  decltype(&PQresultErrorMessage) result_error_message;
  decltype(&PQresultStatus) result_status;
  decltype(&PQsetNoticeProcessor) set_notice_processor;
  decltype(&PQstatus) status;
  decltype(&PQtransactionStatus) transaction_status;
};

/// The library is loaded at its first use: it loads some twenty others (Kerberos, LDAP,
/// TLS), whose loading takes longer than most commands. std::system_error where it can't be loaded.
const Libpq& libpq();

}  // namespace seamtakt
