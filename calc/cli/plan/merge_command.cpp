#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "cli/plan/plan_value.hpp"
#include "plan/difference/plan_difference.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string base, first, second, output, choice;
  bool json = false;
};

MergeChoice choice_of(const std::string& word) {
  return word == "a" ? MergeChoice::first : word == "b" ? MergeChoice::second : MergeChoice::none;
}

std::string json_text(const MergedPlan& merged, const std::string& written) {
  JsonWriter json;
  json.begin_object().key("conflicts").begin_array();
  for (const MergeConflict& conflict : merged.conflicts) {
    json.begin_object(JsonWriter::Layout::compact).member("where", conflict.where);
    plan_value_member(json, "base", conflict.base);
    plan_value_member(json, "a", conflict.first);
    plan_value_member(json, "b", conflict.second);
    json.end_object();
  }
  json.end_array();
  if (written.empty())
    json.null_member("written");
  else
    json.member("written", written);
  json.end_object();
  return json.take();
}

std::string people_text(const MergedPlan& merged, const std::string& written) {
  std::string text = shown_text(Sentence("merge.summary"_key, {{"count", merged.conflicts.size()}})) + "\n";
  if (!merged.conflicts.empty()) {
    TextTable table(
        {{"Where"_word, "", true, 0}, {"Base"_word, "", true, 0}, {"A", "", true, 0}, {"B", "", true, 0}},
        output_view());
    for (const MergeConflict& conflict : merged.conflicts)
      table.cell(conflict.where).cell(conflict.base).cell(conflict.first).cell(conflict.second);
    text += "\n" + table.text();
  }
  if (!written.empty()) text += "\n" + shown_text(Sentence("fit.written"_key, {{"file", written}})) + "\n";
  return text;
}

void run(const Options& options, Result& result) {
  for (const std::string* plan : {&options.base, &options.first, &options.second})
    refuse_plan_that_is_read(*plan, options.output, "--output");
  const LoadedPlan base = load(options.base), first = load(options.first), second = load(options.second);
  const MergeChoice choice = choice_of(options.choice);
  const MergedPlan merged = merge_plans(base.plan, first.plan, second.plan, choice);
  const bool is_open = choice == MergeChoice::none && !merged.conflicts.empty();
  if (!is_open) save_output(options.output, FileKind::plan, write_plan(merged.plan));
  const std::string written = is_open ? std::string() : options.output;
  result.output = options.json ? json_text(merged, written) : people_text(merged, written);
  result.exit_code = is_open ? found_fail : done;
}

}  // namespace

void add_merge(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("merge",
                  "The changes of two plans that came of one, joined by ids; a value that both changed "
                  "is a conflict, and nothing is written");
  command.option("BASE", options->base, "the plan from which both came").required();
  command.option("A", options->first, "one of them").required();
  command.option("B", options->second, "the other").required();
  command.option("--output", options->output, "the joined plan").required();
  command.option("--prefer", options->choice, "a or b: whose value is taken where both changed it")
      .one_of({"a", "b"});
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
