#include <map>
#include <memory>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "cli/common/command.hpp"
#include "cli/common/explanation_json.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/waveform_file.hpp"
#include "formula/quantities/quantity.hpp"

namespace seamtakt::cli {

namespace {

/// What was typed after one quantity's options, by option name.
constexpr std::uint64_t least_samples = 2, most_samples = 100'000'000;

struct Options {
  std::map<std::string, std::string> given, uncertainty;
  std::size_t monte_carlo = 0;
  bool json = false, explain = false;
};

const Unit& unit_named(const char* name) {
  static const Unit dimensionless{"", Dimension::none, 1, 1, 0};
  const Unit* unit = *name ? find_unit(name) : nullptr;
  return unit ? *unit : dimensionless;
}

/// "2%" of the value, or an absolute uncertainty with unit; a temperature's is a difference.
double standard_uncertainty(const OptionSpec& option, const std::string& text, double value) {
  const std::string where = "--u-" + std::string(option.name);
  double u;
  if (!text.empty() && text.back() == '%' && std::string_view(option.unit) != "%")
    u = std::abs(value) *
        parse_quantity(std::string_view(text).substr(0, text.size() - 1), unit_named(""), where) / 100;
  else
    u = parse_difference(text, unit_named(option.unit), where);
  if (!(u >= 0)) throw InputError(where, "\"" + printable(text) + "\"", "an uncertainty of 0 or more"_word);
  return u;
}

QuantityRequest request_of(const Quantity& quantity, const Options& options) {
  QuantityRequest request;
  request.monte_carlo_samples = options.monte_carlo;
  for (const OptionSpec& option : quantity.options) {
    const auto given = options.given.find(option.name);
    if (given == options.given.end()) continue;
    const std::string where = "--" + std::string(option.name);
    if (option.kind == OptionKind::number)
      request.inputs.numbers[option.name] = parse_quantity(given->second, unit_named(option.unit), where);
    else if (option.kind == OptionKind::series)
      request.inputs.series = read_waveform(given->second);
    else
      request.inputs.texts[option.name] = given->second;
  }
  for (const auto& [name, text] : options.uncertainty) {
    const auto value = request.inputs.numbers.find(name);
    if (value == request.inputs.numbers.end())
      throw InputError("--u-" + name, "an uncertainty without a value"_word,
                       Sentence("calc.option-as-well"_key, {{"option", "--" + name}}));
    for (const OptionSpec& option : quantity.options)
      if (name == option.name)
        request.standard_uncertainty[name] = standard_uncertainty(option, text, value->second);
  }
  return request;
}

/// `name`: the key, or what follows the dot of a key such as "limits_mm.undercut".
void write_result(JsonWriter& json, const ResultSpec& spec, const std::string& name,
                  const QuantityAnswer& answer) {
  json.key(name);
  const auto found = answer.results.values.find(spec.key);
  if (found == answer.results.values.end()) {
    json.null();
    return;
  }
  const ResultValue<double>& value = found->second;
  if (value.is_list) {
    json.begin_array(JsonWriter::Layout::compact);
    for (const auto& element : value.list) json.value(element);
    json.end_array();
  } else if (value.text) {
    json.value(*value.text);
  } else if (value.boolean) {
    json.value(*value.boolean);
  } else {
    json.value(value.number);
  }
  if (const auto u = answer.u.find(spec.key); u != answer.u.end())
    json.member("u_" + name, u->second).member("U_" + name, 2 * u->second);
  if (const auto u = answer.u_monte_carlo.find(spec.key); u != answer.u_monte_carlo.end())
    json.member("u_monte_carlo_" + name, u->second);
}

/// Keys with a dot are grouped in an object named by the text before the dot.
void write_results(JsonWriter& json, const Quantity& quantity, const QuantityAnswer& answer) {
  std::string open_group;
  for (const ResultSpec& spec : quantity.results) {
    const std::string key = spec.key;
    const std::size_t dot = key.find('.');
    const std::string group = dot == std::string::npos ? std::string() : key.substr(0, dot);
    if (group != open_group) {
      if (!open_group.empty()) json.end_object();
      if (!group.empty()) json.key(group).begin_object();
      open_group = group;
    }
    write_result(json, spec, dot == std::string::npos ? key : key.substr(dot + 1), answer);
  }
  if (!open_group.empty()) json.end_object();
}

std::string json_text(const Quantity& quantity, const QuantityAnswer& answer, bool explain) {
  JsonWriter json;
  json.begin_object().member("quantity", quantity.name);
  write_results(json, quantity, answer);
  if (explain) {
    json.key("formulas").begin_array();
    for (const Explanation& explanation : answer.results.explanations) write_explanation(json, explanation);
    json.end_array();
  }
  write_findings(json, answer.results.findings);
  write_provenance(json, provenance_without_plan());
  json.end_object();
  return json.take();
}

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
    const QuantityAnswer given = answer(quantity, request_of(quantity, *options));
    result.output = options->json ? json_text(quantity, given, options->explain)
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
