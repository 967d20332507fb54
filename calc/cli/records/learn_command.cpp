#include <filesystem>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/sentences/place_sentence.hpp"
#include "cell/timeline/timeline.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/common/progress_bar.hpp"
#include "cli/plan/plan_option.hpp"
#include "cli/records/shown_record.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "records/learn/learn.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::vector<std::string> logs;
  std::string plan, columns, units, weighed, output;
  std::size_t max_passes = LogLimits().passes;
  unsigned threads = 0;
  bool json = false;
};

/// A figure of the plan as it is and as the proposal has it.
struct Change {
  std::string where;
  double before = 0, after = 0;
};

struct Changes {
  std::vector<Change> heat_input_kJ_mm, leg_mm, cycle_time_s;
};

std::vector<PassRecord> records_of(const Options& given, const Plan& plan) {
  AuditOptions options;
  options.reader.threads = given.threads;
  options.reader.limits.passes = given.max_passes;
  if (!given.columns.empty()) options.columns = load_log_columns(given.columns);
  if (!given.units.empty()) options.units = load_unit_times(given.units);
  options.progress = [bar = std::make_shared<ProgressBar>("learn")](std::uint64_t done, std::uint64_t all) {
    bar->show(done, all);
  };
  std::vector<LogSource> logs;
  for (const std::string& path : given.logs) logs.push_back({path, nullptr});
  AuditResult audited = audit(logs, options, &plan);
  if (audited.too_many_rejected)
    throw InputError(
        audited.rejected.listed.at(0).file + ":" + std::to_string(audited.rejected.listed[0].line),
        audited.rejected.listed[0].reason, "rows that can be read (audit lists all that can't)"_word);
  return std::move(audited.passes);
}

Changes changes_of(const Plan& plan, const Plan& proposal) {
  Changes changes;
  const Evaluation before = evaluate(plan), after = evaluate(proposal);
  for (std::size_t i = 0; i < before.passes.size(); ++i) {
    const PassEvaluation& pass = before.passes[i];
    if (pass.heat_input_kJ_mm != after.passes[i].heat_input_kJ_mm)
      changes.heat_input_kJ_mm.push_back(
          {pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass), pass.heat_input_kJ_mm,
           after.passes[i].heat_input_kJ_mm});
  }
  for (std::size_t i = 0; i < before.seams.size(); ++i) {
    const SeamEvaluation &seam = before.seams[i], &then = after.seams[i];
    if (seam.leg_mm && then.leg_mm && *seam.leg_mm != *then.leg_mm)
      changes.leg_mm.push_back({seam.weldment + "/" + seam.seam, *seam.leg_mm, *then.leg_mm});
  }
  if (!plan.cell) return changes;
  for (std::size_t i = 0; i < plan.weldments.size(); ++i) {
    const double now = cycle_given(plan, plan.weldments[i], before).cycle_time_s;
    const double then = cycle_given(proposal, proposal.weldments[i], after).cycle_time_s;
    if (now != then) changes.cycle_time_s.push_back({plan.weldments[i].id, now, then});
  }
  return changes;
}

void write_changes(JsonWriter& json, const char* key, const std::vector<Change>& changes) {
  json.key(key).begin_array();
  for (const Change& change : changes) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("where", change.where).member("old", change.before).member("new", change.after).end_object();
  }
  json.end_array();
}

void write_parameter(JsonWriter& json, const LearnedParameter& parameter) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("name", parameter.name);
  if (parameter.unit.empty())
    json.null_member("unit");
  else
    json.member("unit", parameter.unit);
  json.member("old", parameter.old_value).member("new", parameter.new_value);
  json.member("low_95", parameter.low_95).member("high_95", parameter.high_95);
  json.member("records", parameter.records).member("outliers", parameter.outliers);
  json.member("leave_one_out_low", parameter.leave_one_out_low);
  json.member("leave_one_out_high", parameter.leave_one_out_high);
  json.member("prediction_sd_pct", parameter.prediction_sd_pct);
  json.member("proposed", parameter.proposed).end_object();
}

void write_gaps(JsonWriter& json, const Learned& learned) {
  json.key("gaps").begin_array();
  for (const GapUse& use : learned.gaps) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("robot", use.robot).member("gaps", use.gaps).member("used", use.used);
    json.key("left_out").begin_array();
    for (const auto& [why, count] : use.left_out)
      json.begin_object().member("why", why.english()).member("gaps", count).end_object();
    json.end_array().end_object();
  }
  json.end_array();
  json.key("undetermined").begin_array();
  for (const Undetermined& each : learned.undetermined)
    json.begin_object(JsonWriter::Layout::compact)
        .member("name", each.name)
        .member("why", each.why.english())
        .end_object();
  json.end_array();
}

