#include <iterator>
#include <limits>
#include <memory>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/text/ascii.hpp"
#include "base/text/comma_list.hpp"
#include "cell/search/best_order.hpp"
#include "cell/timeline/cycle_columns.hpp"
#include "cell/timeline/fewer_is_faster.hpp"
#include "cell/timeline/plan_order.hpp"
#include "cli/cell/best_search.hpp"
#include "cli/cell/robot_out.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::uint64_t most_steps = 1'000'000'000'000;
constexpr double least_seconds = 1e-6;

struct Options {
  std::string plan, weldment, order = "given", seconds, output;
  ShiftOptions shift;
  std::uint64_t seed = 1, steps = 0;
  bool json = false, summary = false;
};

/// What a reader looks for first comes first.
constexpr std::string_view first_columns[] = {"weldment",      "cycle_time_s",  "takt_s",
                                              "takt_margin_s", "lower_bound_s", "weld_s",
                                              "arc_on_s",      "air_s",         "start_end_s"};

std::string summary_table(const std::vector<CycleResult>& cycles) {
  return column_table(ordered_columns(cycle_columns(), std::span(first_columns), Shown::brief), cycles);
}

/// Why a weldment has no margin: a line each.
std::string unwelded_text(const std::vector<CycleResult>& cycles) {
  std::string text;
  for (const CycleResult& cycle : cycles)
    if (!cycle.unwelded.empty())
      text += "\n" + shown_text(Sentence("cli.cycle.unwelded"_key, {{"weldment", cycle.weldment},
                                                                    {"unwelded", cycle.unwelded.size()},
                                                                    {"seams", cycle.robot_seams}}));
  return text.empty() ? text : text + "\n";
}

/// A heading within a line: English has it in small letters, other languages write their words as they are.
std::string within_line(const char* heading) {
  const std::string word = shown_word(Word::of_table(heading));
  return word == heading ? lower_case(word) : word;
}

/// Where the time goes beside the arc: a line a weldment.
std::string losses_text(const std::vector<CycleResult>& cycles) {
  constexpr std::size_t most = 3;
  std::string text = "\n" + shown_text(Sentence("cli.cycle.losses"_key)) + "\n";
  for (const CycleResult& cycle : cycles) {
    std::vector<std::string> losses;
    for (const CycleLoss& loss : cycle_losses(cycle))
      if (losses.size() < most)
        losses.push_back(within_line(loss.part->label) + " " + output_view().quantity({loss.time_s, "s"}));
    if (!losses.empty()) text += "  " + printable(cycle.weldment) + ": " + comma_list(losses) + "\n";
  }
  return text;
}

/// What the robots wait for: a line a weldment.
std::string waits_text(const std::vector<CycleResult>& cycles) {
  std::string text;
  for (const CycleResult& cycle : cycles) {
    std::vector<std::string> waits;
    for (const WaitSum& wait : wait_sums(cycle))
      waits.push_back(shown_word(name_of(wait.cause)) + " " + output_view().quantity({wait.time_s, "s"}));
    if (!waits.empty()) text += "  " + printable(cycle.weldment) + ": " + comma_list(waits) + "\n";
  }
  return text.empty() ? text : "\n" + shown_text(Sentence("cli.cycle.waits"_key)) + "\n" + text;
}

std::string direction_of(const Move& move) {
  if (move.kind != MoveKind::arc) return "";
  return shown_word(move.reversed ? "reversed"_word : "as drawn"_word);
}

std::string moves_table(const CycleResult& cycle) {
  TextTable table({{"Robot"_word, "", true, 0},
                   {"Start"_word, "s", false, 6},
                   {"End"_word, "s", false, 6},
                   {"Kind"_word, "", true, 0},
                   {"Seam"_word, "", true, 0},
                   {"Pass"_word, "", true, 0},
                   {"Direction"_word, "", true, 0},
                   {"Why"_word, "", true, 0}},
                  output_view());
  for (const Move& move : cycle.moves)
    table.cell(move.robot)
        .cell(move.start_s)
        .cell(move.end_s)
        .cell(kind_sentence(move.kind))
        .cell(move.seam)
        .cell(move.pass > 0 ? std::to_string(move.pass) : std::string())
        .cell(direction_of(move))
        .cell(move.why.is_empty() ? std::string() : shown_text(move.why));
  const Sentence heading("cli.cycle.weldment"_key, {{"weldment", printable(cycle.weldment)}});
  return "\n" + shown_text(heading) + "\n" + table.text();
}

/// Ten seconds where neither time nor steps are given; any time where only steps are.
double seconds_of(const Options& options) {
  if (options.seconds.empty()) return options.steps > 0 ? std::numeric_limits<double>::infinity() : 10;
  return quantity(options.seconds, "s", {least_seconds, longest_s}, "--seconds");
}

