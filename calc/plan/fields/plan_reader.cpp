#include <optional>

#include "base/json/json_document.hpp"
#include "base/units/units.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

constexpr int this_version = 1;

/// Checked first: keys of another format or of a later version are rightly unknown and don't show the real
/// error.
void check_format(const JsonValue& root, FieldPath& place) {
  using Kind = JsonValue::Kind;
  if (!root.is(Kind::object)) place.refuse(found_text(root), object_expectation(fields_of<Plan>()));
  const std::optional<JsonValue> format = root.member("format"), version = root.member("version");
  if (!format)
    place.refuse(Sentence("field.found.no-key"_key, {{"key", quoted("format")}}),
                 Sentence("plan.format"_key, {{"format", "\"format\": \"weldplan\""}}));
  if (!format->is(Kind::string) || format->string() != "weldplan") {
    FieldPath::Step step(place, "format");
    place.refuse(found_text(*format), "weldplan");
  }
  if (!version || !version->is(Kind::number) || version->number() <= this_version) return;
  FieldPath::Step step(place, "version");
  place.refuse(
      Sentence("plan.version"_key, {{"version", UnitValue{version->number(), "", UnitValue::all_digits}}}),
      Sentence("plan.version.newest"_key, {{"version", this_version}}));
}

}  // namespace

Plan parse_plan(const JsonDocument& json) {
  ReadContext context(json.file(), json.root());
  check_format(json.root(), context);
  Plan plan;
  read_object(plan, json.root(), context);
  ReferenceCheck check(plan, json.file(), json.root());
  check_object(plan, check);
  check_relations(plan, check);
  return plan;
}

Plan parse_plan(std::string_view text, const std::string& file) {
  return parse_plan(JsonDocument(text, file));
}

Plan load_plan(const std::string& path) {
  return parse_plan(read_file(path, JsonLimits{}.bytes), path);
}

}  // namespace seamtakt
