#include <memory>

#include "cell/timeline.hpp"
#include "cli/command.hpp"
#include "cli/output.hpp"
#include "cli/plan_option.hpp"
#include "plan/evaluate.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, weldment, order = "given";
  bool json = false, summary = false;
};

void write_moves(JsonWriter& json, const CycleResult& cycle) {
  json.key("moves").begin_array();
  for (const Move& move : cycle.moves) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("robot", move.robot);
    if (move.seam.empty())
      json.null_member("seam");
    else
      json.member("seam", move.seam);
    if (move.pass > 0) json.member("pass", move.pass);
    json.member("reversed", move.reversed).member("start_s", move.start_s).member("end_s", move.end_s);
    json.member("kind", to_string(move.kind));
    json.end_object();
  }
  json.end_array();
}

void write_cycle(JsonWriter& json, const CycleResult& cycle) {
  json.begin_object();
  json.member("weldment", cycle.weldment).member("cycle_time_s", cycle.cycle_time_s).member("weld_s", cycle.weld_s);
  json.member("arc_on_s", cycle.arc_on_s).member("air_s", cycle.air_s).member("sense_s", cycle.sense_s);
  json.member("start_end_s", cycle.start_end_s).member("wait_s", cycle.wait_s);
  json.member("orientation_s", cycle.orientation_s).member("service_s", cycle.service_s);
  json.member("wire_change_s", cycle.wire_change_s).member("load_unload_s", cycle.load_unload_s);
  json.member("arc_on_ratio", cycle.arc_on_ratio).member("takt_s", cycle.takt_s);
  json.member("takt_margin_s", cycle.takt_margin_s).member("lower_bound_s", cycle.lower_bound_s);
  json.member("gap_pct", cycle.gap_pct);
  write_moves(json, cycle);
  json.end_object();
}

std::string summary_table(const std::vector<CycleResult>& cycles) {
  TextTable table({{"Weldment", "", true, 0}, {"Cycle", "s", false, 5}, {"Takt", "s", false, 5}, {"Margin", "s", false, 5},
                   {"Bound", "s", false, 5}, {"Weld", "s", false, 5}, {"Arc on", "s", false, 5}, {"Air", "s", false, 4},
                   {"Start+end", "s", false, 4}, {"Sense", "s", false, 4}, {"Wait", "s", false, 4},
                   {"Positioner", "s", false, 4}, {"Service", "s", false, 4}, {"Wire change", "s", false, 4},
                   {"Arc-on ratio", "", false, 3}});
  for (const CycleResult& cycle : cycles)
    table.cell(cycle.weldment).cell(cycle.cycle_time_s).cell(cycle.takt_s).cell(cycle.takt_margin_s)
        .cell(cycle.lower_bound_s).cell(cycle.weld_s).cell(cycle.arc_on_s).cell(cycle.air_s).cell(cycle.start_end_s)
        .cell(cycle.sense_s).cell(cycle.wait_s).cell(cycle.orientation_s).cell(cycle.service_s).cell(cycle.wire_change_s)
        .cell(cycle.arc_on_ratio);
  return table.text();
}

std::string moves_table(const CycleResult& cycle) {
  TextTable table({{"Robot", "", true, 0}, {"Start", "s", false, 6}, {"End", "s", false, 6}, {"Kind", "", true, 0},
                   {"Seam", "", true, 0}, {"Pass", "", true, 0}, {"Direction", "", true, 0}});
  for (const Move& move : cycle.moves)
    table.cell(move.robot).cell(move.start_s).cell(move.end_s).cell(to_string(move.kind)).cell(move.seam)
        .cell(move.pass > 0 ? std::to_string(move.pass) : std::string())
        .cell(move.kind != MoveKind::arc ? "" : move.reversed ? "reversed" : "as drawn");
  return "\nWeldment " + cycle.weldment + "\n" + table.text();
}

void run(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  const Evaluation evaluation = evaluate(loaded.plan);
  std::vector<CycleResult> cycles;
  Findings findings;
  for (const Weldment* weldment : chosen_weldments(loaded.plan, options.weldment)) {
    cycles.push_back(cycle_given(loaded.plan, *weldment, evaluation));
    findings.insert(findings.end(), cycles.back().findings.begin(), cycles.back().findings.end());
  }
  result.exit_code = exit_code_for(findings);
  if (options.json) {
    JsonWriter json;
    json.begin_object().key("weldments").begin_array();
    for (const CycleResult& cycle : cycles) write_cycle(json, cycle);
    json.end_array();
    write_findings(json, findings);
    write_provenance(json, loaded.provenance);
    json.end_object();
    result.output = json.take();
    return;
  }
  result.output = summary_table(cycles);
  if (!options.summary)
    for (const CycleResult& cycle : cycles) result.output += moves_table(cycle);
  result.output += "\nFindings: " + findings_count(findings) + "\n" + findings_text(findings);
}

}  // namespace

void add_cycle(CLI::App& app, Result& result) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("cycle", "The robots' timelines of each weldment, against takt");
  command->add_option("PLAN", options->plan, "plan file (NAME.weldplan.json)")->required();
  command->add_option("--weldment", options->weldment, "only this weldment");
  command->add_option("--order", options->order, "given: seams in file order")->check(CLI::IsMember({"given"}));
  command->add_flag("--summary", options->summary, "without the moves");
  command->add_flag("--json", options->json, "one JSON document on standard output");
  command->callback([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
