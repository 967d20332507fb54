#include "cli/manual/result_shapes.hpp"

#include "cell/timeline/cycle_columns.hpp"
#include "cli/manual/column_shape.hpp"
#include "formula/quantities/quantity.hpp"
#include "line/line_columns.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt::cli {

namespace {

constexpr const char* findings_and_provenance = "findings: [@finding], provenance: @provenance";

std::string with_findings(const std::string& members) {
  return "{" + members + ", " + findings_and_provenance + "}";
}

/// A quantity's result with the uncertainty that it has where one was given.
std::string result_members(const std::string& key, const ResultSpec& spec) {
  return key + ": " + (*spec.unit != '\0' ? "measure" : "scalar") + ", u_" + key + "?: number, U_" + key +
         "?: number, u_monte_carlo_" + key + "?: number, ";
}

std::string quantity_shape(const Quantity& quantity) {
  std::string members = std::string("quantity: \"") + quantity.name + "\", ", group;
  for (const ResultSpec& spec : quantity.results) {
    const std::string key = spec.key;
    const std::size_t dot = key.find('.');
    const std::string here = dot == std::string::npos ? "" : key.substr(0, dot);
    if (here != group) {
      if (!group.empty()) members += "}, ";
      if (!here.empty()) members += here + ": {";
      group = here;
    }
    members += result_members(dot == std::string::npos ? key : key.substr(dot + 1), spec);
  }
  if (!group.empty()) members += "}, ";
  return with_findings(members + "formulas?: [@explanation]");
}

}  // namespace

std::vector<NamedShape> common_shapes() {
  return {
      {"finding",
       "{rule: text, severity: \"note\" | \"warn\" | \"fail\", where: text, value: number?, limit: number?, "
       "unit: text?, text: text, source: text, sentence: text?, arguments: <any>}"},
      {"provenance", "{program: text, catalogue_sha256: text, plan?: text, plan_sha256?: text}"},
      {"degrees_of_freedom", "number? | \"infinite\""},
      {"explanation",
       "{key: text, value: number, unit: text, formula: text, numbers: text, symbols: [{symbol: text, "
       "meaning: "
       "text, value: number, unit: text}], source: text, clause: text, range: text, accuracy: text, basis: "
       "text, "
       "validation: text, measured: {values: whole, bias_pct: number?, scatter_pct: number?, within_pct: "
       "number?, "
       "coverage_pct: number?, source: text}?, budget?: @budget}"},
      {"budget",
       "{U: number, u: number, k: number, first_order: truth, degrees_of_freedom: @degrees_of_freedom, "
       "inputs: "
       "[{input: text, value: number, unit: text, u: number, distribution: text, sensitivity: number, "
       "contribution: number, share_pct: number, degrees_of_freedom: @degrees_of_freedom}]}"},
      {"moved_seam",
       "{weldment: text, seam: text, to: text?, schedule: text?, hand_time_s: number?, basis: text?}"},
  };
}

std::vector<NamedShape> calc_shapes() {
  std::vector<NamedShape> shapes;
  for (const Quantity* quantity : quantities())
    shapes.push_back({"calc-" + std::string(quantity->name), quantity_shape(*quantity)});
  return shapes;
}

std::vector<NamedShape> plan_shapes() {
  const std::string settings =
      "{schedule: text, revision: scalar, wire_feed_speed_m_min: number, arc_voltage_V: number, "
      "travel_speed_mm_s: number, passes: whole, heat_input_kJ_mm: number?, leg_mm: number?, time_s: "
      "number?, "
      "heat_kJ: number?, cost: number?}";
  const std::string limits =
      "[{rule: text, side: \"upper\" | \"lower\", bound: number?, needed: number?, unit: text, text: text, "
      "sentence: text?, arguments: <any>, needed_with: [text]}]";
  const std::string map = "[[number?]]?";
  return {
      {"evaluate",
       with_findings("passes: [" + row_shape(pass_columns()) + "], seams: [" + row_shape(seam_columns()) +
                     "], weldments: [" + row_shape(weldment_columns()) + "]") +
           " | {explanation: {where: text, key: text, formulas: [@explanation]}, provenance: "
           "@provenance}"},
      {"window",
       with_findings(
           "weldment: text, seam: text, schedule: text, passes: whole, wire_feed_speed_m_min: [number], "
           "travel_speed_mm_s: [number], current_A: [number?], voltage_V: [number?], "
           "deposition_rate_kg_h: [number?], maps: <" +
           map +
           ">, feasible: [[truth]], feasible_pct: number, working_point: {wire_feed_speed_m_min: "
           "number, travel_speed_mm_s: number, feasible: truth}, limits: [{rule: text, what: text, key: "
           "text?, side: \"upper\" | \"lower\", bound: number?, value: number?, margin: number?, unit: "
           "text, broken_pct: number, alone_pct: number, cuts: truth, source: text}]")},
      {"fit",
       with_findings("objective: text, holds: [text], margin_pct: number, output: text?, seams: "
                     "[{weldment: text, seam: text, fitted: truth, "
                     "changed: truth, existing_schedule: truth, old: " +
                     settings + ", new: " + settings + "?, binding_limits: " + limits +
                     ", conflicts: " + limits + ", other_schedules: [text], left_as_they_are: [text]}]")},
      {"diff", "{differences: [{kind: text, where: text, before: any, after: any}]}"},
      {"merge", "{conflicts: [{where: text, base: any, a: any, b: any}], written: text?}"},
      {"import",
       "{file: text, list: \"seams\" | \"schedules\", sheet: text, head_row: whole, columns: [{column: text, "
       "heading: text, key: text?, unit: text}], counts: <whole>, new_weldments: [text], rows: [{row: whole, "
       "weldment?: text, id: text, state: text, changes: [<any>]}], refused: [{sheet: text, row: whole, "
       "heading: "
       "text, place: text, found: text, expected: text}], notes: [text], written: text?, provenance: "
       "@provenance}"},
  };
}

std::vector<NamedShape> cell_shapes() {
  const std::string difference = "{part: text, quantity: number, needed: number, found: number}";
  const MemberShapes cycle = {{"waits", "[{cause: text, time_s: number}]"},
                              {"moves", "[" + row_shape(move_columns()) + "]"}};
  const MemberShapes line = {
      {"draw", "<any>"},
      {"stages", "[" + row_shape(stage_columns()) + "]"},
      {"units", "[" + row_shape(unit_columns()) + "]"},
      {"takt_misses_by_cause", "[<any>]"},
      {"worst_window", "<any>?"},
      {"mean_of_runs", "@line_figures"},
      {"cures",
       "[" + row_shape(improvement_columns(true)) + " | " + row_shape(improvement_columns(false)) + "]"},
      {"waiting", "[" + row_shape(waiting_columns()) + "]"},
      {"with_all_carts", "@line_figures"},
      {"unfinished_first_day", "[text]"},
      {"levelling", "{before: @line_figures, after: @line_figures, order_before: [text]}"}};
  return {
      {"line_figures", row_shape(figures_columns(true)) + " | " + row_shape(figures_columns(false))},
      {"cycle",
       with_findings("weldments: [" + row_shape(cycle_columns(), cycle) + "], moved_seams?: [@moved_seam]")},
      {"line", with_findings(members_shape(line_columns(), line) + ", moved_seams?: [@moved_seam]")},
      {"kit",
       with_findings("weldment: text, complete: truth, missing: [" + difference + "], extra: [" + difference +
                     "], parts: [{part: text, quantity: number, heats: [text], expected?: "
                     "[{quantity: number, arrives: text | number}]}]")},
  };
}

}  // namespace seamtakt::cli
