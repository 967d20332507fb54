#include <chrono>
#include <csignal>
#include <filesystem>
#include <memory>
#include <thread>

#include "base/error.hpp"
#include "base/limits.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/common/progress_bar.hpp"
#include "cli/ledger/store_key.hpp"
#include "cli/plan/plan_option.hpp"
#include "cli/records/excursion_options.hpp"
#include "cli/records/shown_record.hpp"
#include "formula/heat/heat_input.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/store/raw_chunks.hpp"
#include "records/actual/actual_rows.hpp"
#include "records/keep/effective_revision.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_store.hpp"
#include "records/keep/stored_parts.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/audit_json.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::uint64_t most_rows = std::numeric_limits<std::int64_t>::max(),
                        most_sorted_rows = 10'000'000,  // a row kept takes some 100 bytes
    most_passes = 10'000'000;

struct Options {
  std::vector<std::string> logs, carry;
  std::string plan, process, store, columns, units, manual, welders;
  std::string unit_serial, weldment, seam;
  std::string arc_current = "5A", arc_off = "1s", length_tolerance = "10%";
  std::string length_short = "10mm";
  GivenExcursions excursions;
  std::string who, why, key;
  int pass = 0;
  std::uint64_t max_rejected = 0;
  std::size_t sort_window = 0, max_passes = LogLimits().passes;
  unsigned threads = 0;
  std::string follow_idle = "10s";
  bool follow = false, json = false, summary = false, close_unit = false;
};

volatile std::sig_atomic_t stop_following = 0;

/// Waits for a followed log to grow: until nothing has come for `idle_s`, or Ctrl-C.
class Following {
 public:
  Following(double idle_s, const std::string& path) : idle_s_(idle_s), path_(path) {
    std::signal(SIGINT, [](int) { stop_following = 1; });
    std::signal(SIGTERM, [](int) { stop_following = 1; });
  }
  bool wait() {
    std::error_code ignored;
    const auto size = std::filesystem::file_size(path_, ignored);
    if (size != last_size_) waited_s_ = 0;
    last_size_ = size;
    if (stop_following != 0 || waited_s_ >= idle_s_) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    waited_s_ += 0.1;
    return true;
  }

 private:
  double idle_s_, waited_s_ = 0;
  std::string path_;
  std::uintmax_t last_size_ = 0;
};

/// What the store has of a pass, where there is a store; opened once.
std::function<StoredWelds(const PassRecord&)> stored_by(const Options& given) {
  if (given.store.empty() || given.plan.empty() || !store_exists(given.store)) return {};
  const auto ledger = std::make_shared<Ledger>(Ledger::open(given.store, {}));
  return [ledger](const PassRecord& record) { return stored_welds(*ledger, record); };
}

std::function<std::vector<StoredPass>(const std::string&)> stored_unit_by(const Options& given) {
  if (given.store.empty() || given.plan.empty() || !store_exists(given.store)) return {};
  const auto ledger = std::make_shared<Ledger>(Ledger::open(given.store, {}));
  return [ledger](const std::string& unit) { return stored_passes(*ledger, unit); };
}

