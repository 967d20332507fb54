#include "cli/plan/calc_answer.hpp"

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "cli/common/explanation_json.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/waveform_file.hpp"

namespace seamtakt::cli {

namespace {

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

QuantityRequest request_of(const Quantity& quantity, const CalcArguments& options) {
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

}  // namespace

std::string calc_json(const Quantity& quantity, const QuantityAnswer& answer, bool explain) {
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

QuantityAnswer calc_answer(const Quantity& quantity, const CalcArguments& arguments) {
  return answer(quantity, request_of(quantity, arguments));
}

}  // namespace seamtakt::cli
