#include <algorithm>
#include <cmath>
#include <limits>

#include "base/json/json_writer.hpp"
#include "base/limits.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_composition.hpp"
#include "plan/fields/json_layout.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {

namespace {

/// Writes JSON members in a row; what the schema needs, and no more.
class Members {
 public:
  explicit Members(std::string& json) : json_(json) { json_ += '{'; }
  ~Members() { json_ += '}'; }
  Members(const Members&) = delete;
  Members& operator=(const Members&) = delete;

  /// A member whose value is JSON text; empty text: nothing, the caller appends the value.
  void raw(std::string_view key, std::string_view json) {
    append_json_key(json_, key, is_first_);
    json_ += json;
  }
  void text(std::string_view key, std::string_view value) {
    append_json_key(json_, key, is_first_);
    append_json_string(json_, value);
  }
  void number(std::string_view key, double value) {
    append_json_key(json_, key, is_first_);
    append_json_number(json_, value);
  }
  void texts(std::string_view key, std::span<const std::string_view> values) {
    append_json_key(json_, key, is_first_);
    json_ += '[';
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (i > 0) json_ += ", ";
      append_json_string(json_, values[i]);
    }
    json_ += ']';
  }

 private:
  std::string& json_;
  bool is_first_ = true;
};

std::string sentence(const FieldInfo& field) {
  std::string text = field.help;
  if (*field.unit != '\0') text += std::string(" Unit: ") + field.unit + ".";
  if (field.refers_to != IdList::none) text += " Holds " + field.element_expectation().english() + ".";
  return text;
}

void add_range(Members& members, const Range& range) {
  if (std::isfinite(range.lower))
    members.number(range.lower_open ? "exclusiveMinimum" : "minimum", range.lower);
  if (std::isfinite(range.upper))
    members.number(range.upper_open ? "exclusiveMaximum" : "maximum", range.upper);
}

std::string number_schema(const FieldInfo& field, std::string_view type) {
  std::string json;
  {
    Members members(json);
    members.raw("type", type);
    add_range(members, field.range);
  }
  return json;
}

std::string reference_to(std::string_view name) {
  std::string json;
  Members(json).text("$ref", "#/$defs/" + std::string(name));
  return json;
}

constexpr std::string_view named_text = R"({"type": "string", "minLength": 1})";

std::string element_schema(const FieldInfo& field) {
  switch (field.kind) {
    case FieldKind::number_list:
      return number_schema(field, "\"number\"");
    case FieldKind::interval:
      return number_schema(field, R"(["number", "null"])");
    case FieldKind::path:
      return reference_to("point");
    case FieldKind::number_pairs:
      return R"({"type": "array", "items": )" + number_schema(field, "\"number\"") +
             R"(, "minItems": 2, "maxItems": 2})";
    case FieldKind::text_pairs:
      return R"({"type": "array", "items": )" + std::string(named_text) +
             R"(, "minItems": 2, "maxItems": 2})";
    case FieldKind::point:
      return R"({"type": "number"})";
    case FieldKind::object_list:
      return reference_to(field.nested().name);
    default:
      return std::string(named_text);
  }
}

void add_list(Members& members, const FieldInfo& field, std::size_t least, std::size_t most) {
  members.text("type", "array");
  members.raw("items", element_schema(field));
  if (least > 0) members.number("minItems", static_cast<double>(least));
  if (most != std::numeric_limits<std::size_t>::max()) members.number("maxItems", static_cast<double>(most));
}

void add_composition(Members& members, const FieldInfo& field) {
  std::string elements, patterns;
  for (std::string_view symbol : element_symbols()) {
    if (!elements.empty()) elements += '|';
    elements += symbol;
  }
  {
    Members both(patterns);
    both.raw("^(" + elements + ")$", number_schema(field, "\"number\""));
    both.raw("^x_", "true");
  }
  members.text("type", "object");
  members.raw("patternProperties", patterns);
  members.raw("additionalProperties", "false");
}

void add_choice_or_number(Members& members, const FieldInfo& field) {
  std::string words;
  Members(words).texts("enum", field.choices);
  members.raw("anyOf", "[" + words + ", " + number_schema(field, "\"number\"") + "]");
}

