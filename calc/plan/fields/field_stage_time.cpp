#include "plan/fields/field_stage_time.hpp"

#include "base/csv/csv.hpp"
#include "plan/fields/field_access.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt::table {

namespace {

class StageTimeAccess final : public FieldAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field,
            ReadContext& context) const override {
    const bool is_word = node.kind() == JsonValue::Kind::string;
    require_kind(node, is_word || node.kind() == JsonValue::Kind::number, field, context);
    Stage& stage = stage_of(object);
    if (is_word) {
      require_kind(node, !node.is_empty_string(), field, context);
      stage.time_of = node.string();
    } else {
      stage.time_s = node.number();
    }
    check_time(stage, field, context);
  }
  bool is_written(const void* object, const FieldInfo&, bool) const override {
    return stage_of(object).time_s.has_value() || !stage_of(object).time_of.empty();
  }
  void write(const void* object, const FieldInfo&, std::string& json) const override {
    if (const Stage& stage = stage_of(object); stage.time_s) {
      write_value(*stage.time_s, json);
    } else {
      write_value(stage.time_of, json);
    }
  }
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override {
    check_time(stage_of(object), field, check);
  }
  std::string text(const void* object, const FieldInfo&) const override {
    const Stage& stage = stage_of(object);
    return stage.time_s ? value_text(*stage.time_s) : stage.time_of;
  }
  void set_text(void* object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    Stage changed;
    double seconds = 0;
    if (parse_number(trimmed(text), seconds)) {
      changed.time_s = seconds;
    } else {
      changed.time_of = trimmed(text);
    }
    check_time(changed, field, place);
    stage_of(object).time_of = std::move(changed.time_of);
    stage_of(object).time_s = changed.time_s;
  }
  std::optional<double> number(const void* object, const FieldInfo&) const override {
    return stage_of(object).time_s;
  }
  void set_number(void* object, const FieldInfo& field, std::optional<double> number) const override {
    set_text(object, field, number ? value_text(*number) : std::string());
  }

 private:
  static Stage& stage_of(void* object) { return *static_cast<Stage*>(object); }
  static const Stage& stage_of(const void* object) { return *static_cast<const Stage*>(object); }

  static void check_time(const Stage& stage, const FieldInfo& field, FieldPath& place) {
    if (stage.time_s && !stage.time_of.empty())
      place.refuse("both a word and seconds"_word, field.expectation());
    if (stage.time_s) return check_value(*stage.time_s, field, place);
    if (stage.time_of.empty()) return;
    for (std::string_view word : field.choices)
      if (word == stage.time_of) return;
    place.refuse(quoted(stage.time_of), with_nearest(field.expectation(), stage.time_of, field.choices));
  }
};

}  // namespace

FieldInfo stage_time(const char* key, const char* label, std::initializer_list<std::string_view> words,
                     const char* help) {
  static const StageTimeAccess access;
  FieldInfo field = info(FieldKind::choice_or_number, key, label, help);
  field.unit = "s";
  field.range = at_least(0);
  field.choices = words;
  field.access = &access;
  return field;
}

}  // namespace seamtakt::table
