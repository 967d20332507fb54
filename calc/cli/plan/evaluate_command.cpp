#include <memory>

#include "base/error.hpp"
#include "cell/timeline/duty.hpp"
#include "cli/common/clock.hpp"
#include "cli/common/command.hpp"
#include "cli/common/explanation_json.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/evaluate/evaluation_json.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, weldment, explain;
  bool json = false, summary = false, all = false;
};

/// Only what belongs to one weldment.
void keep_weldment(Evaluation& evaluation, const std::string& id) {
  const auto other = [&](const auto& row) { return row.weldment != id; };
  std::erase_if(evaluation.passes, other);
  std::erase_if(evaluation.seams, other);
  std::erase_if(evaluation.weldments, other);
  std::erase_if(evaluation.findings, [&](const Finding& finding) {
    return finding.where.find('/') != std::string::npos && finding.where.rfind(id + "/", 0) != 0;
  });
}

void write_json(const Evaluation& evaluation, const Provenance& provenance, const TextSink& sink) {
  JsonWriter json;
  json.begin_object();
  write_evaluation(json, evaluation, sink);
  write_findings(json, evaluation.findings, sink);
  write_provenance(json, provenance);
  json.end_object();
  sink(json.take());
}

std::string table_text(const Evaluation& evaluation, const Options& options) {
  std::string text;
  if (!options.summary)
    text += shown_word("Passes"_word) + "\n" + column_table(pass_columns(), evaluation.passes, options.all) +
            "\n" + shown_word("Seams"_word) + "\n" +
            column_table(seam_columns(), evaluation.seams, options.all) + "\n";
  text += shown_word("Weldments"_word) + "\n" + column_table(weldment_columns(), evaluation.weldments, true);
  return text + findings_section(evaluation.findings);
}

std::string explanation_json(std::string_view where, std::string_view key,
                             const std::vector<Explanation>& explanations, const Provenance& provenance) {
  JsonWriter json;
  json.begin_object().key("explanation").begin_object();
  json.member("where", where).member("key", key);
  json.key("formulas").begin_array();
  for (const Explanation& explanation : explanations) write_explanation(json, explanation);
  json.end_array().end_object();
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

void explain_value(const LoadedPlan& loaded, const Options& options, Result& result) {
  const std::size_t dot = options.explain.rfind('.');
  if (dot == std::string::npos)
    throw InputError("--explain", "\"" + printable(options.explain) + "\"",
                     "WHERE.KEY, such as BD/S03/pass 1.heat_input_kJ_mm"_word);
  const std::string_view where = std::string_view(options.explain).substr(0, dot),
                         key = std::string_view(options.explain).substr(dot + 1);
  const std::vector<Explanation> explanations = explain(loaded.plan, where, key);
  if (options.json) {
    result.output = explanation_json(where, key, explanations, loaded.provenance);
    return;
  }
  for (const Explanation& explanation : explanations)
    result.output += (result.output.empty() ? "" : "\n") + explanation_text(explanation, output_view());
}

/// A plan and what follows from it.
struct Evaluated {
  LoadedPlan loaded;
  Evaluation evaluation;
};

void run(const Options& options, Result& result) {
  const auto kept = std::make_shared<Evaluated>();
  result.left_over = kept;
  auto& [loaded, evaluation] = *kept;
  loaded = load(options.plan);
  if (!options.explain.empty()) return explain_value(loaded, options, result);
  evaluation = evaluate(loaded.plan, today());
  // The robots' power sources are judged over the timeline, which the cell makes.
  for (Finding& finding : duty_findings(loaded.plan, evaluation))
    evaluation.findings.push_back(std::move(finding));
  if (!options.weldment.empty()) {
    chosen_weldments(loaded.plan, options.weldment);
    keep_weldment(evaluation, options.weldment);
  }
  if (options.json)
    result.more_output = [kept](const TextSink& sink) {
      write_json(kept->evaluation, kept->loaded.provenance, sink);
    };
  else
    result.output = table_text(evaluation, options);
  result.exit_code = exit_code_for(evaluation.findings);
}

}  // namespace

void add_evaluate(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("evaluate", "Every derived value of every pass and seam of a plan, and the findings");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--weldment", options->weldment, "only this weldment");
  command.option("--explain", options->explain,
                 "WHERE.KEY: how one number comes about, such as \"BD/S03/pass 1.heat_input_kJ_mm\"");
  command.flag("--summary", options->summary, "weldments and findings only");
  command.flag("--all", options->all, "every column");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