void add_type(Members& members, const FieldInfo& field) {
  constexpr int largest_integer = std::numeric_limits<int>::max();
  switch (field.kind) {
    case FieldKind::text:
      members.text("type", "string");
      if (field.required) members.number("minLength", 1);
      break;
    case FieldKind::reference:
      members.text("type", "string");
      members.number("minLength", 1);
      break;
    case FieldKind::choice:
      members.texts("enum", field.choices);
      break;
    case FieldKind::date:
      members.text("type", "string");
      members.text("format", "date");
      members.text("pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
      break;
    case FieldKind::number:
      members.raw("type", field.nullable ? R"(["number", "null"])" : "\"number\"");
      add_range(members, field.range);
      break;
    case FieldKind::integer: {
      Range range = field.range;
      range.lower = std::max(range.lower, -static_cast<double>(largest_integer));
      range.upper = std::min(range.upper, static_cast<double>(largest_integer));
      members.text("type", "integer");
      add_range(members, range);
      break;
    }
    case FieldKind::boolean:
      members.text("type", "boolean");
      break;
    case FieldKind::interval:
      add_list(members, field, 2, 2);
      break;
    case FieldKind::choice_or_number:
      add_choice_or_number(members, field);
      break;
    case FieldKind::text_list:
    case FieldKind::reference_list:
    case FieldKind::number_list:
    case FieldKind::number_pairs:
    case FieldKind::text_pairs:
    case FieldKind::path:
    case FieldKind::object_list:
      add_list(members, field, field.least, field.most);
      break;
    case FieldKind::point:
      members.text("$ref", "#/$defs/point");
      break;
    case FieldKind::composition:
      add_composition(members, field);
      break;
    case FieldKind::object:
      members.text("$ref", "#/$defs/" + std::string(field.nested().name));
      break;
  }
}

std::string field_schema(const FieldInfo& field) {
  std::string json;
  {
    Members members(json);
    members.text("title", field.label);
    members.text("description", sentence(field));
    add_type(members, field);
    if (const std::string value = field.default_json(); !value.empty()) members.raw("default", value);
  }
  return json;
}

/// {"required": [key]} for each key of the group, of which one holds; or, where none is needed, not two of
/// them.
void add_group(Members& members, const KeyGroup& group) {
  std::string list, key_schema;
  for (std::string_view key : group.keys) {
    key_schema.clear();
    Members(key_schema).texts("required", std::span(&key, 1));
    list += (list.empty() ? "" : ", ") + key_schema;
  }
  if (group.needed) return members.raw("oneOf", "[" + list + "]");
  key_schema.clear();
  Members(key_schema).texts("required", group.keys);
  members.raw("not", key_schema);
}

void add_table(Members& members, const FieldTable& table) {
  std::string properties;
  std::vector<std::string_view> required;
  {
    Members all(properties);
    for (const FieldInfo& field : table.fields) {
      all.raw(field.key, field_schema(field));
      if (field.required) required.push_back(field.key);
    }
  }
  members.text("title", table.title);
  members.text("type", "object");
  members.raw("properties", properties);
  members.raw("patternProperties", R"({"^x_": true})");
  members.raw("additionalProperties", "false");
  if (!required.empty()) members.texts("required", required);
  for (const KeyGroup& group : table.groups) add_group(members, group);
}

/// The tables of all objects within this one, each once, in the order of the fields.
void collect(const FieldTable& table, std::vector<const FieldTable*>& tables) {
  for (const FieldInfo& field : table.fields) {
    if (field.nested == nullptr) continue;
    const FieldTable* nested = &field.nested();
    if (std::ranges::find(tables, nested) != tables.end()) continue;
    tables.push_back(nested);
    collect(*nested, tables);
  }
}

}  // namespace

std::string plan_schema() {
  const FieldTable& plan = fields_of<Plan>();
  std::vector<const FieldTable*> tables;
  collect(plan, tables);
  std::string definitions, json;
  {
    Members all(definitions);
    const std::string most = number_text(largest_coordinate_mm);
    all.raw("point", R"({"description": "[x, y, z] in mm.", "type": "array", "items": {"type": "number", )"
                     R"("minimum": -)" +
                         most + R"(, "maximum": )" + most + R"(}, "minItems": 3, "maxItems": 3})");
    for (const FieldTable* table : tables) {
      std::string object;
      {
        Members members(object);
        add_table(members, *table);
      }
      all.raw(table->name, object);
    }
  }
  {
    Members schema(json);
    schema.text("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.text(
        "$comment",
        "The plan file NAME.weldplan.json. Made from the program's field tables; the program also checks "
        "what a schema can't: ids, references, order of bounds and of seams. Keys that begin with x_ are "
        "free.");
    add_table(schema, plan);
    schema.raw("$defs", definitions);
  }
  return layout_json(json);
}

}  // namespace seamtakt
