#include "base/json/json_node.hpp"

#include <algorithm>

namespace seamtakt {

const JsonNode* JsonNode::find(std::string_view key) const {
  const auto at = std::find_if(members.begin(), members.end(),
                               [key](const JsonMember& member) { return member.key == key; });
  return at == members.end() ? nullptr : &at->value;
}

const char* JsonNode::kind_name() const {
  switch (kind) {
    case Kind::null:
      return "null";
    case Kind::boolean:
      return boolean ? "true" : "false";
    case Kind::number:
      return "a number";
    case Kind::string:
      return "a string";
    case Kind::array:
      return "an array";
    case Kind::object:
      return "an object";
  }
  return "a value";
}

}  // namespace seamtakt
