#include <filesystem>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/list_option.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  ListOptions list;
  std::string plan, output;
  bool preview = false, json = false;
};

/// Whether the plan is written: not for a preview, nor with refused rows, nor where nothing changes in its
/// own file.
bool is_to_write(const Options& options, const ListImport& import) {
  if (options.preview) return false;
  if (!import.is_complete() && !options.list.skip_refused) return false;
  const bool changes =
      import.count(ImportedRow::State::added) + import.count(ImportedRow::State::changed) > 0;
  return changes || !options.output.empty();
}

void save(const Options& options, const LoadedPlan& loaded, const Plan& plan) {
  const std::string& output = options.output.empty() ? options.plan : options.output;
  std::error_code ignored;
  const bool is_input = std::filesystem::equivalent(options.plan, output, ignored);
  SaveOptions save_options;
  if (is_input) save_options.expected_sha256 = loaded.provenance.plan_sha256;
  save_options.keep_previous = is_input;
  save_output(output, FileKind::plan, write_plan(plan), save_options);
}

std::string json_text(const Options& options, const PreviewedList& list, const Provenance& provenance,
                      bool is_written) {
  JsonWriter json;
  json.begin_object();
  write_preview(json, list, options.list.kind());
  if (is_written)
    json.member("written", options.output.empty() ? options.plan : options.output);
  else
    json.null_member("written");
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

std::string people_text(const Options& options, const PreviewedList& list, bool is_written) {
  std::string text = preview_text(list, options.list.kind());
  if (is_written)
    text += "\n" +
            shown_text(Sentence("fit.written"_key,
                                {{"file", options.output.empty() ? options.plan : options.output}})) +
            "\n";
  return text;
}

/// One line: the first cell that can't be taken, and that nothing is.
std::string complaint_of(const ListImport& import) {
  const RefusedCell first = import.refused().front();
  return refusal_line(InputError(first.place, first.found, first.expected)) + "; " +
         shown_text(
             Sentence("list.nothing-taken"_key, {{"count", import.count(ImportedRow::State::refused)}}));
}

void run(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  const PreviewedList list = preview_list(loaded.plan, options.list);
  const bool writes = is_to_write(options, list.import);
  if (writes) save(options, loaded, list.import.plan);
  result.output =
      options.json ? json_text(options, list, loaded.provenance, writes) : people_text(options, list, writes);
  if (list.import.is_complete() || options.list.skip_refused) return;
  result.complaint = complaint_of(list.import);
  result.exit_code = bad_input;
}

}  // namespace

void add_import(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command = app.command(
      "import",
      "A list of seams or schedules, a workbook or a CSV, into a plan: new ones are added, those that "
      "the plan has are changed by their id; all rows or none");
  command.option("FILE", options->list.file, "the list: .xlsx, .ods or .csv").required();
  command.option("--into", options->plan, "the plan file that takes it; the file before is kept as NAME~")
      .required();
  command.option("--output", options->output, "write the plan to this file, and leave the other as it is");
  command.flag("--schedules", options->list.schedules, "the list is of schedules, not of seams");
  command.option("--columns", options->list.columns,
                 "JSON: which heading is which key, with units and defaults, where heads aren't known");
  command.option("--weldment", options->list.weldment,
                 "of seams whose row names none; made where the plan lacks it");
  command
      .option("--metal", options->list.metals,
              "base metal of new seams whose row has none; twice: of each plate")
      .one_value_each();
  command
      .option("--default", options->list.standards,
              "KEY=VALUE: what new rows have where they say nothing; may be repeated")
      .one_value_each();
  command.flag("--skip-refused", options->list.skip_refused,
               "leave rows with a bad cell out and take the others");
  command.flag("--preview", options->preview, "show what would change, write nothing");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
