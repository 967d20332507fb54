#include "plan/fields/field_stage_time.hpp"

#include "base/csv/csv.hpp"
#include "plan/fields/field_builders.hpp"

namespace seamtakt::table {

namespace {

class StageTimeAccess : public FieldAccess<Stage> {
 public:
  void read(Stage& stage, const JsonValue& node, const FieldInfo& field,
            ReadContext& context) const override {
    const bool is_word = node.kind() == JsonValue::Kind::string;
    require_kind(node, is_word || node.kind() == JsonValue::Kind::number, field, context);
    if (is_word) {
      require_kind(node, !node.is_empty_string(), field, context);
      stage.time_of = node.string();
    } else {
      stage.time_s = node.number();
    }
    check_time(stage, field, context);
  }
  bool is_written(const Stage& stage, const FieldInfo&, bool) const override {
    return stage.time_s.has_value() || !stage.time_of.empty();
  }
  void write(const Stage& stage, const FieldInfo&, std::string& json) const override {
    if (stage.time_s) {
      write_value(*stage.time_s, json);
    } else {
      write_value(stage.time_of, json);
    }
  }
  void check(const Stage& stage, const FieldInfo& field, ReferenceCheck& check) const override {
    check_time(stage, field, check);
  }
  std::string text(const Stage& stage, const FieldInfo&) const override {
    return stage.time_s ? value_text(*stage.time_s) : stage.time_of;
  }
  void set_text(Stage& stage, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    Stage changed;
    double seconds = 0;
    if (parse_number(trimmed(text), seconds)) {
      changed.time_s = seconds;
    } else {
      changed.time_of = trimmed(text);
    }
    check_time(changed, field, place);
    stage.time_of = std::move(changed.time_of);
    stage.time_s = changed.time_s;
  }
  std::optional<double> number(const Stage& stage) const override { return stage.time_s; }
  void set_number(Stage& stage, const FieldInfo& field, std::optional<double> number) const override {
    set_text(stage, field, number ? value_text(*number) : std::string());
  }

 private:
  static void check_time(const Stage& stage, const FieldInfo& field, FieldPath& place) {
    if (stage.time_s && !stage.time_of.empty()) place.refuse("both a word and seconds", field.expectation());
    if (stage.time_s) return check_value(*stage.time_s, field, place);
    if (stage.time_of.empty()) return;
    for (std::string_view word : field.choices)
      if (word == stage.time_of) return;
    place.refuse(quoted(stage.time_of), field.expectation() + nearest_hint(stage.time_of, field.choices));
  }
};

}  // namespace

Field<Stage> stage_time(const char* key, const char* label, std::vector<std::string_view> words,
                        const char* help) {
  FieldInfo field = info(FieldKind::choice_or_number, key, label, help);
  field.unit = "s";
  field.range = at_least(0);
  field.choices = std::move(words);
  return {std::move(field), std::make_shared<StageTimeAccess>()};
}

}  // namespace seamtakt::table
