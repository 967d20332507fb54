#include "cli/serve/request.hpp"

#include "base/error.hpp"
#include "base/json/json_writer.hpp"

namespace seamtakt::cli {

namespace {

constexpr JsonLimits request_limits{longest_request, 8, longest_request, 10'000, 100'000};

const char* const id_expected = "a string of at most 200 bytes or a whole number";
constexpr std::size_t longest_id = 200;

std::string id_of(const JsonNode& id) {
  if (id.kind == JsonNode::Kind::string && id.string.size() <= longest_id) return json_string(id.string);
  if (id.kind == JsonNode::Kind::number && id.is_integer) {
    std::string text;
    append_json_value(text, id.number);
    return text;
  }
  throw InputError("id", id.kind_name(), id_expected);
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : text + ' ')
    if (c != ' ') {
      word += c;
    } else if (!word.empty()) {
      words.push_back(word);
      word.clear();
    }
  return words;
}

}  // namespace

std::string Request::command_text() const {
  std::string text;
  for (const std::string& word : command) text += (text.empty() ? "" : " ") + word;
  return text;
}

void read_request(std::string_view line, Request& request) {
  JsonNode node = parse_json(line, "request", request_limits);
  if (node.kind != JsonNode::Kind::object) throw InputError("request", node.kind_name(), "an object");
  // The id first, so that whatever else is wrong is answered with it.
  if (const JsonNode* id = node.find("id"); id && id->kind != JsonNode::Kind::null) request.id = id_of(*id);
  for (JsonMember& member : node.members) {
    if (member.key == "id") continue;
    if (member.key == "command") {
      if (member.value.kind != JsonNode::Kind::string)
        throw InputError("command", member.value.kind_name(), "a string such as \"calc fillet\"");
      request.command = words_of(member.value.string);
    } else if (member.key == "arguments") {
      if (member.value.kind != JsonNode::Kind::object)
        throw InputError("arguments", member.value.kind_name(), "an object");
      request.arguments = std::move(member.value);
    } else {
      throw InputError(printable(member.key), "a member that requests don't have",
                       "id, command and arguments alone");
    }
  }
  if (request.command.empty()) throw InputError("command", "nothing", "a string such as \"calc fillet\"");
}

}  // namespace seamtakt::cli
