#include "records/record_body.hpp"

#include "base/json_writer.hpp"
#include "records/audit_json.hpp"

namespace seamtakt {

namespace {

void begin_body(JsonWriter& json, const char* kind) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("v", record_body_version);
  json.member("kind", kind);
}

std::string one_line(JsonWriter& json) {
  json.end_object();
  std::string body = json.take();
  while (!body.empty() && body.back() == '\n') body.pop_back();
  return body;
}

void write_logs(const AuditResult& result, JsonWriter& json) {
  json.key("raw").begin_array();
  for (const auto& log : result.logs) {
    json.begin_object();
    json.member("name", log.name)
        .member("sha256", log.sha256)
        .member("bytes", log.bytes)
        .member("rows", log.rows);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

std::string ingest_body(const AuditResult& result, const IngestNote& note, std::size_t passes,
                        std::size_t manual) {
  JsonWriter json;
  begin_body(json, "ingest");
  json.member("t", note.recorded_at_utc).member("who", note.who).member("why", note.why);
  json.member("app", note.program_version).member("catalogue_sha256", note.catalogue_sha256);
  json.member("plan_file", note.plan_file).member("plan_sha256", note.plan_sha256);
  write_logs(result, json);
  json.key("rows").begin_object();
  json.member("read", result.rows.read).member("in_passes", result.rows.in_passes);
  json.member("arc_off", result.rows.arc_off).member("rejected", result.rows.rejected);
  json.end_object();
  json.member("passes", passes).member("manual", manual);
  return one_line(json);
}

std::string pass_body(const PassRecord& record, const std::vector<const Finding*>& findings,
                      std::uint64_t ingest_seq) {
  JsonWriter json;
  begin_body(json, "pass");
  json.member("ingest", ingest_seq);
  json.key("results");
  write_json(record, json);
  json.key("findings").begin_array();
  for (const Finding* finding : findings) write_json(*finding, json);
  json.end_array();
  return one_line(json);
}

std::string manual_body(const ManualSeam& seam, std::uint64_t ingest_seq) {
  JsonWriter json;
  begin_body(json, "manual");
  json.member("ingest", ingest_seq);
  json.key("results");
  write_json(seam, json);
  return one_line(json);
}

}  // namespace seamtakt
