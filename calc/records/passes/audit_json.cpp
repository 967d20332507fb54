#include "records/passes/audit_json.hpp"

#include "records/actual/actual_json.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt {

namespace {

void write_json(const RejectedRow& row, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("file", row.file);
  json.member("line", row.line);
  json.member("reason", row.reason.english());
  json.end_object();
}

void write_json(const AuditedLog& log, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("name", log.name);
  json.member("bytes", log.bytes);
  json.member("rows", log.rows);
  json.key("sha256");
  write_value(json, column_value(log.sha256));
  json.end_object();
}

template <class List>
void write_list(const char* key, const List& list, JsonWriter& json) {
  json.key(key).begin_array();
  for (const auto& item : list) write_json(item, json);
  json.end_array();
}

void write_rows(const RowCounts& rows, JsonWriter& json) {
  json.key("rows").begin_object(JsonWriter::Layout::compact);
  json.member("read", rows.read);
  json.member("in_passes", rows.in_passes);
  json.member("arc_off", rows.arc_off);
  json.member("rejected", rows.rejected);
  json.end_object();
}

}  // namespace

void write_json(const PassRecord& record, JsonWriter& json) {
  json.begin_object();
  write_members(json, record_columns(), record);
  json.end_object();
}

void write_json(const UnitRecord& unit, JsonWriter& json) {
  json.begin_object();
  write_members(json, unit_record_columns(), unit);
  json.end_object();
}

void write_json(const UsedInstrument& instrument, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("id", instrument.id).member("quantity", instrument.quantity);
  json.member("certificate", instrument.certificate).member("due", instrument.due);
  json.end_object();
}

void write_json(const ManualSeam& seam, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  write_members(json, manual_columns(), seam);
  json.end_object();
}

void write_audit_members(const AuditResult& result, JsonWriter& json) {
  write_list("passes", result.passes, json);
  write_list("units", result.units, json);
  write_list("rejected", result.rejected.listed, json);
  json.member("rejected_count", result.rejected.count);
  write_list("manual", result.manual, json);
  write_rows(result.rows, json);
  write_list("logs", result.logs, json);
  write_statistics(json, result.statistics);
  write_findings(json, result.findings);
}

void write_audit_json(const AuditResult& result, std::string& out) {
  JsonWriter json;
  json.begin_object();
  write_audit_members(result, json);
  json.end_object();
  out += json.take();
}

void write_audit_json(const AuditResult& result, const CycleActual& actual, std::string& out) {
  JsonWriter json;
  json.begin_object();
  write_audit_members(result, json);
  write_cycle_actual(actual, json);
  json.end_object();
  out += json.take();
}

}  // namespace seamtakt
