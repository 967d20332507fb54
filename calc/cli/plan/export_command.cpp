#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "cli/common/clock.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output_view.hpp"
#include "cli/plan/plan_option.hpp"
#include "exchange/lists/list_export.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, seams, schedules, weldment;
};

bool is_workbook(const std::string& path, const char* option) {
  if (path.ends_with(".xlsx")) return true;
  if (path.ends_with(".csv")) return false;
  throw InputError(option, "\"" + printable(path) + "\"", "a file name that ends in .xlsx or .csv"_word);
}

/// Numbers are in the plan file's units whatever the view, so that reading them again changes nothing.
void write_list(const std::vector<Sheet>& sheets, const std::string& path, bool workbook,
                const Provenance& provenance, const std::string& title) {
  const SheetOrigin origin = origin_of(provenance);
  save_made(path, workbook ? FileKind::workbook : FileKind::table, [&] {
    if (!workbook) return sheet_csv(sheets.front(), origin);
    for (const Sheet& sheet : sheets) check_workbook_cells(sheet);
    return sheets_xlsx(sheets, PatternCell{"Weld plan {1}"_word, {title}}, origin, output_view().in_si());
  });
}

void run(const Options& options, Result& result) {
  if (options.seams.empty() && options.schedules.empty())
    throw InputError("export", "neither --seams nor --schedules"_word, "one of the two"_word);
  const bool seams_in_workbook = !options.seams.empty() && is_workbook(options.seams, "--seams");
  const bool schedules_in_workbook =
      !options.schedules.empty() && is_workbook(options.schedules, "--schedules");
  const bool together = options.seams == options.schedules;
  if (together && !seams_in_workbook)
    throw InputError("--schedules", "the file of --seams"_word,
                     "another file, or one workbook for both"_word);
  LoadedPlan loaded = load(options.plan);
  chosen_weldments(loaded.plan, options.weldment);  // refuses an id that the plan lacks
  loaded.provenance.made_at_utc = made_at_utc();
  std::vector<Sheet> seams, schedules;
  if (!options.seams.empty()) seams.push_back(list_sheet(loaded.plan, ListKind::seams, options.weldment));
  if (!options.schedules.empty()) schedules.push_back(list_sheet(loaded.plan, ListKind::schedules));
  if (together) seams.insert(seams.end(), schedules.begin(), schedules.end());
  const auto write = [&](const std::vector<Sheet>& sheets, const std::string& path, bool workbook) {
    write_list(sheets, path, workbook, loaded.provenance, loaded.plan.title);
    result.output += shown_text(Sentence("list.written"_key, {{"file", path}})) + "\n";
  };
  if (!seams.empty()) write(seams, options.seams, seams_in_workbook);
  if (!schedules.empty() && !together) write(schedules, options.schedules, schedules_in_workbook);
}

}  // namespace

void add_export(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("export", "A plan's seams or schedules as a list that import reads again without a change");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--seams", options->seams, "FILE.xlsx or FILE.csv for the seams");
  command.option("--schedules", options->schedules, "FILE.xlsx or FILE.csv for the schedules");
  command.option("--weldment", options->weldment, "seams of this weldment alone");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
