#include <filesystem>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/drawing_option.hpp"
#include "cli/plan/list_option.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  ListOptions list;
  DrawingOptions drawing;
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

const std::string& output_of(const Options& options) {
  return options.output.empty() ? options.plan : options.output;
}

void save(const Options& options, const LoadedPlan& loaded, const Plan& plan) {
  const std::string& output = output_of(options);
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
    json.member("written", output_of(options));
  else
    json.null_member("written");
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

std::string people_text(const Options& options, const PreviewedList& list, bool is_written) {
  std::string text = preview_text(list, options.list.kind());
  if (is_written)
    text += "\n" + shown_text(Sentence("fit.written"_key, {{"file", output_of(options)}})) + "\n";
  return text;
}

/// One line: the first cell that can't be taken, and that nothing is.
std::string complaint_of(const ListImport& import) {
  const RefusedCell first = import.refused().front();
  return refusal_line(InputError(first.place, first.found, first.expected)) + "; " +
         shown_text(
             Sentence("list.nothing-taken"_key, {{"count", import.count(ImportedRow::State::refused)}}));
}

/// Options of lists don't say anything about a drawing, and the other way round.
void refuse_strange_options(const Options& options) {
  if (!is_drawing(options.list.file)) {
    const std::string given = options.drawing.given();
    if (!given.empty())
      throw InputError(given, "a list"_word, "a drawing: a file .step, .stp, .p21 or .dxf"_word);
    return;
  }
  const ListOptions& list = options.list;
  for (const auto& [name, is_given] :
       {std::pair("--schedules", list.schedules), std::pair("--columns", !list.columns.empty()),
        std::pair("--default", !list.standards.empty()), std::pair("--skip-refused", list.skip_refused)})
    if (is_given) throw InputError(name, "a drawing"_word, "a list: .xlsx, .ods or .csv"_word);
}

std::string drawing_json(const Options& options, const PreviewedDrawing& preview,
                         const Provenance& provenance, bool is_written) {
  JsonWriter json;
  json.begin_object();
  write_preview(json, preview);
  if (is_written)
    json.member("written", output_of(options));
  else
    json.null_member("written");
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

/// What is complete is written; what lacks something is listed, and ends with 1.
void run_drawing(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  PreviewedDrawing preview;
  preview_drawing(loaded.plan, options.list.file, options.list.weldment, options.list.metals, options.drawing,
                  preview);
  using State = DrawingCandidate::State;
  const DrawingImport& import = preview.import;
  const bool changes =
      import.count(State::added) + import.count(State::moved) + import.plates + import.tubes > 0;
  const bool writes = !options.preview && (changes || !options.output.empty());
  if (writes) save(options, loaded, import.plan);
  if (options.json) {
    result.output = drawing_json(options, preview, loaded.provenance, writes);
  } else {
    result.output = preview_text(preview);
    if (writes)
      result.output += "\n" + shown_text(Sentence("fit.written"_key, {{"file", output_of(options)}})) + "\n";
  }
  if (import.count(State::open) > 0) result.exit_code = found_fail;
}

void run(const Options& options, Result& result) {
  refuse_strange_options(options);
  if (is_drawing(options.list.file)) return run_drawing(options, result);
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
      "the plan has are changed by their id; all rows or none. Or a drawing (STEP, DXF): its seams are "
      "proposed, "
      "what is "
      "complete is taken");
  command
      .option("FILE", options->list.file,
              "the list: .xlsx, .ods or .csv; the drawing: .step, .stp, .p21 or .dxf")
      .required();
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
  add_drawing_options(command, options->drawing);
  command.flag("--preview", options->preview, "show what would change, write nothing");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
