#include "cli/manual/result_schemas.hpp"

#include "base/json/json_node.hpp"
#include "base/json/json_writer.hpp"
#include "cli/manual/completion_words.hpp"
#include "cli/manual/result_shapes.hpp"
#include "cli/manual/schema_shape.hpp"

namespace seamtakt::cli {

namespace {

constexpr const char* dialect = "https://json-schema.org/draft/2020-12/schema";

/// How many characters fit a line of a file that people read.
constexpr std::size_t line_width = 110;

void write_indented(const JsonNode& node, std::size_t indent, std::string& out);

/// On one line, blanks after commas and colons.
std::string flat(const JsonNode& node) {
  JsonWriter json;
  const auto write = [&](const auto& self, const JsonNode& value) -> void {
    switch (value.kind) {
      case JsonNode::Kind::object:
        json.begin_object(JsonWriter::Layout::compact);
        for (const JsonMember& member : value.members) {
          json.key(member.key);
          self(self, member.value);
        }
        json.end_object();
        break;
      case JsonNode::Kind::array:
        json.begin_array(JsonWriter::Layout::compact);
        for (const JsonNode& element : value.elements) self(self, element);
        json.end_array();
        break;
      case JsonNode::Kind::string:
        json.value(value.string);
        break;
      case JsonNode::Kind::number:
        json.value(value.number);
        break;
      case JsonNode::Kind::boolean:
        json.value(value.boolean);
        break;
      case JsonNode::Kind::null:
        json.null();
    }
  };
  write(write, node);
  std::string text = json.take();
  text.pop_back();  // the end of the line
  return text;
}

void write_members(const JsonNode& node, std::size_t indent, std::string& out) {
  const bool is_object = node.kind == JsonNode::Kind::object;
  const std::size_t count = is_object ? node.members.size() : node.elements.size();
  out += is_object ? "{\n" : "[\n";
  for (std::size_t i = 0; i < count; ++i) {
    out += std::string(indent + 2, ' ');
    if (is_object) out += json_string(node.members[i].key) + ": ";
    write_indented(is_object ? node.members[i].value : node.elements[i], indent + 2, out);
    out += i + 1 < count ? ",\n" : "\n";
  }
  out += std::string(indent, ' ') + (is_object ? "}" : "]");
}

/// What fits a line is on one.
void write_indented(const JsonNode& node, std::size_t indent, std::string& out) {
  const std::string line = flat(node);
  const bool holds_others = node.kind == JsonNode::Kind::object || node.kind == JsonNode::Kind::array;
  if (!holds_others || indent + line.size() <= line_width)
    out += line;
  else
    write_members(node, indent, out);
}

std::string readable(const std::string& json) {
  std::string out;
  write_indented(parse_json(json, "schema"), 0, out);
  return out + "\n";
}

std::vector<NamedShape> all_results() {
  std::vector<NamedShape> shapes;
  for (const auto& some : {calc_shapes(), plan_shapes(), cell_shapes(), record_shapes(), ledger_shapes()})
    shapes.insert(shapes.end(), some.begin(), some.end());
  return shapes;
}

void add_definition(std::string& definitions, const std::string& name, const std::string& schema) {
  definitions += (definitions.empty() ? "" : ", ") + json_string(name) + ": " + schema;
}

/// Arguments of one command, by the names that requests have.
std::string arguments_schema(const CommandInfo& command) {
  const std::string one = R"({"type": ["string", "number"]})";
  std::string properties, required;
  for (const OptionInfo& option : command.options) {
    const std::string name = option.is_positional ? option.names.front() : option.names.back().substr(2);
    if (name == "json" || name == "help" || name == "version" || name == "follow") continue;
    std::string schema = one;
    if (option.is_flag) schema = R"({"type": "boolean"})";
    if (!option.choices.empty()) {
      std::string words;
      for (const std::string& choice : option.choices)
        words += (words.empty() ? "" : ", ") + json_string(choice);
      schema = "{\"enum\": [" + words + "]}";
    }
    if (option.is_list)
      schema = R"({"anyOf": [)" + schema + R"(, {"type": "array", "items": )" + schema + "}]}";
    schema.insert(1, "\"description\": " + json_string(option.text) + ", ");
    add_definition(properties, name, schema);
    if (option.is_required) required += (required.empty() ? "" : ", ") + json_string(name);
  }
  return "{\"type\": \"object\", \"properties\": {" + properties + "}, \"required\": [" + required +
         "], \"additionalProperties\": false}";
}

std::string request_schema(const std::string& called, const CommandInfo& command) {
  bool needs_arguments = false;
  for (const OptionInfo& option : command.options) needs_arguments = needs_arguments || option.is_required;
  return "{\"description\": " + json_string(command.text) +
         ", \"type\": \"object\", \"properties\": {\"id\": {\"$ref\": \"#/$defs/id\"}, \"command\": "
         "{\"const\": " +
         json_string(called) + "}, \"arguments\": " + arguments_schema(command) +
         "}, \"required\": [\"command\"" + (needs_arguments ? ", \"arguments\"" : "") +
         "], \"additionalProperties\": false}";
}

}  // namespace

std::string result_schema() {
  std::string definitions;
  for (const NamedShape& common : common_shapes())
    add_definition(definitions, common.name, schema_of_shape(common.shape));
  for (const NamedShape& result : all_results())
    add_definition(definitions, result.name, schema_of_shape(result.shape));
  return readable(
      std::string("{\"$schema\": \"") + dialect +
      "\", \"$comment\": \"What each command prints with --json, under $defs by the command's words: "
      "calc-fillet, ledger-list. Made from the program's tables.\", \"title\": \"results\", \"$defs\": {" +
      definitions + "}}");
}

std::string serve_schema(const CommandInfo& program) {
  const std::string id =
      R"({"anyOf": [{"type": "string", "maxLength": 200}, {"type": "integer"}, {"type": "null"}]})";
  std::string definitions, requests;
  add_definition(definitions, "id", id);
  each_command(program, [&](const std::vector<std::string>& words, const CommandInfo& command) {
    if (!command.commands.empty() || !command.find_option("json")) return;
    const std::string name = "request-" + joined(words, "-");
    CommandInfo with_password = command;
    if (const OptionInfo* password = program.find_option("password-file"))
      if (words.front() != "calc") with_password.options.push_back(*password);
    add_definition(definitions, name, request_schema(joined(words, " "), with_password));
    requests += (requests.empty() ? "" : ", ") + ("{\"$ref\": " + json_string("#/$defs/" + name) + "}");
  });
  add_definition(definitions, "request", "{\"anyOf\": [" + requests + "]}");
  add_definition(
      definitions, "answer",
      schema_of_shape(
          "{id: @id, exit_code: whole, complaint?: text, result: <any>} | "
          "{id: @id, exit_code: whole, error: {where: text, found: text, expected: text, pointer?: text}}"));
  return readable(
      std::string("{\"$schema\": \"") + dialect +
      "\", \"$comment\": \"Lines of seamtakt serve --stdio: each request is a line, and so is its answer, "
      "in the same order. A result is what results.schema.json says of the command.\", \"title\": "
      "\"requests and answers\", \"anyOf\": [{\"$ref\": \"#/$defs/request\"}, {\"$ref\": "
      "\"#/$defs/answer\"}], \"$defs\": {" +
      definitions + "}}");
}

}  // namespace seamtakt::cli
