#include "cli/serve/request_arguments.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/comma_list.hpp"

namespace seamtakt::cli {

namespace {

std::string place_of(const std::string& name) {
  return "arguments." + printable(name);
}

std::string text_of(const JsonNode& node, const std::string& name) {
  if (node.kind == JsonNode::Kind::string) return node.string;
  if (node.kind != JsonNode::Kind::number)
    throw InputError(place_of(name), node.kind_name(),
                     "a string, a number, true or false, or an array of these");
  std::string text;
  append_json_value(text, node.number);
  return text;
}

/// Without dashes, as requests name it: "from-date"; of a positional argument "PLAN".
std::string plain_name(const OptionInfo& option) {
  return option.is_positional ? option.names.front() : option.names.back().substr(2);
}

/// What `serve` itself decides (the form of results), or what would print help.
bool is_own(const std::string& name) {
  return name == "json" || name == "help" || name == "version";
}

std::vector<std::string> known_names(const CommandInfo& command) {
  std::vector<std::string> names;
  for (const OptionInfo& option : command.options)
    if (!is_own(plain_name(option))) names.push_back(plain_name(option));
  return names;
}

void add_flag(const Argument& argument, const std::string& name, std::vector<std::string>& words) {
  if (!argument.is_truth) throw InputError(place_of(name), "a value", "true or false");
  if (argument.truth) words.push_back("--" + name);
}

void add_values(const OptionInfo& option, const Argument& argument, const std::string& name,
                std::vector<std::string>& words) {
  if (argument.is_truth) throw InputError(place_of(name), "true or false", "a value");
  if (argument.texts.size() > 1 && !option.is_list)
    throw InputError(place_of(name), "an array of " + std::to_string(argument.texts.size()), "one value");
  for (const std::string& text : argument.texts) {
    // Standard input holds the requests; and what begins with a dash would be read as an option.
    if (option.is_positional && (text.empty() || text.front() == '-'))
      throw InputError(place_of(name), "\"" + printable(text) + "\"",
                       "a value that doesn't begin with a dash (./-NAME for such a file)");
    if (!option.is_positional) words.push_back("--" + name);
    words.push_back(text);
  }
}

}  // namespace

Argument argument_of(const JsonMember& member) {
  const JsonNode& value = member.value;
  Argument argument;
  if (value.kind == JsonNode::Kind::boolean) {
    argument.is_truth = true;
    argument.truth = value.boolean;
  } else if (value.kind == JsonNode::Kind::array) {
    for (const JsonNode& element : value.elements) argument.texts.push_back(text_of(element, member.key));
  } else {
    argument.texts.push_back(text_of(value, member.key));
  }
  return argument;
}

void refuse_argument(const Request& request, const std::string& name, const std::vector<std::string>& known) {
  throw InputError(place_of(name), "an argument that " + request.command_text() + " doesn't take",
                   "one of " + comma_list(known));
}

std::vector<std::string> command_words(const Request& request, const CommandInfo& command) {
  std::vector<std::string> words = request.command, options;
  for (const JsonMember& member : request.arguments.members) {
    const OptionInfo* option = is_own(member.key) ? nullptr : command.find_option(member.key);
    if (!option) refuse_argument(request, member.key, known_names(command));
    const Argument argument = argument_of(member);
    if (option->is_flag)
      add_flag(argument, member.key, options);
    else
      add_values(*option, argument, member.key, option->is_positional ? words : options);
  }
  for (const OptionInfo& option : command.options) {
    if (!option.is_required) continue;
    const bool given =
        std::any_of(request.arguments.members.begin(), request.arguments.members.end(),
                    [&](const JsonMember& member) { return command.find_option(member.key) == &option; });
    if (!given) throw InputError(place_of(plain_name(option)), "nothing", option.text);
  }
  words.insert(words.end(), options.begin(), options.end());
  words.push_back("--json");
  return words;
}

}  // namespace seamtakt::cli
