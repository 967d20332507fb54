#include <algorithm>
#include <filesystem>
#include <iterator>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "cell/search/best_order.hpp"
#include "cell/timeline/fewer_is_faster.hpp"
#include "cli/cell/line_output.hpp"
#include "cli/cell/robot_out.hpp"
#include "cli/common/clock.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "exchange/sheets/sheet.hpp"
#include "line/line_columns.hpp"
#include "line/line_result.hpp"
#include "plan/evaluate/evaluate.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::uint64_t most_units = 200'000, most_runs = 100'000, most_steps = 100'000'000,
                        most_window_units = 1'000'000;
constexpr double heaviest_package_kg = 10'000;

struct Options {
  std::string plan, orders, carts, order = "given", output_orders;
  ShiftOptions shift;
  std::string tip_every, tip_change = "0s", wire_package, wire_change = "0s";
  bool level = false, json = false, summary = false;
  std::size_t units = 0;
  std::uint64_t seed = 1, steps = 20'000;
  int runs = 200, window = 10;
};

/// Nothing is changed more often than every second or gram: a wrong unit, not a plan. Empty: never.
double interval(const std::string& text, const char* unit, QuantityRange range, const char* option) {
  return text.empty() ? 0 : quantity(text, unit, range, option);
}

/// How the cell welds a weldment. The best order is searched by steps, not by seconds: the line must be the
/// same each time.
std::function<CycleResult(const Weldment&)> cycle_function(const Options& options, const Plan& plan,
                                                           const Evaluation& evaluation) {
  if (options.order != "best")
    return [&plan, &evaluation](const Weldment& weldment) { return cycle_given(plan, weldment, evaluation); };
  BestOptions best;
  best.seed = options.seed;
  best.steps = options.steps;
  return [&plan, &evaluation, best](const Weldment& weldment) {
    return cycle_best(plan, weldment, evaluation, best);
  };
}

/// The cell before a robot was taken out of it.
WholeCell whole_cell(const Options& options, const Plan& plan) {
  WholeCell whole{&plan, evaluate(plan), {}};
  whole.cycle_of = [&options, &plan, evaluation = whole.evaluation](const Weldment& weldment) {
    return cycle_function(options, plan, evaluation)(weldment);
  };
  return whole;
}

LineRequest request_of(const Options& options, const Plan& plan, const Evaluation& evaluation) {
  LineRequest request;
  request.plan_file = printable(options.plan);
  request.units = options.units;
  request.seed = options.seed;
  request.runs = options.runs;
  request.level = options.level;
  request.window_units = options.window;
  request.changes.tip_every_arc_s = interval(options.tip_every, "s", {1, longest_s}, "--tip-every");
  request.changes.tip_change_s = quantity(options.tip_change, "s", {0, longest_s}, "--tip-change");
  request.changes.wire_package_kg =
      interval(options.wire_package, "kg", {0.001, heaviest_package_kg}, "--wire-package");
  request.changes.wire_package_change_s = quantity(options.wire_change, "s", {0, longest_s}, "--wire-change");
  request.cycle_of = cycle_function(options, plan, evaluation);
  return request;
}

void require_line(const Plan& plan, const std::string& file) {
  if (!plan.line) throw InputError(printable(file), "no line"_word, "a plan with a line"_word, "/line");
  if (plan.line->stages.empty())
    throw InputError(printable(file), "a line without stages"_word, "at least one"_word, "/line/stages");
}

/// Seams that are welded by hand take their time in a stage of the line, or they would take none.
void require_manual_stage(const Plan& plan, const Shift& shift, const std::string& file) {
  const bool by_hand = std::any_of(shift.seams.begin(), shift.seams.end(),
                                   [](const SeamMove& move) { return move.by_hand.has_value(); });
  const auto& stages = plan.line->stages;
  if (by_hand && std::none_of(stages.begin(), stages.end(),
                              [](const Stage& stage) { return stage.time_of == "manual"; }))
    throw InputError(printable(file), "no stage for hand work"_word,
                     "a stage with the time \"manual\" for the seams that are moved"_word, "/line/stages");
}

void check_output_orders(const Options& options) {
  if (options.output_orders.empty()) return;
  if (!options.level) throw InputError("--output-orders", "no --level"_word, "--level with it"_word);
  std::error_code ignored;
  if (std::filesystem::equivalent(options.orders, options.output_orders, ignored))
    throw InputError(
        "--output-orders",
        Sentence("cli.refusal.orders-that-are-read"_key, {{"file", printable(options.output_orders)}}),
        "another file"_word);
  check_output(options.output_orders, FileKind::orders);
}

Sheet orders_sheet(const std::vector<Order>& orders) {
  Sheet sheet{
      "orders", {{"unit_serial", {"Unit"_word}}, {"weldment", {"Weldment"_word}}, {"due", {"Due"_word}}}, {}};
  for (const Order& order : orders) sheet.rows.push_back({order.serial, order.weldment, order.due});
  return sheet;
}

/// Returned: the line that says so.
std::string save_orders(const Options& options, const LineResult& line, Provenance provenance) {
  if (options.output_orders.empty()) return "";
  provenance.made_at_utc = made_at_utc();
  save_output(options.output_orders, FileKind::orders,
              sheet_csv(orders_sheet(line.levelled_orders), origin_of(provenance)));
  return "\n" + shown_text(Sentence("cli.line.orders-written"_key, {{"file", options.output_orders}})) + "\n";
}

