#include "records/passes/pass_columns.hpp"

namespace seamtakt {

using namespace results;

namespace {

constexpr auto compact = JsonWriter::Layout::compact;

ColumnValue verdict_of(const PassRecord& record) {
  return column_value(std::string_view(record.verdict ? to_string(*record.verdict) : ""));
}

void text_member(JsonWriter& json, const char* key, const std::string& text) {
  json.key(key);
  write_value(json, column_value(text));
}

void write_steady(JsonWriter& json, const PassRecord& record) {
  json.begin_object(compact);
  write_members(json, steady_columns(), record.steady);
  json.end_object();
}

void write_coverage(JsonWriter& json, const PassRecord& record) {
  if (!record.coverage) {
    json.null();
    return;
  }
  json.begin_object(compact);
  write_members(json, coverage_columns(), *record.coverage);
  json.end_object();
}

void write_spans(JsonWriter& json, const PassCoverage& coverage) {
  json.begin_array(compact);
  for (const WeldedSpan& span : coverage.spans) {
    json.begin_array(compact);
    json.value(span.from_mm).value(span.to_mm).end_array();
  }
  json.end_array();
}

void write_with_records(JsonWriter& json, const PassCoverage& coverage) {
  json.begin_array(compact);
  for (const std::uint64_t seq : coverage.with_records) json.value(seq);
  json.end_array();
}

template <auto Member, class Row = PassRecord>
void write_rules(JsonWriter& json, const Row& row) {
  json.begin_array(compact);
  for (const std::string& rule : row.*Member) json.value(rule);
  json.end_array();
}

void write_interruptions(JsonWriter& json, const PassRecord& record) {
  json.begin_array();
  for (const Interruption& each : record.interruptions) {
    json.begin_object(compact);
    json.member("start_s", each.start_s).member("duration_s", each.duration_s).member("line", each.line);
    json.end_object();
  }
  json.end_array();
}

void write_excursions(JsonWriter& json, const PassRecord& record) {
  json.begin_array();
  for (const Excursion& each : record.excursions) {
    json.begin_object(compact);
    json.member("quantity", each.quantity).member("start_s", each.start_s).member("end_s", each.end_s);
    json.member("length_mm", each.length_mm).member("value", each.value).member("limit", each.limit);
    json.end_object();
  }
  json.end_array();
}

/// One value of a carried column, or all of them where it changed.
void write_carried(JsonWriter& json, const PassRecord& record) {
  json.begin_object(compact);
  for (const CarriedColumn& column : record.carried) {
    json.key(column.name);
    if (column.values.empty()) {
      json.null();
    } else if (column.values.size() == 1) {
      json.value(column.values[0]);
    } else {
      json.begin_array(compact);
      for (const std::string& value : column.values) json.value(value);
      json.end_array();
    }
  }
  json.end_object();
}

void write_refs(JsonWriter& json, const std::vector<PassRef>& refs) {
  json.begin_array();
  for (const PassRef& ref : refs) {
    json.begin_object(compact);
    text_member(json, "seam", ref.seam);
    json.member("pass", ref.pass);
    json.member("by", ref.by);
    json.end_object();
  }
  json.end_array();
}

template <auto Member>
void write_refs_of(JsonWriter& json, const UnitRecord& unit) {
  write_refs(json, unit.*Member);
}

void write_open_items(JsonWriter& json, const UnitRecord& unit) {
  json.begin_array();
  for (const OpenItem& item : unit.open_items) {
    json.begin_object(compact);
    json.member("cause", item.cause).member("verdict", item.verdict);
    text_member(json, "text", item.sentence.english());
    json.key("passes");
    write_refs(json, item.passes);
    json.end_object();
  }
  json.end_array();
}

bool has_only_logged_speed(const PassRecord& record) {
  return !record.travel_speed_mm_s && record.logged_travel_speed_mm_s.has_value();
}

/// The mean of the signal is the record's speed only where nothing says how long the weld is.
constexpr Column<PassRecord> logged_speed_column() {
  auto made = column<PassRecord, &PassRecord::logged_travel_speed_mm_s>(
      "logged_travel_speed_mm_s", "Travel speed, logged", "mm/s", 4, full_only,
      "Mean of the logged signal with the arc on, where no welded length is known");
  made.present = has_only_logged_speed;
  return made;
}

bool has_lead_resistance(const PassRecord& record) {
  return record.lead_resistance_mOhm.has_value();
}

constexpr Column<PassRecord> lead_column() {
  auto made = column<PassRecord, &PassRecord::lead_resistance_mOhm>(
      "lead_resistance_mOhm", "Lead resistance", "mOhm", 3, full_only,
      "That mean voltage, power and energy are corrected for");
  made.present = has_lead_resistance;
  return made;
}

using P = PassRecord;
using S = SteadyMeans;
using C = PassCoverage;
using U = UnitRecord;
using M = ManualSeam;

constexpr Column<P> record_table[] = {
    column<P, &P::unit_serial>("unit_serial", "Unit"),
    column<P, &P::weldment>("weldment", "Weldment"),
    column<P, &P::seam>("seam", "Seam", "", 0, brief),
    column<P, &P::pass>("pass", "Pass", "", 9, brief),
    column<P, &P::schedule>("schedule", "Schedule", "", 0, brief),
    column<P, &P::schedule_revision_logged>("schedule_revision", "Schedule revision, logged"),
    column<P, &P::robot>("robot", "Robot", "", 0, brief),
    column<P, &P::samples>("samples", "Rows", "", 12),
    column<P, &P::duration_s>("duration_s", "Duration", "s", 5),
    column<P, &P::arc_time_s>("arc_time_s", "Arc time", "s", 5, brief),
    column<P, &P::arc_starts>("arc_starts", "Arc starts", "", 9, brief, "", "Starts"),
    column<P, &P::length_mm>("length_mm", "Length", "mm", 5, brief),
    column<P, &P::length_source>("length_source", "Length from"),
    column<P, &P::overlap_mm>("overlap_mm", "Overlap", "mm", 4),
    column<P, &P::product_power_W>("product_power_W", "Mean voltage x mean current", "W", 5),
    column<P, &P::mean_current_A>("mean_current_A", "Current", "A", 4, brief),
    column<P, &P::mean_voltage_V>("mean_voltage_V", "Voltage", "V", 4, brief),
    lead_column(),
    column<P, &P::mean_power_W>("mean_power_W", "Power", "W", 5),
    column<P, &P::energy_J>("energy_J", "Energy", "J", 6, brief),
    column<P, &P::waveform_factor>("waveform_factor", "Waveform factor", "", 4),
    column<P, &P::travel_speed_mm_s>("travel_speed_mm_s", "Travel speed", "mm/s", 4, brief,
                                     "Welded length over arc time"),
    logged_speed_column(),
    column<P, &P::wire_feed_speed_m_min>("wire_feed_speed_m_min", "Wire feed speed", "m/min", 4),
    column<P, &P::wire_counter_m_min>("wire_counter_m_min", "Wire feed by counter", "m/min", 4),
    column<P, &P::gas_flow_l_min>("gas_flow_l_min", "Gas flow", "l/min", 4),
    column<P, &P::interpass_C>("interpass_C", "Interpass", "C", 4, brief),
    column<P, &P::arc_energy_kJ_mm>("arc_energy_kJ_mm", "Arc energy", "kJ/mm", 4, brief),
    column<P, &P::heat_input_kJ_mm>("heat_input_kJ_mm", "Heat input", "kJ/mm", 4, brief),
    column<P, &P::U_heat_input_kJ_mm>("U_heat_input_kJ_mm", "U (k = 2)", "kJ/mm", 2, brief,
                                      "Expanded uncertainty, k = 2", "U"),
    column<P, &P::thermal_efficiency>("thermal_efficiency", "Thermal efficiency", "", 3, full_only,
                                      "k of EN 1011-1 by the welding process: heat input = k x arc energy",
                                      "k"),
    column<P, &P::u_voltage_pct>("u_voltage_pct", "Uncertainty of the voltage", "%", 3, full_only,
                                 "Standard uncertainty by the instruments in force"),
    column<P, &P::u_current_pct>("u_current_pct", "Uncertainty of the current", "%", 3, full_only,
                                 "Standard uncertainty by the instruments in force"),
    column<P, &P::u_travel_speed_pct>("u_travel_speed_pct", "Uncertainty of the travel speed", "%", 3,
                                      full_only, "Standard uncertainty by the instruments in force"),
    column<P, &P::u_waveform_factor_pct>("u_waveform_factor_pct", "Uncertainty of the waveform factor", "%",
                                         3, full_only, "Standard uncertainty by the schedule"),
    column<P, &P::cooling_time_s>("cooling_time_s", "t8/5 by EN 1011-2", "s", 4, brief,
                                  "By EN 1011-2, annex D, from the logged temperature where there is one",
                                  "t8/5"),
    column<P, &P::cooling_from_C>("cooling_from_C", "t8/5 from", "C", 4, brief),
    column<P, &P::cooling_from_source>("cooling_from_source", "t8/5 from, source"),
    column<P, &P::haz_hardness_HV>("haz_hardness_HV", "HAZ hardness", "HV", 3),
    column<P, &P::min_current_A>("min_current_A", "Least current", "A", 4),
    column<P, &P::max_current_A>("max_current_A", "Largest current", "A", 4),
    column<P, &P::min_voltage_V>("min_voltage_V", "Least voltage", "V", 4),
    column<P, &P::max_voltage_V>("max_voltage_V", "Largest voltage", "V", 4),
    column<P, &P::rms_current_A>("rms_current_A", "Current, rms", "A", 4),
    column<P, &P::sd_current_A>("sd_current_A", "Current, standard deviation", "A", 3),
    column<P, &P::sd_voltage_V>("sd_voltage_V", "Voltage, standard deviation", "V", 3),
    column<P, &P::start_stand_s>("start_stand_s", "Standing at start", "s", 3),
    column<P, &P::end_stand_s>("end_stand_s", "Standing at end", "s", 3),
    column<P, &P::frozen_s>("frozen_s", "Frozen logger", "s", 3),
    json_column<P>("steady", write_steady),
    json_column<P>("excursions", write_excursions),
    column<P, &P::excursion_count>("excursion_count", "Excursions", "", 9, full_only,
                                   "Stretches outside a limit by means over consecutive bins"),
    {"verdict", "Verdict", "", 0, brief, "", verdict_of},
    json_column<P>("failed_by", write_rules<&P::failed_by>),
    json_column<P>("undecided_by", write_rules<&P::undecided_by>),
    json_column<P>("coverage", write_coverage),
    column<P, &P::source>("source", "Log"),
    column<P, &P::source_line_first>("source_line_first", "First line", "", 12),
    column<P, &P::source_line_last>("source_line_last", "Last line", "", 12),
    column<P, &P::started>("started", "Started", "", 0, brief),
    column<P, &P::energy_method>("energy_method", "Method", "", 0, full_only,
                                 "Energy by method A, B or C of ISO/TR 18491"),
    column<P, &P::power_method>("power_method", "Power by", "", 0, full_only,
                                "Mean of the products of voltage and current, product of their means, or as "
                                "it was logged"),
    json_column<P>("interruptions", write_interruptions),
    column<P, &P::interruption_count>("interruption_count", "Interruptions", "", 9),
    json_column<P>("carried", write_carried),
};

constexpr Column<S> steady_table[] = {
    column<S, &S::time_s>("time_s", "Steady time", "s", 5),
    column<S, &S::current_A>("current_A", "Current", "A", 4),
    column<S, &S::voltage_V>("voltage_V", "Voltage", "V", 4),
    column<S, &S::power_W>("power_W", "Power", "W", 5),
    column<S, &S::wire_feed_speed_m_min>("wire_feed_speed_m_min", "Wire feed speed", "m/min", 4),
    column<S, &S::travel_speed_mm_s>("travel_speed_mm_s", "Travel speed", "mm/s", 4),
    column<S, &S::gas_flow_l_min>("gas_flow_l_min", "Gas flow", "l/min", 4),
};

constexpr Column<C> coverage_table[] = {
    json_column<C>("spans_mm", write_spans),
    column<C, &C::welded_mm>("welded_mm", "Welded", "mm", 5),
    column<C, &C::path_mm>("path_mm", "Seam's path", "mm", 5),
    column<C, &C::needed_mm>("needed_mm", "Seam needs", "mm", 5, brief),
    column<C, &C::run_mm>("run_mm", "Run", "mm", 5),
    column<C, &C::gap_mm>("gap_mm", "Gap between runs", "mm", 5),
    column<C, &C::covered_mm>("covered_mm", "Seam covered", "mm", 5, brief),
    column<C, &C::allowed_short_mm>("allowed_short_mm", "Allowed short", "mm", 4),
    column<C, &C::is_part>("is_part", "Part of the seam"),
    json_column<C>("with_records", write_with_records),
};

constexpr Column<U> unit_table[] = {
    column<U, &U::unit_serial>("unit_serial", "Unit", "", 0, brief),
    column<U, &U::weldment>("weldment", "Weldment", "", 0, brief),
    column<U, &U::complete>("complete", "Complete", "", 0, brief),
    column<U, &U::complete_robot>("complete_robot", "Robot", "", 0, brief),
    column<U, &U::complete_manual>("complete_manual", "Manual", "", 0, brief),
    json_column<U>("missing_passes", write_refs_of<&U::missing_passes>),
    json_column<U>("extra_passes", write_refs_of<&U::extra_passes>),
    json_column<U>("repeated_passes", write_refs_of<&U::repeated_passes>),
    json_column<U>("open_items", write_open_items),
};

constexpr Column<M> manual_table[] = {
    column<M, &M::unit_serial>("unit_serial", "Unit"),
    column<M, &M::weldment>("weldment", "Weldment"),
    column<M, &M::seam>("seam", "Seam", "", 0, brief),
    column<M, &M::pass>("pass", "Pass", "", 0, brief),
    column<M, &M::welder>("welder", "Welder"),
    column<M, &M::schedule>("schedule", "Schedule", "", 0, brief),
    column<M, &M::date>("date", "Date", "", 0, brief),
    column<M, &M::result>("result", "Result", "", 0, brief),
    json_column<M>("failed_by", write_rules<&M::failed_by, M>),
    json_column<M>("undecided_by", write_rules<&M::undecided_by, M>),
};

}  // namespace

std::span<const Column<PassRecord>> record_columns() {
  return record_table;
}
std::span<const Column<SteadyMeans>> steady_columns() {
  return steady_table;
}
std::span<const Column<PassCoverage>> coverage_columns() {
  return coverage_table;
}
std::span<const Column<UnitRecord>> unit_record_columns() {
  return unit_table;
}
std::span<const Column<ManualSeam>> manual_columns() {
  return manual_table;
}

}  // namespace seamtakt
