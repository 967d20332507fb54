#include "records/keep/ingest_members.hpp"

#include <algorithm>

#include "ledger/body/canonical_json.hpp"
#include "plan/fields/object_fields.hpp"
#include "records/judge/length_judgement.hpp"
#include "records/keep/heat_basis.hpp"
#include "records/keep/stored_parts.hpp"
#include "records/passes/audit_json.hpp"

namespace seamtakt {

namespace {

using Members = std::vector<std::pair<std::string, std::string>>;

template <class Write>
std::string json_text(const Write& write) {
  JsonWriter json;
  write(json);
  return json.take();
}

void write_raw(const AuditResult& result, const IngestNote& note, JsonWriter& json) {
  json.begin_array();
  for (const AuditedLog& log : result.logs) {
    json.begin_object();
    json.member("name", log.name)
        .member("sha256", log.sha256)
        .member("bytes", log.bytes)
        .member("rows", log.rows);
    for (const RawChunksRow& chunks : note.chunks) {
      if (chunks.sha256 != log.sha256) continue;
      MerkleFrontier tree;
      for (std::size_t at = 0; at < chunks.digests.size(); at += sizeof(Digest))
        tree.append(*digest_from_bytes(std::string_view(chunks.digests).substr(at, sizeof(Digest))));
      json.member("chunk_root", hex(tree.root()));
      break;
    }
    json.end_object();
  }
  json.end_array();
}

void write_results(const AuditResult& result, std::size_t passes, JsonWriter& json) {
  json.begin_object();
  json.key("rows").begin_object();
  json.member("read", result.rows.read).member("in_passes", result.rows.in_passes);
  json.member("arc_off", result.rows.arc_off).member("rejected", result.rows.rejected);
  json.end_object();
  json.member("passes", passes).member("manual", result.manual.size());
  json.key("units").begin_array();
  for (const UnitRecord& unit : result.units) write_json(unit, json);
  json.end_array();
  json.end_object();
}

bool asks_for_four_eyes(const Plan& plan) {
  const auto& required = plan.record_requires;
  return std::find(required.begin(), required.end(), four_eyes_requirement) != required.end();
}

/// As of the day of the weld, by which the pass was judged.
std::string instruments_text(const PassRecord& record) {
  return json_text([&](JsonWriter& json) {
    json.begin_array();
    for (const UsedInstrument& instrument : record.instruments) write_json(instrument, json);
    json.end_array();
  });
}

std::string findings_text(const std::vector<const Finding*>& findings) {
  return json_text([&](JsonWriter& json) {
    json.begin_array();
    for (const Finding* finding : findings) write_json(*finding, json);
    json.end_array();
  });
}

template <class Item>
void write_named(const std::vector<Item>& list, const std::string& id, const char* key, JsonWriter& json) {
  const Item* item = find_by_id(list, id);
  if (item == nullptr) return;
  std::string text;
  write_object(*item, text);
  json.key(key).raw(text);
}

}  // namespace

KeptSchedule schedule_entry(const Plan& plan, const Schedule& schedule) {
  const std::string text = json_text([&](JsonWriter& json) {
    json.begin_object();
    std::string body;
    write_object(schedule, body);
    json.key("schedule").raw(body);
    write_named(plan.wires, schedule.wire, "wire", json);
    write_named(plan.gases, schedule.gas, "gas", json);
    json.end_object();
  });
  KeptSchedule kept{schedule.id, hex(Sha256().add(canonical_json(parse_json(text, "schedule"))).take()), {}};
  kept.entry = {record_kind::schedule,
                {},
                {{"schedule", json_string(kept.sha256)}, {"results", text}},
                {{"schedule", schedule.id}, {"schedule_sha256", kept.sha256}}};
  return kept;
}

LedgerEntry ingest_entry(const AuditResult& result, const IngestNote& note, std::size_t passes) {
  LedgerEntry entry{record_kind::ingest, {}, {}, {}};
  entry.members.emplace_back("raw", json_text([&](JsonWriter& json) { write_raw(result, note, json); }));
  entry.members.emplace_back("inputs", json_text([&](JsonWriter& json) {
                               json.begin_object().member("plan_file", note.plan_file);
                               json.member("plan_sha256", note.plan_sha256);
                               json.member("catalogue_sha256", note.catalogue_sha256);
                               if (note.plan != nullptr && asks_for_four_eyes(*note.plan))
                                 json.member("four_eyes", true);
                               json.end_object();
                             }));
  entry.members.emplace_back("results",
                             json_text([&](JsonWriter& json) { write_results(result, passes, json); }));
  for (const AuditedLog& log : result.logs) entry.lookups.emplace_back("log", log.sha256);
  for (const UnitRecord& unit : result.units)
    if (!unit.unit_serial.empty()) entry.lookups.emplace_back("unit", unit.unit_serial);
  return entry;
}

LedgerEntry pass_entry(const PassRecord& record, const std::vector<const Finding*>& findings,
                       const Plan* plan, std::uint64_t ingest_seq) {
  LedgerEntry entry{record_kind::pass, {}, {}, {}};
  entry.members.emplace_back("ingest", std::to_string(ingest_seq));
  if (plan != nullptr) entry.members.emplace_back("instruments", instruments_text(record));
  entry.members.emplace_back("results", json_text([&](JsonWriter& json) { write_json(record, json); }));
  entry.members.emplace_back("findings", findings_text(findings));
  if (plan != nullptr)
    if (std::string basis = heat_basis_text(*plan, record); !basis.empty())
      entry.members.emplace_back(heat_basis_member, std::move(basis));
  if (record.unit_serial.empty()) return entry;
  entry.lookups.emplace_back("pass",
                             pass_lookup_key(record.unit_serial, record.weldment, record.seam, record.pass));
  entry.lookups.emplace_back("unit", record.unit_serial);
  const auto& open = record.undecided_by;
  if (!record.robot.empty() && std::find(open.begin(), open.end(), length_part_rule) != open.end())
    entry.lookups.emplace_back(part_topic, record.robot);
  return entry;
}

LedgerEntry manual_entry(const ManualSeam& seam, const std::string& welder,
                         const std::vector<const Finding*>& findings, std::uint64_t ingest_seq) {
  LedgerEntry entry{record_kind::manual, {}, {}, {}};
  ManualSeam nameless = seam;
  nameless.welder = welder;
  entry.members.emplace_back("ingest", std::to_string(ingest_seq));
  entry.members.emplace_back("results", json_text([&](JsonWriter& json) { write_json(nameless, json); }));
  if (!findings.empty()) entry.members.emplace_back("findings", findings_text(findings));
  if (seam.unit_serial.empty()) return entry;
  entry.lookups.emplace_back(
      "pass", pass_lookup_key(seam.unit_serial, seam.weldment, seam.seam, seam.pass.value_or(1)));
  entry.lookups.emplace_back("unit", seam.unit_serial);
  return entry;
}

LedgerEntry nonconformance_entry(std::uint64_t ref, const std::string& unit_serial, const std::string& place,
                                 const std::vector<const Finding*>& findings) {
  LedgerEntry entry{record_kind::nonconformance, ref, {}, {{"nonconformance", ""}}};
  entry.members.emplace_back("results", json_text([&](JsonWriter& json) {
                               json.begin_object();
                               json.member("unit_serial", unit_serial).member("place", place);
                               json.end_object();
                             }));
  std::vector<const Finding*> failed;
  for (const Finding* finding : findings)
    if (finding->severity == Severity::fail) failed.push_back(finding);
  entry.members.emplace_back("findings", findings_text(failed));
  if (!unit_serial.empty()) entry.lookups.emplace_back("unit", unit_serial);
  return entry;
}

}  // namespace seamtakt