/// Runs the line, and keeps the cycles of its weldments.
LineResult line_with_cycles(const Plan& plan, const Evaluation& evaluation, const Release& release,
                            LineRequest request, std::vector<CycleResult>& cycles) {
  request.cycle_of = [&cycles, cycle_of = std::move(request.cycle_of)](const Weldment& weldment) {
    return cycles.emplace_back(cycle_of(weldment));
  };
  return simulate_line(plan, evaluation, release, request);
}

/// Where the shift without a robot is better off than with it: cycles of the cell, and the line with the same
/// draws.
Findings line_faster_without_robot(const Options& options, const Plan& whole, const Release& release,
                                   const Shift& shift, const std::vector<CycleResult>& cycles,
                                   const LineResult& line) {
  const Evaluation evaluation = evaluate(whole);
  std::vector<CycleResult> all_cycles;
  const LineResult all =
      line_with_cycles(whole, evaluation, release, request_of(options, whole, evaluation), all_cycles);
  const std::vector<std::string> by_hand = weldments_by_hand(shift);
  Findings findings = faster_with_fewer(all_cycles, cycles, options.shift.without_robot, by_hand);
  if (line.not_run > 0 || all.not_run > 0) return findings;
  if (auto found = more_with_fewer(all.figures.throughput_per_h, line.figures.throughput_per_h,
                                   options.shift.without_robot, findings, by_hand))
    findings.push_back(std::move(*found));
  return findings;
}

void run(const Options& options, Result& result) {
  LoadedPlan loaded = load(options.plan);
  require_line(loaded.plan, options.plan);
  const std::vector<Order> orders = read_orders(options.orders, loaded.plan);
  check_output_orders(options);
  const Plan whole = options.shift.without_robot.empty() ? Plan{} : loaded.plan;
  Shift shift = take_shift(loaded, options.shift);
  require_manual_stage(loaded.plan, shift, options.plan);
  Findings findings = shift.findings;
  const Evaluation evaluation = evaluate(loaded.plan);
  const Release release =
      options.carts.empty() ? release_all(orders) : release_complete(orders, loaded.plan, options.carts);
  LineRequest request = request_of(options, loaded.plan, evaluation);
  if (!options.shift.without_robot.empty())
    request.with_all_robots = [&] { return whole_cell(options, whole); };
  std::vector<CycleResult> cycles;
  const LineResult line = line_with_cycles(loaded.plan, evaluation, release, std::move(request), cycles);
  tell_robots(shift, cycles);
  const std::string written =
      save_shift_plan(loaded.plan, options.shift) + save_orders(options, line, loaded.provenance);
  add_findings_without_robot(line.findings, findings);
  if (!options.shift.without_robot.empty())
    std::ranges::move(line_faster_without_robot(options, whole, release, shift, cycles, line),
                      std::back_inserter(findings));
  result.exit_code = exit_code_for(findings);
  if (options.json) {
    JsonWriter json;
    json.begin_object();
    write_members(json, line_columns(), line);
    if (options.shift.given()) write_shift(json, shift);
    write_findings(json, findings);
    write_provenance(json, loaded.provenance);
    json.end_object();
    result.output = json.take();
    return;
  }
  result.output =
      line_text(line, !options.summary) + shift_text(shift) + written + findings_section(findings);
}

void add_change_options(const Command& command, Options& options) {
  command.option("--tip-every", options.tip_every,
                 "arc time of a robot between two changes of its contact tip (s)");
  command.option("--tip-change", options.tip_change, "time of one tip change (s)");
  command.option("--wire-package", options.wire_package, "wire on a spool or in a drum (kg)");
  command.option("--wire-change", options.wire_change, "time to change the wire package (s)");
}

}  // namespace

void add_line(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("line", "A day's orders through the line, against takt, and what would cure a miss");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--orders", options->orders, "the orders: CSV with unit_serial, weldment, due").required();
  command.option("--carts", options->carts,
                 "folder of carts, SERIAL.csv each: only complete ones are released");
  command.flag("--level", options->level, "re-sequence the orders, due dates kept");
  command.option("--output-orders", options->output_orders,
                 "with --level: write the levelled sequence to this file, which --orders reads again");
  command
      .option("--order", options->order,
              "in the cell: given: seams in file order; best: the shortest cycle found")
      .one_of({"given", "best"});
  add_whole_number(command, "--steps", options->steps, 1, most_steps,
                   "best: orders to try a weldment (default 20000)");
  add_whole_number(command, "--unit-count", options->units, 1, most_units,
                   "as many units, the orders again and again");
  add_seed(command, options->seed, "of stops and faults (default 1)");
  add_whole_number(command, "--runs", options->runs, 1, most_runs,
                   "runs with different luck, of which the headline is the mean (default 200; fewer for long "
                   "ones); 1: one draw");
  add_whole_number(command, "--window", options->window, 1, most_window_units,
                   "units of the window of worst throughput (default 10)");
  add_shift_options(command, options->shift);
  add_change_options(command, *options);
  command.flag("--summary", options->summary, "without the units");
  command.flag("--json", options->json,
               "one JSON document on standard output: means of the runs, and behind \"draw\" what is of "
               "that one draw");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
