#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "cli/common/number_option.hpp"
#include "cli/plan/calc_answer.hpp"
#include "cli/serve/request_arguments.hpp"
#include "cli/serve/served_command.hpp"

namespace seamtakt::cli {

namespace {

const Quantity& quantity_of(const Request& request) {
  if (request.command.size() == 2)
    if (const Quantity* quantity = find_quantity(request.command[1])) return *quantity;
  std::vector<std::string> names;
  for (const Quantity* quantity : quantities()) names.push_back(quantity->name);
  throw InputError("command", "\"" + printable(request.command_text()) + "\"",
                   "calc and one of " + comma_list(names));
}

const OptionSpec* option_named(const Quantity& quantity, std::string_view name) {
  for (const OptionSpec& option : quantity.options)
    if (name == option.name) return &option;
  return nullptr;
}

std::vector<std::string> names_of(const Quantity& quantity) {
  std::vector<std::string> names;
  for (const OptionSpec& option : quantity.options) {
    names.push_back(option.name);
    if (option.kind == OptionKind::number) names.push_back("u-" + names.back());
  }
  names.insert(names.end(), {"monte-carlo", "explain"});
  return names;
}

std::string one_text(const JsonMember& member, const Argument& argument) {
  if (argument.is_truth || argument.texts.size() != 1)
    throw InputError("arguments." + printable(member.key), member.value.kind_name(), "one value");
  return argument.texts.front();
}

bool truth(const JsonMember& member, const Argument& argument) {
  if (!argument.is_truth)
    throw InputError("arguments." + printable(member.key), member.value.kind_name(), "true or false");
  return argument.truth;
}

void take(const Request& request, const Quantity& quantity, const JsonMember& member, CalcArguments& given) {
  const std::string& name = member.key;
  const Argument argument = argument_of(member);
  if (const OptionSpec* option = option_named(quantity, name)) {
    if (option->kind != OptionKind::flag)
      given.given[name] = one_text(member, argument);
    else if (truth(member, argument))
      given.given[name] = "yes";
    return;
  }
  if (name == "explain") {
    given.explain = truth(member, argument);
    return;
  }
  if (name == "monte-carlo") {
    given.monte_carlo =
        whole_number(one_text(member, argument), least_samples, most_samples, "--monte-carlo");
    return;
  }
  const OptionSpec* uncertain =
      name.starts_with("u-") ? option_named(quantity, std::string_view(name).substr(2)) : nullptr;
  if (!uncertain || uncertain->kind != OptionKind::number) refuse_argument(request, name, names_of(quantity));
  given.uncertainty[uncertain->name] = one_text(member, argument);
}

}  // namespace

Result run_served_calc(const Request& request) {
  const Quantity& quantity = quantity_of(request);
  CalcArguments given;
  for (const JsonMember& member : request.arguments.members) take(request, quantity, member, given);
  const QuantityAnswer answered = calc_answer(quantity, given);
  Result result;
  result.output = calc_json(quantity, answered, given.explain);
  result.exit_code = exit_code_for(answered.results.findings);
  return result;
}

}  // namespace seamtakt::cli
