#include <cstdlib>
#include <memory>

#include "base/atomic_save.hpp"
#include "base/error.hpp"
#include "cell/timeline.hpp"
#include "cli/clock.hpp"
#include "cli/command.hpp"
#include "cli/plan_option.hpp"
#include "exchange/report.hpp"
#include "plan/evaluate.hpp"

namespace seamtakt::cli {

namespace {

/// Now, or the moment that SOURCE_DATE_EPOCH names, so that two runs can give the same bytes.
std::string made_at_utc() {
  const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
  return epoch ? utc_text(static_cast<std::time_t>(std::strtoll(epoch, nullptr, 10))) : utc_now();
}

void run(const std::string& plan_path, const std::string& output, Result& result) {
  if (!output.ends_with(".html"))
    throw InputError("--output", "\"" + printable(output) + "\"", "a file name that ends in .html");
  LoadedPlan loaded = load(plan_path);
  loaded.provenance.made_at_utc = made_at_utc();
  const Evaluation evaluation = evaluate(loaded.plan, today());
  std::vector<CycleResult> cycles;
  if (loaded.plan.cell)
    for (const Weldment& weldment : loaded.plan.weldments) cycles.push_back(cycle_given(loaded.plan, weldment, evaluation));
  save_atomically(output, report_html(loaded.plan, evaluation, cycles, loaded.provenance));
  result.output = "Report written to " + output + "\n";
}

}  // namespace

void add_report(CLI::App& app, Result& result) {
  auto plan = std::make_shared<std::string>(), output = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand("report", "Schedule sheets, heat input, cycle sheets and findings as one HTML page");
  command->add_option("PLAN", *plan, "plan file (NAME.weldplan.json)")->required();
  command->add_option("--output", *output, "FILE.html")->required();
  command->callback([plan, output, &result] { run(*plan, *output, result); });
}

}  // namespace seamtakt::cli
