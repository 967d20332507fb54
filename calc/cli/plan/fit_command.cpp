#include <filesystem>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/sentences/sentence_json.hpp"
#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/fit/fit.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, objective = "time", output;
  std::vector<std::string> seams, holds;
  double margin_pct = 0;
  bool overwrite = false, json = false;
};

void write_settings(JsonWriter& json, const char* key, const FitSettings& settings) {
  json.key(key).begin_object(JsonWriter::Layout::compact);
  json.member("schedule", settings.schedule).member("revision", settings.revision);
  json.member("wire_feed_speed_m_min", settings.wire_feed_speed_m_min);
  json.member("arc_voltage_V", settings.arc_voltage_V)
      .member("travel_speed_mm_s", settings.travel_speed_mm_s);
  json.member("passes", settings.passes).member("heat_input_kJ_mm", settings.heat_input_kJ_mm);
  json.member("leg_mm", settings.leg_mm)
      .member("time_s", settings.time_s)
      .member("heat_kJ", settings.heat_kJ);
  json.member("cost", settings.cost);
  json.end_object();
}

void write_names(JsonWriter& json, const char* key, const std::vector<std::string>& names) {
  json.key(key).begin_array(JsonWriter::Layout::compact);
  for (const std::string& name : names) json.value(name);
  json.end_array();
}

std::vector<std::string> rules_of(const std::vector<BrokenLimit>& limits) {
  std::vector<std::string> rules;
  for (const BrokenLimit& limit : limits) rules.push_back(limit.rule);
  return rules;
}

void write_limits(JsonWriter& json, const char* key, const std::vector<FitLimit>& limits) {
  json.key(key).begin_array();
  for (const FitLimit& limit : limits) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("rule", limit.rule)
        .member("side", limit.is_upper ? "upper" : "lower")
        .member("bound", limit.bound);
    json.member("needed", limit.needed).member("unit", limit.unit).member("text", limit.sentence.english());
    write_sentence_members(json, limit.sentence);
    write_names(json, "needed_with", rules_of(limit.needed_with));
    json.end_object();
  }
  json.end_array();
}

void write_seam(JsonWriter& json, const FittedSeam& seam) {
  json.begin_object();
  json.member("weldment", seam.weldment).member("seam", seam.seam);
  json.member("fitted", seam.has_settings).member("changed", seam.is_changed);
  json.member("existing_schedule", seam.is_existing);
  write_settings(json, "old", seam.before);
  if (seam.has_settings)
    write_settings(json, "new", seam.after);
  else
    json.null_member("new");
  write_limits(json, "binding_limits", seam.binding);
  write_limits(json, "conflicts", seam.conflicts);
  write_names(json, "other_schedules", seam.other_schedules);
  write_names(json, "left_as_they_are", seam.left_as_they_are);
  json.end_object();
}