std::vector<CycleResult> cycles_of(const Options& options, const Plan& plan) {
  const double seconds = seconds_of(options);
  const Evaluation evaluation = evaluate(plan);
  const auto weldments = chosen_weldments(plan, options.weldment);
  std::vector<CycleResult> cycles;
  if (options.order == "given") {
    for (const Weldment* weldment : weldments) cycles.push_back(cycle_given(plan, *weldment, evaluation));
    return cycles;
  }
  BestSearch search(seconds, options.steps, weldments.size());
  for (const Weldment* weldment : weldments)
    cycles.push_back(cycle_best(plan, *weldment, evaluation, search.options(weldment->id, options.seed)));
  return cycles;
}

/// What repeats the search.
std::string search_note(const Options& options, const std::vector<CycleResult>& cycles) {
  std::vector<Sentence> best;
  for (const CycleResult& cycle : cycles)
    best.push_back(
        Sentence("cli.cycle.best-of"_key, {{"weldment", cycle.weldment},
                                           {"orders", std::to_string(cycle.orders_tried)},
                                           {"gap", UnitValue{cycle.gap_pct.value_or(0), "%", 3}}}));
  const Sentence note("cli.cycle.best"_key,
                      {{"seed", std::to_string(options.seed)}, {"weldments", std::move(best)}});
  return "\n" + shown_text(note) + "\n";
}

/// The order of each cycle becomes its weldment's own.
void take_orders(Plan& plan, const std::vector<CycleResult>& cycles) {
  for (const CycleResult& cycle : cycles)
    if (Weldment* weldment = find_by_id(plan.weldments, cycle.weldment)) take_order(*weldment, cycle);
}

void save_orders(const Options& options, Plan plan, const std::vector<CycleResult>& cycles) {
  refuse_plan_that_is_read(options.plan, options.output, "--output");
  take_orders(plan, cycles);
  check_plan(plan, options.output);
  save_output(options.output, FileKind::plan, write_plan(plan));
}

/// Of a given order: that of a search is the shortest of those tried, with as many robots as there are.
Findings faster_without_robot(const Options& options, const Plan& whole, const Shift& shift,
                              const std::vector<CycleResult>& cycles) {
  if (options.shift.without_robot.empty() || options.order != "given") return {};
  return faster_with_fewer(cycles_of(options, whole), cycles, options.shift.without_robot,
                           weldments_by_hand(shift));
}

void run(const Options& options, Result& result) {
  LoadedPlan loaded = load(options.plan);
  const Plan whole = options.shift.without_robot.empty() ? Plan{} : loaded.plan;
  Shift shift = take_shift(loaded, options.shift, options.weldment);
  Findings findings = shift.findings;
  const std::vector<CycleResult> cycles = cycles_of(options, loaded.plan);
  tell_robots(shift, cycles);
  if (!options.output.empty()) save_orders(options, loaded.plan, cycles);
  if (options.order == "best") take_orders(loaded.plan, cycles);
  const std::string shift_written = save_shift_plan(loaded.plan, options.shift);
  for (const CycleResult& cycle : cycles) add_findings_without_robot(cycle.findings, findings);
  std::ranges::move(faster_without_robot(options, whole, shift, cycles), std::back_inserter(findings));
  result.exit_code = exit_code_for(findings);
  if (options.json) {
    JsonWriter json;
    json.begin_object().key("weldments");
    write_rows(json, cycle_columns(), cycles, JsonWriter::Layout::lines);
    if (options.shift.given()) write_shift(json, shift);
    write_findings(json, findings);
    write_provenance(json, loaded.provenance);
    json.end_object();
    result.output = json.take();
    return;
  }
  result.output = summary_table(cycles) + unwelded_text(cycles) + shift_text(shift) + losses_text(cycles) +
                  waits_text(cycles);
  if (options.order == "best") result.output += search_note(options, cycles);
  if (!options.summary)
    for (const CycleResult& cycle : cycles) result.output += moves_table(cycle);
  if (!options.output.empty())
    result.output += "\n" + shown_text(Sentence("cli.cycle.written"_key, {{"file", options.output}})) + "\n";
  result.output += shift_written + findings_section(findings);
}

}  // namespace

void add_cycle(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command = app.command("cycle", "The robots' timelines of each weldment, against takt");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--weldment", options->weldment, "only this weldment");
  command
      .option("--order", options->order, "given: seams in file order; best: the shortest cycle that is found")
      .one_of({"given", "best"});
  command.option("--seconds", options->seconds, "best: time for all weldments together (s; default 10)");
  add_whole_number(command, "--steps", options->steps, 1, most_steps,
                   "best: orders to try a weldment; the same ones for the same seed");
  add_seed(command, options->seed, "best: another number, another search (default 1)");
  const Option output =
      command.option("--output", options->output, "write the plan with the order as its own to this file");
  for (const Option& shift : add_shift_options(command, options->shift)) output.excludes(shift);
  command.flag("--summary", options->summary, "without the moves");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
