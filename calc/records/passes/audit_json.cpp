#include "records/passes/audit_json.hpp"

namespace seamtakt {

namespace {

/// Empty text is null.
void text_member(JsonWriter& json, const char* key, const std::string& text) {
  json.key(key);
  if (text.empty()) {
    json.null();
  } else {
    json.value(text);
  }
}

void write_identity(const PassRecord& record, JsonWriter& json) {
  text_member(json, "unit_serial", record.unit_serial);
  text_member(json, "weldment", record.weldment);
  text_member(json, "seam", record.seam);
  json.member("pass", record.pass);
  text_member(json, "schedule", record.schedule);
  text_member(json, "schedule_revision", record.schedule_revision_logged);
  text_member(json, "robot", record.robot);
}

void write_figures(const PassRecord& record, JsonWriter& json) {
  json.member("samples", record.samples);
  json.member("duration_s", record.duration_s);
  json.member("arc_time_s", record.arc_time_s);
  json.member("arc_starts", record.arc_starts);
  json.member("length_mm", record.length_mm);
  text_member(json, "length_source", record.length_source);
  json.member("overlap_mm", record.overlap_mm);
  json.member("product_power_W", record.product_power_W);
  json.member("mean_current_A", record.mean_current_A);
  json.member("mean_voltage_V", record.mean_voltage_V);
  json.member("mean_power_W", record.mean_power_W);
  json.member("energy_J", record.energy_J);
  json.member("waveform_factor", record.waveform_factor);
  json.member("travel_speed_mm_s", record.travel_speed_mm_s);
  json.member("wire_feed_speed_m_min", record.wire_feed_speed_m_min);
  json.member("wire_counter_m_min", record.wire_counter_m_min);
  json.member("gas_flow_l_min", record.gas_flow_l_min);
  json.member("interpass_C", record.interpass_C);
  json.member("arc_energy_kJ_mm", record.arc_energy_kJ_mm);
  json.member("heat_input_kJ_mm", record.heat_input_kJ_mm);
  json.member("U_heat_input_kJ_mm", record.U_heat_input_kJ_mm);
  json.member("cooling_time_s", record.cooling_time_s);
  json.member("cooling_from_C", record.cooling_from_C);
  text_member(json, "cooling_from_source", record.cooling_from_source);
  json.member("haz_hardness_HV", record.haz_hardness_HV);
  json.member("min_current_A", record.min_current_A);
  json.member("max_current_A", record.max_current_A);
  json.member("min_voltage_V", record.min_voltage_V);
  json.member("max_voltage_V", record.max_voltage_V);
  json.member("rms_current_A", record.rms_current_A);
  json.member("sd_current_A", record.sd_current_A);
  json.member("sd_voltage_V", record.sd_voltage_V);
  json.member("start_stand_s", record.start_stand_s);
  json.member("end_stand_s", record.end_stand_s);
  json.member("frozen_s", record.frozen_s);
}

void write_steady(const SteadyMeans& steady, JsonWriter& json) {
  json.key("steady").begin_object(JsonWriter::Layout::compact);
  json.member("time_s", steady.time_s);
  json.member("current_A", steady.current_A);
  json.member("voltage_V", steady.voltage_V);
  json.member("power_W", steady.power_W);
  json.member("wire_feed_speed_m_min", steady.wire_feed_speed_m_min);
  json.member("travel_speed_mm_s", steady.travel_speed_mm_s);
  json.member("gas_flow_l_min", steady.gas_flow_l_min);
  json.end_object();
}

void write_coverage(const std::optional<PassCoverage>& coverage, JsonWriter& json) {
  json.key("coverage");
  if (!coverage) {
    json.null();
    return;
  }
  json.begin_object(JsonWriter::Layout::compact).key("spans_mm").begin_array(JsonWriter::Layout::compact);
  for (const WeldedSpan& span : coverage->spans) {
    json.begin_array(JsonWriter::Layout::compact);
    json.value(span.from_mm).value(span.to_mm).end_array();
  }
  json.end_array();
  json.member("welded_mm", coverage->welded_mm);
  json.member("path_mm", coverage->path_mm);
  json.member("needed_mm", coverage->needed_mm);
  json.member("run_mm", coverage->run_mm);
  json.member("gap_mm", coverage->gap_mm);
  json.member("covered_mm", coverage->covered_mm);
  json.member("allowed_short_mm", coverage->allowed_short_mm);
  json.member("is_part", coverage->is_part);
  json.key("with_records").begin_array(JsonWriter::Layout::compact);
  for (const std::uint64_t seq : coverage->with_records) json.value(seq);
  json.end_array().end_object();
}

void write_rules(const char* key, const std::vector<std::string>& rules, JsonWriter& json) {
  json.key(key).begin_array(JsonWriter::Layout::compact);
  for (const std::string& rule : rules) json.value(rule);
  json.end_array();
}

void write_carried(const std::vector<CarriedColumn>& carried, JsonWriter& json) {
  json.key("carried").begin_object(JsonWriter::Layout::compact);
  for (const auto& column : carried) {
    json.key(column.name);
    if (column.values.empty()) {
      json.null();
    } else if (column.values.size() == 1) {
      json.value(column.values[0]);
    } else {
      json.begin_array(JsonWriter::Layout::compact);
      for (const auto& value : column.values) json.value(value);
      json.end_array();
    }
  }
  json.end_object();
}

void write_refs(const char* key, const std::vector<PassRef>& refs, JsonWriter& json) {
  json.key(key).begin_array();
  for (const auto& ref : refs) {
    json.begin_object(JsonWriter::Layout::compact);
    text_member(json, "seam", ref.seam);
    json.member("pass", ref.pass);
    json.member("by", ref.by);
    json.end_object();
  }
  json.end_array();
}

void write_json(const RejectedRow& row, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("file", row.file);
  json.member("line", row.line);
  json.member("reason", row.reason);
  json.end_object();
}

void write_json(const AuditedLog& log, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("name", log.name);
  json.member("bytes", log.bytes);
  json.member("rows", log.rows);
  text_member(json, "sha256", log.sha256);
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
  write_identity(record, json);
  write_figures(record, json);
  write_steady(record.steady, json);
  json.key("verdict");
  if (record.verdict) {
    json.value(to_string(*record.verdict));
  } else {
    json.null();
  }
  write_rules("failed_by", record.failed_by, json);
  write_rules("undecided_by", record.undecided_by, json);
  write_coverage(record.coverage, json);
  text_member(json, "source", record.source);
  json.member("source_line_first", record.source_line_first);
  json.member("source_line_last", record.source_line_last);
  text_member(json, "started", record.started);
  text_member(json, "energy_method", record.energy_method);
  json.key("interruptions").begin_array();
  for (const auto& each : record.interruptions) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("start_s", each.start_s).member("duration_s", each.duration_s).member("line", each.line);
    json.end_object();
  }
  json.end_array();
  json.member("interruption_count", record.interruption_count);
  write_carried(record.carried, json);
  json.end_object();
}

void write_json(const UnitRecord& unit, JsonWriter& json) {
  json.begin_object();
  text_member(json, "unit_serial", unit.unit_serial);
  text_member(json, "weldment", unit.weldment);
  json.member("complete", unit.complete);
  json.member("complete_robot", unit.complete_robot);
  json.member("complete_manual", unit.complete_manual);
  write_refs("missing_passes", unit.missing_passes, json);
  write_refs("extra_passes", unit.extra_passes, json);
  write_refs("repeated_passes", unit.repeated_passes, json);
  json.key("open_items").begin_array();
  for (const OpenItem& item : unit.open_items) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("cause", item.cause).member("verdict", item.verdict);
    text_member(json, "text", item.text);
    write_refs("passes", item.passes, json);
    json.end_object();
  }
  json.end_array();
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
  text_member(json, "unit_serial", seam.unit_serial);
  text_member(json, "weldment", seam.weldment);
  text_member(json, "seam", seam.seam);
  json.member("pass", seam.pass);
  text_member(json, "welder", seam.welder);
  text_member(json, "schedule", seam.schedule);
  text_member(json, "date", seam.date);
  text_member(json, "result", seam.result);
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

}  // namespace seamtakt
