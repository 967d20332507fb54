#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/text/comma_list.hpp"
#include "cell/timeline/timeline.hpp"
#include "cli/common/clock.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output_view.hpp"
#include "cli/plan/plan_option.hpp"
#include "exchange/report/certificate.hpp"
#include "exchange/report/period_record.hpp"
#include "exchange/report/report.hpp"
#include "exchange/report/unit_record.hpp"
#include "exchange/schedules/schedule_sheet.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "records/actual/cycle_actual.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, store, unit, from, to, seam, output, table = "passes";
  std::vector<std::string> logs, schedules;
  std::string columns, unit_times;
  bool certificate = false;
};

enum class Form { page, table, workbook };

Form form_of(const std::string& output) {
  if (output.ends_with(".html")) return Form::page;
  if (output.ends_with(".csv")) return Form::table;
  if (output.ends_with(".xlsx")) return Form::workbook;
  throw InputError("--output", "\"" + printable(output) + "\"",
                   "a file name that ends in .html, .csv or .xlsx"_word);
}

FileKind kind_of(Form form) {
  return form == Form::page ? FileKind::page : form == Form::table ? FileKind::table : FileKind::workbook;
}

std::string csv_of(const std::vector<Sheet>& sheets, const std::string& table, const SheetOrigin& origin) {
  for (const Sheet& sheet : sheets)
    if (sheet.name == table) return sheet_csv(sheet, origin);
  std::vector<std::string> names;
  for (const Sheet& sheet : sheets) names.push_back(sheet.name);
  throw InputError("--table", "\"" + printable(table) + "\"",
                   Sentence("cli.one-of"_key, {{"choices", comma_list(names)}}));
}

/// A pass takes some 12 KB of a page or a workbook while it is made.
void check_pass_count(const Plan& plan) {
  constexpr std::size_t most_passes = 100'000;
  std::size_t count = 0;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) count += seam.schedules.size();
  if (count > most_passes)
    throw InputError("PLAN", Sentence("report.passes"_key, {{"count", count}}),
                     Sentence("report.passes.at-most"_key, {{"count", most_passes}}));
}

/// Pass records of the report's logs.
AuditResult audited_logs(const Options& options, const Plan& plan) {
  AuditOptions reading;
  if (!options.columns.empty()) reading.columns = load_log_columns(options.columns);
  if (!options.unit_times.empty()) reading.units = load_unit_times(options.unit_times);
  std::vector<LogSource> logs;
  for (const std::string& path : options.logs) logs.push_back({path, nullptr});
  AuditResult audited = audit(logs, reading, &plan);
  if (audited.too_many_rejected) {
    const RejectedRow& first = audited.rejected.listed.at(0);
    throw InputError(printable(first.file) + ":" + std::to_string(first.line), first.reason,
                     "rows that can be read (audit lists all that can't)"_word);
  }
  return audited;
}

/// A page of the schedule sheets alone: where --schedule names some, or --table asks for all of them.
bool only_schedules(const Options& options, Form form) {
  return !options.schedules.empty() || (form == Form::page && options.table == "schedules");
}

std::string schedules_report(const PlanReport& report, const Options& options, Form form) {
  const auto schedules = schedules_named(report.plan, options.schedules, "--schedule");
  if (form == Form::page) return report_page(schedule_report(report, schedules), output_view().on_paper());
  const std::vector<Sheet> sheets = schedule_report_sheets(report, schedules);
  const SheetOrigin origin = origin_of(report.provenance);
  if (form == Form::table)
    return csv_of(sheets, options.table == "passes" ? "schedules" : options.table, origin);
  return sheets_xlsx(sheets, PatternCell{"Schedule sheets: {1}"_word, {report.plan.title}}, origin,
                     output_view().on_paper());
}

std::string plan_report(const Options& options, Form form) {
  LoadedPlan loaded = load(options.plan);
  check_pass_count(loaded.plan);
  loaded.provenance.made_at_utc = made_at_utc();
  const Evaluation evaluation = evaluate(loaded.plan, today());
  std::vector<CycleResult> cycles;
  if (loaded.plan.cell)
    for (const Weldment& weldment : loaded.plan.weldments)
      cycles.push_back(cycle_given(loaded.plan, weldment, evaluation));
  AuditResult audited;
  CycleActual compared;
  const CycleActual* actual = nullptr;
  if (!options.logs.empty()) {
    audited = audited_logs(options, loaded.plan);
    compared = cycle_actual(audited.passes, loaded.plan);
    actual = &compared;
  }
  if (only_schedules(options, form))
    return schedules_report({loaded.plan, evaluation, cycles, loaded.provenance}, options, form);
  if (form == Form::page)
    return report_html(loaded.plan, evaluation, cycles, loaded.provenance, output_view().on_paper(), actual);
  const std::vector<Sheet> sheets = report_sheets(loaded.plan, evaluation, cycles, loaded.provenance, actual);
  const SheetOrigin origin = origin_of(loaded.provenance);
  if (form == Form::table) return csv_of(sheets, options.table, origin);
  return sheets_xlsx(sheets, PatternCell{"Weld plan {1}"_word, {loaded.plan.title}}, origin,
                     output_view().on_paper());
}

