#include "plan/fields/field_access.hpp"

#include <cmath>
#include <type_traits>
#include <utility>

#include "plan/fields/field_value.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

template <class M>
constexpr bool is_list = false;
template <class E>
constexpr bool is_list<std::vector<E>> = true;

void check_references(const std::string& id, const FieldInfo& field, ReferenceCheck& check) {
  if (!id.empty()) check.reference(id, field);
}

void check_references(const std::vector<std::string>& ids, const FieldInfo& field, ReferenceCheck& check) {
  for (std::size_t i = 0; i < ids.size(); ++i) {
    FieldPath::Step step(check, i);
    check.reference(ids[i], field);
  }
}

/// Checks a number that a form or a dragged point gives. What isn't finite is refused as its text would be.
void check_number(double number, const FieldInfo& field) {
  FieldPath place(field.key);
  if (std::isfinite(number)) {
    check_value(number, field, place);
  } else {
    double refused = 0;
    parse_value(refused, value_text(number), field, place);
  }
}

/// A member that always has a value, though it may be one that means "absent" (an empty text).
template <class M>
class ValueAccess final : public FieldAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field,
            ReadContext& context) const override {
    read_value(value_of(object, field), node, field, context);
  }
  bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const override {
    return seamtakt::is_written(value_of(object, field), value_of(field.standard, field), field, was_in_file);
  }
  void write(const void* object, const FieldInfo& field, std::string& json) const override {
    write_value(value_of(object, field), json);
  }
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override {
    const M& value = value_of(object, field);
    if (!check.values_are_known_good()) check_value(value, field, check);
    if constexpr (std::is_same_v<M, std::string> || std::is_same_v<M, std::vector<std::string>>)
      if (field.refers_to != IdList::none) check_references(value, field, check);
  }
  std::string text(const void* object, const FieldInfo& field) const override {
    return value_text(value_of(object, field));
  }
  void set_text(void* object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    M value = value_of(field.standard, field);
    if (trimmed(text).empty()) {
      if (field.required && !(is_list<M> && field.least == 0))
        place.refuse("nothing"_word, field.expectation());
    } else {
      parse_value(value, text, field, place);
    }
    value_of(object, field) = std::move(value);
  }
  std::optional<double> number(const void* object, const FieldInfo& field) const override {
    if constexpr (std::is_arithmetic_v<M>) return static_cast<double>(value_of(object, field));
    return std::nullopt;
  }
  void set_number(void* object, const FieldInfo& field, std::optional<double> number) const override {
    if constexpr (std::is_same_v<M, double>) {
      if (number) {
        check_number(*number, field);
        value_of(object, field) = *number;
        return;
      }
    }
    set_text(object, field, number ? value_text(*number) : std::string());
  }
  std::string default_json(const void* object, const FieldInfo& field) const override {
    std::string json;
    const M& value = value_of(object, field);
    if constexpr (std::is_same_v<M, std::string>) {
      if (!value.empty()) write_value(value, json);
    } else if constexpr (!is_list<M>) {
      write_value(value, json);
    }
    return json;
  }

 private:
  static M& value_of(void* object, const FieldInfo& field) { return member_at<M>(object, field.offset); }
  static const M& value_of(const void* object, const FieldInfo& field) {
    return member_at<M>(object, field.offset);
  }
};

/// A member that may be absent.
template <class M>
class OptionalAccess final : public FieldAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field,
            ReadContext& context) const override {
    read_value(value_of(object, field).emplace(), node, field, context);
  }
  bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const override {
    return value_of(object, field).has_value() || (field.nullable && was_in_file);
  }
  void write(const void* object, const FieldInfo& field, std::string& json) const override {
    if (const std::optional<M>& value = value_of(object, field)) {
      write_value(*value, json);
    } else {
      json += "null";
    }
  }
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override {
    const std::optional<M>& value = value_of(object, field);
    if (value && !check.values_are_known_good()) check_value(*value, field, check);
  }
  std::string text(const void* object, const FieldInfo& field) const override {
    const std::optional<M>& value = value_of(object, field);
    return value ? value_text(*value) : std::string();
  }
  void set_text(void* object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    std::optional<M> value;
    if (!trimmed(text).empty()) parse_value(value.emplace(), text, field, place);
    value_of(object, field) = std::move(value);
  }
  std::optional<double> number(const void* object, const FieldInfo& field) const override {
    if constexpr (std::is_same_v<M, double>) return value_of(object, field);
    return std::nullopt;
  }
  void set_number(void* object, const FieldInfo& field, std::optional<double> number) const override {
    if constexpr (std::is_same_v<M, double>) {
      if (number) check_number(*number, field);
      value_of(object, field) = number;
    } else {
      set_text(object, field, number ? value_text(*number) : std::string());
    }
  }

 private:
  static std::optional<M>& value_of(void* object, const FieldInfo& field) {
    return member_at<std::optional<M>>(object, field.offset);
  }
  static const std::optional<M>& value_of(const void* object, const FieldInfo& field) {
    return member_at<std::optional<M>>(object, field.offset);
  }
};

template <class Access>
const FieldAccess& one() {
  static const Access access;
  return access;
}

}  // namespace

std::string FieldAccess::default_json(const void*, const FieldInfo&) const {
  return {};
}

// clang-format off
template <> const FieldAccess& access_to<std::string>() { return one<ValueAccess<std::string>>(); }
template <> const FieldAccess& access_to<double>() { return one<ValueAccess<double>>(); }
template <> const FieldAccess& access_to<int>() { return one<ValueAccess<int>>(); }
template <> const FieldAccess& access_to<Point_mm>() { return one<ValueAccess<Point_mm>>(); }
template <> const FieldAccess& access_to<std::vector<std::string>>() { return one<ValueAccess<std::vector<std::string>>>(); }
template <> const FieldAccess& access_to<std::vector<double>>() { return one<ValueAccess<std::vector<double>>>(); }
template <> const FieldAccess& access_to<std::vector<NumberPair>>() { return one<ValueAccess<std::vector<NumberPair>>>(); }
template <> const FieldAccess& access_to<std::vector<TextPair>>() { return one<ValueAccess<std::vector<TextPair>>>(); }
template <> const FieldAccess& access_to<std::vector<Point_mm>>() { return one<ValueAccess<std::vector<Point_mm>>>(); }
template <> const FieldAccess& access_to<std::optional<Point_mm>>() { return one<OptionalAccess<Point_mm>>(); }
template <> const FieldAccess& access_to<std::optional<double>>() { return one<OptionalAccess<double>>(); }
template <> const FieldAccess& access_to<std::optional<bool>>() { return one<OptionalAccess<bool>>(); }
template <> const FieldAccess& access_to<std::optional<Interval>>() { return one<OptionalAccess<Interval>>(); }
// clang-format on

}  // namespace seamtakt
