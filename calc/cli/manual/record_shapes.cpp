#include "cli/manual/column_shape.hpp"
#include "cli/manual/result_shapes.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt::cli {

namespace {

const char* const written_shape = "{seq: whole, text: text, head: text}";

/// Records have the members of their bodies, which are of their kind.
const char* const record_shape = "<any>";

NamedShape written(const char* command) {
  return {std::string("ledger-") + command, written_shape};
}

}  // namespace

std::vector<NamedShape> record_shapes() {
  const MemberShapes pass = {
      {"steady", row_shape(steady_columns())},
      {"coverage",
       row_shape(coverage_columns(), {{"spans_mm", "[[number]]"}, {"with_records", "[whole]"}}) + "?"},
      {"interruptions", "[{start_s: number, duration_s: number, line: whole}]"},
      {"excursions",
       "[{quantity: text, start_s: number, end_s: number, length_mm: number?, value: number, limit: "
       "number}]"},
      {"failed_by", "[text]"},
      {"undecided_by", "[text]"},
      {"carried", "<text? | [text]>"}};
  const std::string refs = "[{seam: text?, pass: whole, by: text}]";
  const MemberShapes unit = {
      {"missing_passes", refs},
      {"extra_passes", refs},
      {"repeated_passes", refs},
      {"open_items", "[{cause: text, verdict: text, text: text?, passes: " + refs + "}]"}};
  const MemberShapes manual = {{"failed_by", "[text]"}, {"undecided_by", "[text]"}};
  const std::string changes = "[{where: text, old: number?, new: number?}]";
  return {
      {"audit",
       "{passes: [" + row_shape(record_columns(), pass) + "], units: [" +
           row_shape(unit_record_columns(), unit) +
           "], rejected: [{file: text, line: whole, reason: text}], rejected_count: whole, manual: [" +
           row_shape(manual_columns(), manual) +
           "], rows: {read: whole, in_passes: whole, arc_off: whole, rejected: whole}, logs: [{name: text, "
           "bytes: "
           "whole, rows: whole, sha256: text?}], statistics: <any>, findings: [@finding], cycle_actual?: "
           "[<any>]?}"},
      {"learn",
       "{parameters: [{name: text, unit: text?, old: number?, new: number?, low_95: number?, high_95: "
       "number?, "
       "records: whole, outliers: whole, leave_one_out_low: number?, leave_one_out_high: number?, "
       "prediction_sd_pct: number?, proposed: truth}], gaps: [{robot: text, gaps: whole, used: whole, "
       "left_out: "
       "[{why: text, gaps: whole}]}], undetermined: [{name: text, why: text}], changes: {heat_input_kJ_mm: " +
           changes + ", leg_mm: " + changes + ", cycle_time_s: " + changes +
           "}, findings: [@finding], provenance: @provenance}"},
      {"measure",
       "{weldment: text, tolerance_class: text, alignment: text, points: [{point: text, x_mm: number, y_mm: "
       "number, "
       "z_mm: number, part_C: number?}], features: [{feature: text, kind: text, unit: text, nominal: "
       "number?, "
       "measured: number?, deviation: number?, tolerance: number?, within: truth?, predicted: number?, "
       "hints: "
       "[{seam: text, factor: number, share: number}], unexplained: number?}], findings: [@finding], "
       "provenance: "
       "@provenance}"},
  };
}

std::vector<NamedShape> ledger_shapes() {
  const std::string record = record_shape, wrote = written_shape;
  const std::string failed =
      "{seq: whole, record: whole, opened: text, unit_serial: text, place: text, text: text, open: truth, "
      "decision: text?, retest: whole?, dispositions: [whole]}";
  std::vector<NamedShape> shapes = {
      {"ledger-list", "{records: [" + record + "]}"},
      {"ledger-show", "{record: " + record +
                          ", body: text, results_now?: <any>, proof?: <any>} | {unit: <any>} | "
                          "{explanation: <any>}"},
      {"ledger-verify",
       "{trusted: truth, summary: text, unanchored: truth, pinned: truth, anchored_to: whole, records: "
       "whole, "
       "looked_from: whole, heads: whole, first_bad_seq: whole?, problems: [{seq: whole, last_seq: whole, "
       "text: "
       "text}], warnings: [text], head: <any>?}"},
      {"ledger-head", "{head: <any>}"},
      {"ledger-export", "{written: text}"},
      {"ledger-import", "{records_before: whole, records_added: whole, heads_added: whole, text: text}"},
      {"ledger-anchor", "{anchor: text} | " + wrote},
      {"ledger-nonconformance", "{nonconformances: [" + failed + "]} | " + wrote},
      {"ledger-key",
       "{store: text, key_id: text, public_key: text, since_record: whole, file: text, file_exists: truth}"},
      {"ledger-timestamp", "{query: text, n: whole, head_sha256: text} | " + wrote},
  };
  for (const char* command :
       {"correct", "void", "sign", "person", "calibrate", "disposition", "note", "retain", "hold", "unhold"})
    shapes.push_back(written(command));
  return shapes;
}

}  // namespace seamtakt::cli