AuditOptions audit_options(const Options& given) {
  AuditOptions options;
  options.unit_serial = given.unit_serial;
  options.weldment = given.weldment;
  options.seam = given.seam;
  if (given.pass > 0) options.pass = given.pass;
  options.arc_current_A = quantity(given.arc_current, "A", {0, 10'000}, "--arc-current");
  options.arc_off_s = quantity(given.arc_off, "s", {0, longest_s}, "--arc-off");
  options.length_tolerance_pct = quantity(given.length_tolerance, "%", {0, 100}, "--length-tolerance");
  options.length_short_mm = quantity(given.length_short, "mm", {0, largest_coordinate_mm}, "--length-short");
  options.excursions = excursion_options(given.excursions);
  options.close_units = given.close_unit;
  options.stored = stored_by(given);
  options.stored_unit = stored_unit_by(given);
  if (!given.process.empty() && !thermal_efficiency_of(given.process))
    throw InputError("--process", "\"" + printable(given.process) + "\"",
                     "an arc process number of ISO 4063, such as 135"_word);
  options.process = given.process;
  if (!given.columns.empty()) options.columns = load_log_columns(given.columns);
  if (!given.units.empty()) options.units = load_unit_times(given.units);
  if (!given.manual.empty()) options.manual = load_manual_seams(given.manual);
  if (!given.welders.empty()) options.welders = load_welders(given.welders);
  options.carry = given.carry;
  options.max_rejected = given.max_rejected;
  options.sort_window = given.sort_window;
  options.reader.limits.passes = given.max_passes;
  options.reader.threads = given.threads;
  options.progress = [bar = std::make_shared<ProgressBar>("audit")](
                         std::uint64_t done_bytes, std::uint64_t all) { bar->show(done_bytes, all); };
  options.digest = !given.store.empty();
  return options;
}

/// Pieces of the logs that are files, so that a damaged part can be found later.
std::vector<RawChunksRow> raw_chunks(const AuditResult& audited) {
  std::vector<RawChunksRow> chunks;
  for (const AuditedLog& log : audited.logs) {
    if (log.name == "standard input") continue;
    chunks.push_back(raw_chunks_of(log.name));
    if (chunks.back().sha256 != log.sha256)
      throw InputError(printable(log.name), "other bytes than a moment ago"_word,
                       "a log that nobody writes while it is stored"_word);
  }
  return chunks;
}

Sentence store_result(const AuditResult& audited, const Options& given, const LoadedPlan& loaded,
                      const Plan* plan) {
  IngestNote note;
  note.stamp = write_stamp(given.who, given.why);
  note.catalogue_sha256 = loaded.provenance.catalogue_sha256;
  note.plan_file = loaded.provenance.plan_file;
  note.plan_sha256 = loaded.provenance.plan_sha256;
  note.plan = plan;
  note.chunks = raw_chunks(audited);
  Ledger ledger = Ledger::open(given.store, {StoreOpening::For::writing, true, false});
  return append_audit(ledger, key_provider(given.store, given.key), audited, note).sentence;
}

/// Each pass by the schedules and calibrations in force on its day, as far as the store knows them.
AuditResult judged_by_store(AuditResult audited, const std::vector<LogSource>& logs, const Options& given,
                            const Plan& plan) {
  StoreHistory history;
  if (store_exists(given.store)) history = history_of(Ledger::open(given.store, {}), plan);
  return judged_in_force(std::move(audited), plan, history, [&](const Plan& then) {
    for (const LogSource& log : logs)
      if (log.path == "-")
        throw InputError(
            "standard input",
            "a log that must be read again: another schedule or calibration was in force on its day"_word,
            "the log as a file"_word);
    return audit(logs, audit_options(given), &then);
  });
}

std::string verdict_text(const std::optional<Verdict>& verdict) {
  return verdict ? shown_verdict(to_string(*verdict)) : shown_word("not judged"_word);
}

std::string pass_table(const AuditResult& audited) {
  constexpr std::string_view shown[] = {"arc_time_s",     "arc_starts",       "length_mm",
                                        "mean_current_A", "mean_voltage_V",   "mean_power_W",
                                        "energy_J",       "heat_input_kJ_mm", "U_heat_input_kJ_mm"};
  std::vector<const Column<PassRecord>*> columns;
  std::vector<TextTable::Column> head = {{"Unit"_word, "", true, 0},
                                         {"Seam"_word, "", true, 0},
                                         {"Pass"_word, "", true, 0},
                                         {"Schedule"_word, "", true, 0}};
  for (const std::string_view key : shown) {
    columns.push_back(find_column(record_columns(), key));
    head.push_back(table_heading(*columns.back()));
  }
  head.push_back({"Verdict"_word, "", true, 0});
  TextTable table(std::move(head), output_view());
  for (const PassRecord& pass : audited.passes) {
    table.cell(pass.unit_serial)
        .cell(pass.weldment + "/" + pass.seam)
        .cell(pass.pass ? std::to_string(*pass.pass) : "-")
        .cell(pass.schedule.empty() ? "-" : pass.schedule);
    for (const auto* column : columns) add_cell(table, *column, pass);
    table.cell(verdict_text(pass.verdict));
  }
  return table.text();
}

std::string place_of(const RejectedRow& row) {
  return printable(row.file) + ":" + std::to_string(row.line);
}

std::string passes_text(const std::vector<PassRef>& passes) {
  std::string text;
  for (const PassRef& each : passes)
    text += (text.empty() ? "" : ", ") + each.seam + (each.pass ? "/" + std::to_string(*each.pass) : "");
  return text;
}

std::string unit_table(const AuditResult& audited) {
  const auto columns = ordered_columns(unit_record_columns(), {}, Shown::brief);
  std::vector<TextTable::Column> head;
  for (const auto* column : columns) head.push_back(table_heading(*column));
  head.push_back({"Open"_word, "", false, 0});
  head.push_back({"Missing passes"_word, "", true, 0});
  TextTable table(std::move(head), output_view());
  for (const UnitRecord& unit : audited.units) {
    for (const auto* column : columns) add_cell(table, *column, unit);
    table.cell(unit.open_items.size()).cell(passes_text(unit.missing_passes));
  }
  return table.text();
}

/// Welded passes that keep their unit incomplete, by cause; empty if there are none.
std::string open_items_table(const AuditResult& audited) {
  TextTable table({{"Unit"_word, "", true, 0},
                   {"Verdict"_word, "", true, 0},
                   {"Cause"_word, "", true, 0},
                   {"Passes"_word, "", false, 0},
                   {"Which"_word, "", true, 0},
                   {"Why (of the first)"_word, "", true, 0}},
                  output_view());
  for (const UnitRecord& unit : audited.units)
    for (const OpenItem& item : unit.open_items)
      table.cell(unit.unit_serial)
          .cell(shown_verdict(item.verdict))
          .cell(item.cause)
          .cell(item.passes.size())
          .cell(passes_text(item.passes))
          .cell(item.sentence);
  return table.rows() == 0 ? "" : shown_word("Open items"_word) + "\n" + table.text() + "\n";
}

Sentence verdict_counts(const AuditResult& audited) {
  std::size_t verdicts[3] = {}, not_judged = 0;
  for (const PassRecord& pass : audited.passes) {
    if (pass.verdict)
      ++verdicts[static_cast<std::size_t>(*pass.verdict)];
    else
      ++not_judged;
  }
  return Sentence("cli.audit.passes"_key, {{"passes", audited.passes.size()},
                                           {"pass", verdicts[0]},
                                           {"fail", verdicts[1]},
                                           {"undecided", verdicts[2]},
                                           {"not_judged", not_judged}});
}

/// One line a unit: how long it took beside its planned cycle; empty where no plan tells.
std::string actual_text(const CycleActual& actual) {
  if (actual.units.empty()) return "";
  std::string text = shown_word("Planned against actual"_word) + "\n";
  for (const UnitActual& unit : actual.units) text += shown_text(unit_actual_sentence(unit)) + "\n";
  return text + "\n";
}

std::string table_text(const AuditResult& audited, const CycleActual& actual, bool summary) {
  std::string text = summary ? std::string() : shown_word("Passes"_word) + "\n" + pass_table(audited) + "\n";
  text += shown_word("Units"_word) + "\n" + unit_table(audited) + "\n" + open_items_table(audited) +
          actual_text(actual);
  text += shown_text(verdict_counts(audited)) + "\n";
  text += shown_text(Sentence("cli.audit.rows"_key, {{"read", audited.rows.read},
                                                     {"in_passes", audited.rows.in_passes},
                                                     {"arc_off", audited.rows.arc_off},
                                                     {"rejected", audited.rows.rejected}})) +
          "\n";
  for (const RejectedRow& row : audited.rejected.listed)
    text += shown_text(Sentence("cli.audit.rejected"_key, {{"row", place_of(row)}, {"reason", row.reason}})) +
            "\n";
  return text + findings_section(audited.findings);
}

/// The one line of a refused input; the summary has the reasons of the others.
std::string too_many_rejected_text(const AuditResult& audited, std::uint64_t allowed) {
  const RejectedRow& first = audited.rejected.listed.front();
  return refusal_line(InputError(
      place_of(first),
      Sentence("audit.rejected.too-many"_key,
               {{"rejected", audited.rejected.count}, {"rows", audited.rows.read}, {"reason", first.reason}}),
      Sentence("audit.rejected.at-most"_key, {{"allowed", allowed}})));
}

/// The last log is followed; those before it are whole.
void follow(double idle_s, std::vector<LogSource>& logs) {
  LogSource& log = logs.back();
  if (log.path == "-")
    throw InputError("--follow", "standard input"_word,
                     "a file (standard input is read to its end anyway)"_word);
  const auto following = std::make_shared<Following>(idle_s, log.path);
  log.bytes = followed_bytes(log.path, [following] { return following->wait(); });
}

void run(const Options& given, Result& result) {
  LoadedPlan loaded;
  loaded.provenance = provenance_without_plan();
  if (!given.plan.empty()) loaded = load(given.plan);
  std::vector<LogSource> logs;
  for (const std::string& path : given.logs) logs.push_back({path, nullptr});
  const double idle_s = quantity(given.follow_idle, "s", {0, longest_s}, "--follow-idle");
  if (given.follow) follow(idle_s, logs);
  AuditResult audited = audit(logs, audit_options(given), given.plan.empty() ? nullptr : &loaded.plan);
  // From here on a followed log is a file like any other.
  logs.back().bytes.reset();
  const bool is_whole = !given.follow || stop_following == 0;
  if (!given.store.empty() && !given.plan.empty() && !audited.too_many_rejected && is_whole)
    audited = judged_by_store(std::move(audited), logs, given, loaded.plan);
  // Its later rows would come as another log with the same passes in it.
  if (!given.store.empty() && !is_whole)
    audited.findings.push_back({"audit.store.not-whole",
                                Severity::warn,
                                printable(logs.back().path),
                                {},
                                {},
                                "",
                                "Not stored: stopped before the log was whole."_word,
                                "common practice, no source"});
  const CycleActual actual = given.plan.empty() ? CycleActual() : cycle_actual(audited.passes, loaded.plan);
  if (given.json)
    write_audit_json(audited, actual, result.output);
  else
    result.output = table_text(audited, actual, given.summary);
  result.exit_code = audited.too_many_rejected ? bad_input : exit_code_for(audited.findings);
  for (const PassRecord& pass : audited.passes)
    if (result.exit_code == done && pass.verdict == Verdict::fail) result.exit_code = found_fail;
  if (audited.too_many_rejected) result.complaint = too_many_rejected_text(audited, given.max_rejected);
  if (audited.too_many_rejected || given.store.empty() || !is_whole) return;
  const Sentence stored = store_result(audited, given, loaded, given.plan.empty() ? nullptr : &loaded.plan);
  if (!given.json) result.output += "\n" + shown_text(stored) + "\n";
}

}  // namespace

void add_audit(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  Options& o = *options;
  const Command command =
      app.command("audit", "Pass records from logged arc data, judged against their schedules");
  command.option("LOG", o.logs, "arc logs: CSV, .gz, or - for standard input").required();
  command.option("--plan", o.plan, "plan whose schedules the passes are judged by");
  command.option("--process", o.process, "process number of ISO 4063 where no plan tells it");
  command.option("--store", o.store, "sqlite:FILE or postgresql://... that keeps the records");
  command.option("--key", o.key, "the store's private key where it isn't in its usual place");
  command.option("--columns", o.columns, "JSON that maps a log's own column names");
  command.option("--unit-times", o.units, "CSV of unit_serial, weldment, start, end: units by time");
  command.option("--manual", o.manual, "CSV of the manual seams");
  command.option("--welders", o.welders,
                 "CSV of the welders (welder, valid_until, valid_from): a manual seam by another one, or on "
                 "another day, fails");
  command.option("--carry", o.carry, "columns kept word for word in each record").separated_by(',');
  command.option("--unit-serial", o.unit_serial, "unit where the log doesn't name one");
  command.option("--weldment", o.weldment, "weldment where the log doesn't name one");
  command.option("--seam", o.seam, "seam where the log doesn't name one");
  add_whole_number(command, "--pass", o.pass, 1, 10'000, "pass where the log doesn't name one");
  command.option("--arc-current", o.arc_current,
                 "the arc is on above this current (a bare number is in A) [5A]");
  command.option("--arc-off", o.arc_off, "without identity, a longer gap begins a new pass (s) [1s]");
  command.option("--length-tolerance", o.length_tolerance,
                 "arc time x planned speed may differ from the planned length by this (%) [10%]");
  command.option("--length-short", o.length_short,
                 "a pass may be shorter than its seam by this, by logged positions; by the logged travel "
                 "speed 2 % more (mm) [10mm]");
  add_excursion_options(command, o.excursions);
  command.flag("--close-unit", o.close_unit,
               "no further log will go on with a pass of these units: one that is too short fails, where "
               "it would be left undecided");
  add_whole_number(command, "--max-rejected", o.max_rejected, 0, most_rows, "rows that may be rejected [0]");
  add_whole_number(command, "--max-passes", o.max_passes, 1, most_passes,
                   "passes that may be in the logs; each takes some 8 KB of memory [10000]");
  add_whole_number(command, "--sort-window", o.sort_window, 0, most_sorted_rows,
                   "rows within which disorder in time is put right [0]");
  add_whole_number(
      command, "--threads", o.threads, 0, most_threads,
      "threads that read; the result is the same for any number [0: as many as the machine has]");
  command.flag("--follow", o.follow,
               "the last log is still being written: wait for more until Ctrl-C or --follow-idle; with "
               "--store it is stored when "
               "nothing has come for so long, not after Ctrl-C");
  command.option("--follow-idle", o.follow_idle,
                 "end following when nothing has been written for so long (s) [10s]");
  command.option("--who", o.who, "who imports, kept with the records")
      .checked_by([](const std::string& text) { check_record_text("--who", text, longest_who); });
  command.option("--why", o.why, "why, kept with the records").checked_by([](const std::string& text) {
    check_record_text("--why", text, longest_why);
  });
  command.flag("--summary", o.summary, "units and findings only");
  command.flag("--json", o.json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
