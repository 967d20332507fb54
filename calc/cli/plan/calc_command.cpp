#include <memory>

#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/calc_answer.hpp"

namespace seamtakt::cli {

namespace {

/// What was typed after one quantity's options.
struct Options : CalcArguments {
  bool json = false;
};

constexpr int shown_digits = 6;

std::string list_text(const std::vector<std::optional<double>>& list, const char* unit) {
  const TextView& view = output_view();
  std::string text;
  for (const auto& element : list)
    text += (text.empty() ? "" : ", ") +
            (element ? view.number({*element, unit, shown_digits}) : view.word("none"_word));
  return "[" + text + "]";
}

std::string value_text(const ResultSpec& spec, const QuantityAnswer& answer) {
  const TextView& view = output_view();
  const auto found = answer.results.values.find(spec.key);
  if (found == answer.results.values.end()) return "-";
  const ResultValue<double>& value = found->second;
  if (value.is_list) return list_text(value.list, spec.unit);
  if (value.text) return view.word(*value.text);
  if (value.boolean) return view.word(*value.boolean ? "yes"_word : "no"_word);
  return value.number ? view.number({*value.number, spec.unit, shown_digits}) : "-";
}

/// The expanded uncertainty of a result; empty where there is none.
std::string uncertainty_text(const ResultSpec& spec, const QuantityAnswer& answer) {
  const auto u = answer.u.find(spec.key);
  if (u == answer.u.end()) return {};
  return output_view().difference({2 * u->second, spec.unit, 2});
}

std::string table_text(const Quantity& quantity, const QuantityAnswer& answer, bool explain) {
  TextTable table({{"Result"_word, "", true, 0},
                   {"Value"_word, "", true, 0},
                   {"Unit"_word, "", true, 0},
                   {"U (k = 2)"_word, "", true, 0},
                   {"Key"_word, "", true, 0}},
                  output_view());
  for (const ResultSpec& spec : quantity.results)
    table.cell(Word::of_table(spec.label))
        .cell(value_text(spec, answer))
        .cell(output_view().unit(spec.unit))
        .cell(uncertainty_text(spec, answer))
        .cell(spec.key);
  std::string text = table.text();
  if (!answer.results.findings.empty()) text += "\n" + findings_text(answer.results.findings);
  if (explain)
    for (const Explanation& explanation : answer.results.explanations)
      text += "\n" + explanation_text(explanation, output_view());
  return text;
}

std::string quantity_list() {
  TextTable table({{"Quantity"_word, "", true, 0}, {"What it computes"_word, "", true, 0}}, output_view());
  for (const Quantity* quantity : quantities())
    table.cell(quantity->name).cell(Word::of_table(quantity->summary));
  return table.text() + "\n" + shown_text(Sentence("calc.list.help"_key)) + "\n";
}

std::string help_of(const OptionSpec& option) {
  std::string help = option.help;
  if (option.kind == OptionKind::number && *option.unit)
    help += " (a bare number is in " + std::string(option.unit) + ")";
  if (option.choices) help += " (" + std::string(option.choices) + ")";
  if (option.default_text) help += " [" + std::string(option.default_text) + "]";
  return help;
}

void add_quantity(const Command& calc, const Quantity& quantity, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command = calc.command(quantity.name, quantity.summary);
  for (const OptionSpec& option : quantity.options) {
    const std::string name = option.name;
    if (option.kind == OptionKind::flag) {
      command.flag(
          "--" + name, [options, name] { options->given[name] = "yes"; }, option.help);
      continue;
    }
    command.option(
        "--" + name, [options, name](const std::string& text) { options->given[name] = text; },
        help_of(option));
    if (option.kind == OptionKind::number)
      command
          .option(
              "--u-" + name, [options, name](const std::string& text) { options->uncertainty[name] = text; },
              "standard uncertainty of --" + name + ", absolute with unit or in %")
          .below_heading("Uncertainty");
  }
  add_whole_number(command, "--monte-carlo", options->monte_carlo, least_samples, most_samples,
                   "uncertainty by this many random samples as well")
      .below_heading("Uncertainty");
  command.flag("--explain", options->explain, "formula, numbers put in, source, range");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &quantity, &result] {
    const QuantityAnswer given = calc_answer(quantity, *options);
    result.output = options->json ? calc_json(quantity, given, options->explain)
                                  : table_text(quantity, given, options->explain);
    result.exit_code = exit_code_for(given.results.findings);
  });
}

}  // namespace

void add_calc(const Command& app, Result& result) {
  const Command calc = app.command("calc", "One formula at a time; alone it lists the quantities");
  calc.needs_commands(0, 1);
  for (const Quantity* quantity : quantities()) add_quantity(calc, *quantity, result);
  calc.run([calc, &result] {
    if (!calc.has_chosen_command()) result.output = quantity_list();
  });
}

}  // namespace seamtakt::cli
