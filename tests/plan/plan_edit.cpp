#include "plan_edit.hpp"

#include <sstream>
#include <stdexcept>

#include "base/json/json_node.hpp"
#include "plan/fields/json_layout.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace plan_edit {

namespace {

/// Byte at which a node's value begins; the text is ASCII.
std::size_t offset_of(const std::string& text, const JsonNode& node) {
  std::size_t at = 0;
  for (std::uint32_t line = 1; line < node.line; ++line) at = text.find('\n', at) + 1;
  return at + node.column - 1;
}

const JsonNode& node_at(const JsonNode& root, const std::string& pointer) {
  const JsonNode* node = &root;
  std::istringstream parts(pointer);
  std::string part;
  std::getline(parts, part, '/');
  while (std::getline(parts, part, '/')) {
    node = node->kind == JsonNode::Kind::array ? &node->elements.at(std::stoul(part)) : node->find(part);
    if (node == nullptr) throw std::runtime_error("no " + part + " of " + pointer);
  }
  return *node;
}

}  // namespace

std::string changed(const std::string& plan, const std::string& change, const std::string& pointer,
                    const std::string& text) {
  const JsonNode root = parse_json(plan, "plan");
  const std::size_t begin = offset_of(plan, node_at(root, pointer));
  std::string result = plan;
  if (change == "set") return result.replace(begin, json_value_end(plan, begin) - begin, text);
  if (change == "add") return result.insert(begin + 1, text + ", ");
  if (change != "rename") throw std::runtime_error("unknown change " + change);
  const std::size_t key_end = plan.rfind('"', begin - 1), key_begin = plan.rfind('"', key_end - 1) + 1;
  return result.replace(key_begin, key_end - key_begin, text);
}

std::vector<std::string> tab_fields(const std::string& line) {
  std::vector<std::string> fields;
  for (std::size_t at = 0;;) {
    const std::size_t tab = line.find('\t', at);
    fields.push_back(line.substr(at, tab - at));
    if (tab == std::string::npos) return fields;
    at = tab + 1;
  }
}

std::string test_data(const std::string& name) {
  return read_file(source_path("/tests/data/") + name, 64u << 20);
}

std::vector<BrokenPlan> broken_plans() {
  std::istringstream table(test_data("broken/plans.tsv"));
  std::vector<BrokenPlan> plans;
  std::string line;
  std::getline(table, line);
  while (std::getline(table, line)) {
    const auto f = tab_fields(line);
    if (f.size() != 10) throw std::runtime_error("plans.tsv: 10 fields expected: " + line);
    plans.push_back({f[0], f[1], f[2], f[3], f[4] == "yes", f[5], f[6], f[7], f[8], f[9]});
  }
  return plans;
}

}  // namespace plan_edit
