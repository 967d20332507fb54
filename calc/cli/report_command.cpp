#include <cstdlib>
#include <memory>

#include "base/atomic_save.hpp"
#include "base/error.hpp"
#include "cell/timeline.hpp"
#include "cli/clock.hpp"
#include "cli/command.hpp"
#include "cli/plan_option.hpp"
#include "exchange/report.hpp"
#include "exchange/sheet.hpp"
#include "plan/evaluate.hpp"

namespace seamtakt::cli {

namespace {

/// Now, or the moment that SOURCE_DATE_EPOCH names, so that two runs can give the same bytes.
std::string made_at_utc() {
  const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
  return epoch ? utc_text(static_cast<std::time_t>(std::strtoll(epoch, nullptr, 10))) : utc_now();
}

struct Options {
  std::string plan, output, table = "passes";
};

std::string csv_of(const std::vector<Sheet>& sheets, const std::string& table, const Provenance& provenance) {
  for (const Sheet& sheet : sheets)
    if (sheet.name == table) return sheet_csv(sheet, provenance);
  std::string names;
  for (const Sheet& sheet : sheets) names += (names.empty() ? "" : ", ") + sheet.name;
  throw InputError("--table", "\"" + printable(table) + "\"", "one of " + names);
}

void run(const Options& options, Result& result) {
  const auto ends_in = [&](const char* ending) { return options.output.ends_with(ending); };
  if (!ends_in(".html") && !ends_in(".csv") && !ends_in(".xlsx"))
    throw InputError("--output", "\"" + printable(options.output) + "\"", "a file name that ends in .html, .csv or .xlsx");
  LoadedPlan loaded = load(options.plan);
  loaded.provenance.made_at_utc = made_at_utc();
  const Evaluation evaluation = evaluate(loaded.plan, today());
  std::vector<CycleResult> cycles;
  if (loaded.plan.cell)
    for (const Weldment& weldment : loaded.plan.weldments) cycles.push_back(cycle_given(loaded.plan, weldment, evaluation));
  std::string bytes;
  if (ends_in(".html")) {
    bytes = report_html(loaded.plan, evaluation, cycles, loaded.provenance);
  } else {
    const std::vector<Sheet> sheets = report_sheets(loaded.plan, evaluation, cycles, loaded.provenance);
    bytes = ends_in(".csv") ? csv_of(sheets, options.table, loaded.provenance) : sheets_xlsx(sheets, loaded.provenance);
  }
  save_atomically(options.output, bytes);
  result.output = "Report written to " + options.output + "\n";
}

}  // namespace

void add_report(CLI::App& app, Result& result) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("report", "Schedule sheets, heat input, cycle sheets and findings as a page, a table or a workbook");
  command->add_option("PLAN", options->plan, "plan file (NAME.weldplan.json)")->required();
  command->add_option("--output", options->output, "FILE.html: one page; FILE.xlsx: a workbook; FILE.csv: one table")->required();
  command->add_option("--table", options->table, "which table a CSV holds: passes, seams, weldments, cycle, findings, schedules, about")->capture_default_str();
  command->callback([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