std::string json_of(const Learned& learned, const Changes& changes, const Provenance& provenance) {
  JsonWriter json;
  json.begin_object().key("parameters").begin_array();
  for (const LearnedParameter& parameter : learned.parameters) write_parameter(json, parameter);
  json.end_array();
  write_gaps(json, learned);
  json.key("changes").begin_object();
  write_changes(json, "heat_input_kJ_mm", changes.heat_input_kJ_mm);
  write_changes(json, "leg_mm", changes.leg_mm);
  write_changes(json, "cycle_time_s", changes.cycle_time_s);
  json.end_object();
  write_findings(json, learned.findings);
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

std::string parameter_table(const Learned& learned) {
  TextTable table({{"Parameter"_word, "", true, 0},
                   {"Unit"_word, "", true, 0},
                   {"Plan"_word, "", false, 5},
                   {"Records"_word, "", false, 5},
                   {"95 % from"_word, "", false, 5},
                   {"to"_word, "", false, 5},
                   {"One left out"_word, "", true, 5},
                   {"Predicts to"_word, "%", false, 2},
                   {"Passes"_word, "", false, 0},
                   {"Outliers"_word, "", false, 0},
                   {"Proposed"_word, "", true, 0}},
                  output_view());
  for (const LearnedParameter& parameter : learned.parameters) {
    const RowUnit unit(parameter.unit);
    table.cell(parameter.name)
        .cell(unit.name())
        .cell(unit.shown(parameter.old_value))
        .cell(unit.shown(parameter.new_value))
        .cell(unit.shown(parameter.low_95))
        .cell(unit.shown(parameter.high_95))
        .cell(std::array{unit.shown(parameter.leave_one_out_low), unit.shown(parameter.leave_one_out_high)})
        .cell(parameter.prediction_sd_pct)
        .cell(parameter.records)
        .cell(parameter.outliers)
        .cell(parameter.proposed ? "yes"_word : "no"_word);
  }
  return table.text();
}

/// How many gaps each robot's times could use, and the times that stay as they are.
std::string gaps_text(const Learned& learned) {
  std::string text;
  for (const GapUse& use : learned.gaps) {
    std::vector<Sentence> left_out;
    for (const auto& [why, count] : use.left_out)
      left_out.push_back(Sentence("cli.learn.left-out"_key, {{"gaps", count}, {"why", why}}));
    std::vector<Argument> arguments{{"robot", use.robot}, {"used", use.used}, {"gaps", use.gaps}};
    if (left_out.empty()) {
      text += shown_text(Sentence("cli.learn.gaps.all"_key, std::move(arguments))) + "\n";
      continue;
    }
    arguments.emplace_back("left_out", std::move(left_out));
    text += shown_text(Sentence("cli.learn.gaps"_key, std::move(arguments))) + "\n";
  }
  for (const Undetermined& each : learned.undetermined)
    text +=
        shown_text(Sentence("cli.learn.undetermined"_key, {{"name", each.name}, {"why", each.why}})) + "\n";
  return text.empty() ? text : "\n" + text;
}

std::string change_table(Word what, const char* unit, const std::vector<Change>& changes) {
  if (changes.empty()) return "";
  TextTable table({{what, "", true, 0},
                   {"Plan"_word, unit, false, 5},
                   {"Proposal"_word, unit, false, 5},
                   {"Change"_word, "%", false, 3}},
                  output_view());
  for (const Change& change : changes)
    table.cell(place_sentence(change.where))
        .cell(change.before)
        .cell(change.after)
        .cell(change.before != 0 ? std::optional<double>(100 * (change.after / change.before - 1))
                                 : std::nullopt);
  return "\n" + table.text();
}

void run(const Options& given, Result& result) {
  const LoadedPlan loaded = load(given.plan);
  const std::vector<Weighing> weighings =
      given.weighed.empty() ? std::vector<Weighing>() : load_weighings(given.weighed);
  const Learned learned = learn(records_of(given, loaded.plan), loaded.plan, weighings);
  const Changes changes = changes_of(loaded.plan, learned.proposal);
  if (!given.output.empty()) {
    std::error_code ignored;
    if (std::filesystem::equivalent(given.plan, given.output, ignored))
      throw InputError("--output", "the plan itself"_word,
                       "another file: a proposal never replaces the plan"_word);
    save_output(given.output, FileKind::plan, write_plan(learned.proposal));
  }
  result.exit_code = exit_code_for(learned.findings);
  if (given.json) {
    result.output = json_of(learned, changes, loaded.provenance);
    return;
  }
  result.output = parameter_table(learned) + gaps_text(learned) +
                  change_table("Heat input"_word, "kJ/mm", changes.heat_input_kJ_mm) +
                  change_table("Leg"_word, "mm", changes.leg_mm) +
                  change_table("Cycle"_word, "s", changes.cycle_time_s);
  if (!given.output.empty())
    result.output += "\n" + shown_text(Sentence("cli.learn.proposal"_key, {{"file", given.output}})) + "\n";
  result.output += findings_section(learned.findings);
}

}  // namespace

void add_learn(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command = app.command("learn", "Refits a plan's numbers from records, and proposes them");
  command.option("LOG", options->logs, "arc logs: CSV, .gz, or - for standard input").required();
  command.option("--plan", options->plan, "plan whose numbers are refitted").required();
  command.option("--columns", options->columns, "JSON that maps a log's own column names");
  command.option("--unit-times", options->units, "CSV of unit_serial, weldment, start, end: units by time");
  command.option("--weighed", options->weighed,
                 "CSV of unit_serial, seam, gained_g (weldment, pass): what welds gained on the scales");
  add_whole_number(command, "--max-passes", options->max_passes, 1, 10'000'000,
                   "passes that may be in the logs; each takes some 4 KB of memory [10000]");
  add_whole_number(command, "--threads", options->threads, 0, most_threads,
                   "threads that read [0: as many as the machine has]");
  command.option("--output", options->output, "plan file for the proposal; the plan itself is never changed");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