std::string json_text(const FitResult& fitted, const Options& options, const Provenance& provenance) {
  JsonWriter json;
  json.begin_object();
  json.member("objective", options.objective);
  write_names(json, "holds", options.holds);
  json.member("margin_pct", options.margin_pct);
  if (options.output.empty())
    json.null_member("output");
  else
    json.member("output", options.output);
  json.key("seams").begin_array();
  for (const FittedSeam& seam : fitted.seams) write_seam(json, seam);
  json.end_array();
  write_findings(json, fitted.findings);
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

/// "5.2 > 6", or "6" where nothing changes; with the unit at its end in a sentence.
Sentence change_of(const UnitValue& from, const UnitValue& to) {
  if (from.value == to.value) return Sentence("fit.unchanged"_key, {{"value", to}});
  return Sentence("fit.changed"_key, {{"from", from}, {"to", to}});
}

/// The same in a column that says the unit.
std::string change_text(double from, double to, const char* unit = "") {
  const std::string after = output_view().number({to, unit});
  return from == to ? after : output_view().number({from, unit}) + " > " + after;
}

std::string limit_words(const std::vector<FitLimit>& limits) {
  std::vector<std::string> words;
  for (const FitLimit& limit : limits) words.push_back(shown_text(limit.sentence));
  return comma_list(words);
}

std::string schedule_text(const FittedSeam& seam) {
  const std::string &before = seam.before.schedule, &after = seam.after.schedule;
  const std::string change = before == after ? before : before + " > " + after;
  return seam.is_existing ? shown_text(Sentence("fit.change.existing"_key, {{"schedule", change}})) : change;
}

std::string changes_table(const FitResult& fitted) {
  TextTable table({{"Seam"_word, "", true, 0},
                   {"Schedule"_word, "", true, 0},
                   {"Passes"_word, "", true, 0},
                   {"Wire feed"_word, "m/min", true, 0},
                   {"Voltage"_word, "V", true, 0},
                   {"Travel"_word, "mm/s", true, 0},
                   {"Heat input"_word, "kJ/mm", true, 0},
                   {"Leg"_word, "mm", true, 0},
                   {"Time"_word, "s", true, 0},
                   {"Cost"_word, "", true, 0},
                   {"Held back by"_word, "", true, 0}},
                  output_view());
  for (const FittedSeam& seam : fitted.seams) {
    if (!seam.is_changed) continue;
    const FitSettings &a = seam.before, &b = seam.after;
    table.cell(seam.weldment + "/" + seam.seam).cell(schedule_text(seam));
    table.cell(change_text(a.passes, b.passes))
        .cell(change_text(a.wire_feed_speed_m_min, b.wire_feed_speed_m_min, "m/min"));
    table.cell(change_text(a.arc_voltage_V, b.arc_voltage_V, "V"));
    table.cell(change_text(a.travel_speed_mm_s, b.travel_speed_mm_s, "mm/s"));
    table.cell(change_text(a.heat_input_kJ_mm, b.heat_input_kJ_mm, "kJ/mm"));
    table.cell(a.leg_mm ? change_text(*a.leg_mm, *b.leg_mm, "mm") : "-");
    table.cell(change_text(a.time_s, b.time_s, "s"))
        .cell(change_text(a.cost, b.cost))
        .cell(limit_words(seam.binding));
  }
  return table.rows() ? table.text() : "";
}

Word objective_word(FitObjective objective) {
  switch (objective) {
    case FitObjective::time:
      return "time"_word;
    case FitObjective::heat:
      return "heat"_word;
    case FitObjective::cost:
      return "cost"_word;
  }
  return {};
}

Sentence summary_of(const FitResult& fitted, FitObjective objective) {
  int changed = 0, existing = 0, as_planned = 0, without = 0;
  double before = 0, after = 0;
  for (const FittedSeam& seam : fitted.seams) {
    ++(seam.is_existing ? existing : seam.is_changed ? changed : seam.has_settings ? as_planned : without);
    before += seam.before.time_s;
    after += seam.has_settings ? seam.after.time_s : seam.before.time_s;
  }
  std::vector<Argument> arguments{{"objective", objective_word(objective)},
                                  {"changed", changed},
                                  {"planned", as_planned},
                                  {"without", without},
                                  {"arcs", change_of({before, "s"}, {after, "s"})}};
  if (existing > 0) arguments.emplace_back("existing", existing);
  return Sentence(existing > 0 ? "fit.summary.existing"_key : "fit.summary"_key, std::move(arguments));
}

std::string table_text(const FitResult& fitted, const Options& options) {
  std::string text = shown_text(summary_of(fitted, *fit_objective_of(options.objective))) + "\n";
  if (const std::string table = changes_table(fitted); !table.empty()) text += "\n" + table;
  text += findings_section(fitted.findings);
  if (!options.output.empty())
    text += "\n" + shown_text(Sentence("fit.written"_key, {{"file", options.output}})) + "\n";
  return text;
}

void save(const Options& options, const LoadedPlan& loaded, const Plan& plan) {
  std::error_code ignored;
  const bool is_input = std::filesystem::equivalent(options.plan, options.output, ignored);
  if (is_input && !options.overwrite)
    throw InputError("--output",
                     Sentence("cli.refusal.plan-that-is-read"_key, {{"file", printable(options.output)}}),
                     "another file, or --overwrite"_word);
  check_plan(plan, options.output);
  SaveOptions save_options;
  if (is_input) save_options.expected_sha256 = loaded.provenance.plan_sha256;
  save_options.keep_previous = is_input;
  save_output(options.output, FileKind::plan, write_plan(plan), save_options);
}

std::vector<std::string> hold_names() {
  std::vector<std::string> names;
  for (const FitHold hold : fit_holds) names.emplace_back(to_string(hold));
  return names;
}

void run(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  FitOptions fit_options;
  fit_options.objective = *fit_objective_of(options.objective);
  fit_options.seams = options.seams;
  fit_options.margin_pct = options.margin_pct;
  for (const std::string& hold : options.holds) fit_options.holds.push_back(*fit_hold_of(hold));
  const FitResult fitted = fit(loaded.plan, fit_options);
  if (!options.output.empty()) save(options, loaded, fitted.plan);
  result.output = options.json ? json_text(fitted, options, loaded.provenance) : table_text(fitted, options);
  result.exit_code = exit_code_for(fitted.findings);
}

}  // namespace

void add_fit(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("fit", "Wire feed, voltage, travel speed and passes for each seam inside all limits");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command
      .option(
          "--seam", options->seams,
          "WELDMENT/SEAM, or the seam alone where one weldment has it; may be repeated (default: all seams)")
      .one_value_each();
  command.option("--objective", options->objective, "time (default), heat or cost: what to have least of")
      .one_of({"time", "heat", "cost"});
  command
      .option("--hold", options->holds,
              "wire-feed, voltage, travel-speed or passes: stays as it is planned; may be repeated")
      .one_of(hold_names())
      .one_value_each();
  command
      .option(
          "--margin",
          [options](const std::string& text) {
            options->margin_pct =
                quantity(text, "%", {.least = 0, .most = FitOptions::most_margin_pct}, "--margin");
          },
          "share of each limit that is kept inside it (%); not of estimated preheat and hardness (default: "
          "0)")
      .takes("PERCENT");
  command.option("--output", options->output, "write the plan with the new settings to this file");
  command.flag("--overwrite", options->overwrite, "allow --output to name the plan that is read");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
