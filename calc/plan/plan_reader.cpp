#include "base/json_node.hpp"
#include "base/units.hpp"
#include "plan/object_fields.hpp"
#include "plan/plan_file.hpp"

namespace seamtakt {

namespace {

constexpr int this_version = 1;

/// Asked before anything else: the keys of another format, or of a later version, are unknown by right and
/// say nothing of what is wrong.
void check_format(const JsonNode& root, FieldPlace& place) {
  const FieldTable<Plan>& table = fields_of<Plan>();
  if (root.kind != JsonNode::Kind::object)
    place.refuse(found_text(root), std::string("an object (") + table.title + ")");
  const JsonNode* format = root.find("format");
  const JsonNode* version = root.find("version");
  if (format == nullptr) place.refuse("no key \"format\"", "a weld plan: \"format\": \"weldplan\"");
  if (format->kind != JsonNode::Kind::string || format->string != "weldplan") {
    FieldPlace::Step step(place, "format");
    place.refuse(found_text(*format), "weldplan");
  }
  if (version == nullptr || version->kind != JsonNode::Kind::number || version->number <= this_version)
    return;
  FieldPlace::Step step(place, "version");
  place.refuse("version " + number_text(version->number) + " of the plan file",
               "version " + std::to_string(this_version) + ": this file needs a newer Seamtakt");
}

}  // namespace

Plan parse_plan(std::string_view text, const std::string& file) {
  const JsonNode root = parse_json(text, file);
  ReadContext context(file, root, text);
  check_format(root, context);
  Plan plan;
  read_object(plan, root, context);
  PlanCheck check(plan, file, &root);
  check_object(plan, check);
  check_relations(plan, check);
  return plan;
}

Plan load_plan(const std::string& path) {
  return parse_plan(read_file(path, JsonLimits{}.bytes), path);
}

}  // namespace seamtakt
