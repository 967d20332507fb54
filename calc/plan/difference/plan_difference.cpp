#include "plan/difference/plan_difference.hpp"

#include <algorithm>

#include "base/json/json_writer.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {

namespace {

using Kind = JsonNode::Kind;

class Comparison {
 public:
  std::vector<PlanDifference> run(const JsonNode& before, const JsonNode& after) {
    compare("", before, after);
    return std::move(found_);
  }

 private:
  static std::string below(const std::string& where, const std::string& step) {
    return where.empty() ? step : where + "/" + step;
  }

  void compare(const std::string& where, const JsonNode& before, const JsonNode& after) {
    if (same_json(before, after)) return;
    if (before.kind == Kind::object && after.kind == Kind::object)
      return compare_members(where, before, after);
    if (is_list_of_ids(before) && is_list_of_ids(after)) return compare_by_ids(where, before, after);
    found_.push_back({PlanDifference::Kind::changed, where, json_line(before), json_line(after)});
  }

  void compare_members(const std::string& where, const JsonNode& before, const JsonNode& after) {
    for (const JsonMember& member : before.members)
      compare_pair(below(where, member.key), member.value, after.find(member.key));
    for (const JsonMember& member : after.members)
      if (!before.find(member.key)) add(below(where, member.key), member.value);
  }

  void compare_by_ids(const std::string& where, const JsonNode& before, const JsonNode& after) {
    for (const JsonNode& element : before.elements) {
      const std::string& id = element.find("id")->string;
      compare_pair(below(where, id), element, element_of_id(after, id));
    }
    for (const JsonNode& element : after.elements) {
      const std::string& id = element.find("id")->string;
      if (!element_of_id(before, id)) add(below(where, id), element);
    }
  }

  void compare_pair(const std::string& where, const JsonNode& before, const JsonNode* after) {
    if (after) return compare(where, before, *after);
    found_.push_back({PlanDifference::Kind::removed, where, json_line(before), {}});
  }

  void add(const std::string& where, const JsonNode& after) {
    found_.push_back({PlanDifference::Kind::added, where, {}, json_line(after)});
  }

  std::vector<PlanDifference> found_;
};

void append_json(std::string& text, const JsonNode& node) {
  switch (node.kind) {
    case Kind::null:
      text += "null";
      return;
    case Kind::boolean:
      text += node.boolean ? "true" : "false";
      return;
    case Kind::number:
      append_json_value(text, node.number);
      return;
    case Kind::string:
      append_json_string(text, node.string);
      return;
    case Kind::array:
      text += '[';
      for (std::size_t i = 0; i < node.elements.size(); ++i) {
        if (i > 0) text += ", ";
        append_json(text, node.elements[i]);
      }
      text += ']';
      return;
    case Kind::object:
      text += '{';
      for (std::size_t i = 0; i < node.members.size(); ++i) {
        if (i > 0) text += ", ";
        append_json_string(text, node.members[i].key);
        text += ": ";
        append_json(text, node.members[i].value);
      }
      text += '}';
  }
}

}  // namespace

std::string json_line(const JsonNode& node) {
  std::string text;
  append_json(text, node);
  return text;
}

bool same_json(const JsonNode& a, const JsonNode& b) {
  if (a.kind != b.kind) return false;
  switch (a.kind) {
    case Kind::null:
      return true;
    case Kind::boolean:
      return a.boolean == b.boolean;
    case Kind::number:
      return a.number == b.number;
    case Kind::string:
      return a.string == b.string;
    case Kind::array:
      return std::equal(a.elements.begin(), a.elements.end(), b.elements.begin(), b.elements.end(),
                        same_json);
    case Kind::object:
      return a.members.size() == b.members.size() &&
             std::all_of(a.members.begin(), a.members.end(), [&](const JsonMember& member) {
               const JsonNode* other = b.find(member.key);
               return other && same_json(member.value, *other);
             });
  }
  return false;
}

bool is_list_of_ids(const JsonNode& list) {
  if (list.kind != Kind::array) return false;
  return std::all_of(list.elements.begin(), list.elements.end(), [](const JsonNode& element) {
    const JsonNode* id = element.kind == Kind::object ? element.find("id") : nullptr;
    return id && id->kind == Kind::string;
  });
}

const JsonNode* element_of_id(const JsonNode& list, const std::string& id) {
  for (const JsonNode& element : list.elements)
    if (element.find("id")->string == id) return &element;
  return nullptr;
}

JsonNode plan_json(const Plan& plan) {
  return parse_json(write_plan(plan), "plan");
}

std::vector<PlanDifference> plan_differences(const Plan& before, const Plan& after) {
  return Comparison().run(plan_json(before), plan_json(after));
}

}  // namespace seamtakt