/// Of a unit, or of a span of time and a seam. `trusted`: whether the store is.
std::string store_report(const Options& options, Form form, bool& trusted) {
  const bool of_period = !options.from.empty() || !options.to.empty() || !options.seam.empty();
  if (options.unit.empty() != of_period)
    throw InputError("report --store",
                     of_period ? "--unit beside --from, --to or --seam"_word
                               : "none of --unit, --from, --to and --seam"_word,
                     "--unit SERIAL, or --from and --to, or --seam WELDMENT/SEAM"_word);
  if (options.certificate && (of_period || form != Form::page))
    throw InputError("--certificate", of_period ? "no --unit"_word : "--output of another kind"_word,
                     "--unit SERIAL and --output FILE.html"_word);
  RecordRange range;
  range.set_times(options.from, options.to);
  if (!options.seam.empty()) range.set_seam(options.seam);
  const Ledger ledger = Ledger::open(options.store, {});
  const VerifyReport verified = verify_ledger(ledger, {});
  trusted = verified.trusted;
  if (options.certificate)
    return report_page(unit_certificate(ledger, options.unit, verified, made_at_utc()),
                       output_view().on_paper());
  if (form == Form::page)
    return of_period
               ? period_report_html(ledger, range, verified, made_at_utc(), output_view().on_paper())
               : unit_report_html(ledger, options.unit, verified, made_at_utc(), output_view().on_paper());
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc());
  const std::vector<Sheet> sheets =
      of_period ? period_sheets(ledger, range, origin) : unit_sheets(ledger, options.unit, origin);
  if (form == Form::table) return csv_of(sheets, options.table, origin);
  const PatternCell title = of_period ? PatternCell{"Heat-input record: {1}"_word, {title_of(range)}}
                                      : PatternCell{"Weld record of unit {1}"_word, {options.unit}};
  return sheets_xlsx(sheets, title, origin, output_view().on_paper());
}

void run(const Options& options, Result& result) {
  const Form form = form_of(options.output);
  if (options.plan.empty() == options.store.empty())
    throw InputError("report",
                     options.plan.empty() ? "neither a plan nor --store"_word : "a plan and --store"_word,
                     "one of the two"_word);
  if (!options.logs.empty() && options.plan.empty())
    throw InputError("--log", "no plan"_word, "a plan that its passes are compared with"_word);
  if (!options.schedules.empty() && options.plan.empty())
    throw InputError("--schedule", "no plan"_word, "a plan whose schedules they are"_word);
  if (options.logs.empty() && !(options.columns.empty() && options.unit_times.empty()))
    throw InputError(options.columns.empty() ? "--unit-times" : "--columns", "no --log"_word,
                     "the logs that it tells of, by --log"_word);
  const FileKind kind = kind_of(form);
  bool trusted = true;
  save_made(options.output, kind, [&] {
    return options.store.empty() ? plan_report(options, form) : store_report(options, form, trusted);
  });
  result.output = shown_text(Sentence("report.written"_key, {{"file", options.output}})) + "\n";
  if (trusted) return;
  result.output += shown_text(Sentence("report.store-not-trusted"_key)) + "\n";
  result.exit_code = found_fail;
}

}  // namespace

void add_report(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("report",
                  "A plan's schedule sheets, heat input, cycle sheets and findings, or the weld "
                  "record of a unit, a shift or a seam over time from a store");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)");
  command.option("--store", options->store,
                 "sqlite:FILE or postgresql://...: the record of a unit, a shift or a seam instead");
  command.option("--unit", options->unit, "a unit's serial number");
  command.flag("--certificate", options->certificate,
               "with --unit: its certificate of conformity, in place of its whole record");
  command.option(
      "--from", options->from,
      "first moment of a shift: a day, or a time such as 2026-03-02T06:00:00+01:00 (UTC without an offset)");
  command.option("--to", options->to, "its end: a day with all of it, or a time");
  command.option("--seam", options->seam,
                 "WELDMENT/SEAM: one seam over time, between --from and --to where they are given");
  command
      .option("--log", options->logs,
              "arc logs, apart by commas, whose units are compared with the plan's cycles: tables actual, "
              "actual-units")
      .one_value_each()
      .separated_by(',');
  command.option("--columns", options->columns, "JSON that maps the logs' own column names");
  command.option("--unit-times", options->unit_times,
                 "CSV of unit_serial, weldment, start, end: the logs' units by time");
  command
      .option("--schedule", options->schedules,
              "ids of schedules, apart by commas: their sheets alone, each a page to sign")
      .one_value_each()
      .separated_by(',');
  command
      .option("--output", options->output, "FILE.html: one page; FILE.xlsx: a workbook; FILE.csv: one table")
      .required();
  command
      .option(
          "--table", options->table,
          "schedules with an HTML page: the schedule sheets alone; with a CSV which table it holds: of a "
          "plan "
          "judgement, passes, seams, weldments, cycle, order, findings, "
          "schedules, about; of a unit "
          "unit, passes, manual, schedules, instruments, findings, logs, open-items, changes, about; of a "
          "shift or "
          "seam summary and units, "
          "and a seam's statistics, in place of unit")
      .with_default_shown();
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
