#include "plan/fields/field_builders.hpp"

namespace seamtakt::table {

namespace {

template <class M>
FieldInfo value(FieldKind kind, const char* key, const char* label, Member<M> member, const char* help) {
  FieldInfo field = info(kind, key, label, help);
  field.access = &access_to<M>();
  field.offset = member.offset;
  return field;
}

FieldInfo nested(FieldKind kind, const char* key, const char* label, const NestedMember& member,
                 const char* help) {
  FieldInfo field = info(kind, key, label, help);
  field.access = field.objects = member.access;
  field.nested = member.nested;
  field.offset = member.offset;
  return field;
}

FieldInfo with_range(FieldInfo field, const Range& range) {
  field.range = range;
  return field;
}

FieldInfo with_ids(FieldInfo field, IdList list) {
  field.refers_to = list;
  return field;
}

FieldInfo with_choices(FieldInfo field, std::span<const std::string_view> choices) {
  field.choices = choices;
  return field;
}

}  // namespace

FieldInfo info(FieldKind kind, const char* key, const char* label, const char* help) {
  FieldInfo field;
  field.kind = kind;
  field.key = key;
  field.label = label;
  field.help = help;
  return field;
}

FieldInfo text(const char* key, const char* label, Member<std::string> member, const char* help) {
  return value(FieldKind::text, key, label, member, help);
}

FieldInfo id(Member<std::string> member, const char* help) {
  return text("id", "id", member, help).require();
}

FieldInfo date(const char* key, const char* label, Member<std::string> member, const char* help) {
  return value(FieldKind::date, key, label, member, help);
}

FieldInfo choice(const char* key, const char* label, Member<std::string> member,
                 std::initializer_list<std::string_view> choices, const char* help) {
  return with_choices(value(FieldKind::choice, key, label, member, help), choices);
}

FieldInfo choice(const char* key, const char* label, Member<std::string> member,
                 const std::vector<std::string_view>& choices, const char* help) {
  return with_choices(value(FieldKind::choice, key, label, member, help), choices);
}

FieldInfo reference(const char* key, const char* label, Member<std::string> member, IdList list,
                    const char* help) {
  return with_ids(value(FieldKind::reference, key, label, member, help), list);
}

FieldInfo number(const char* key, const char* label, Member<double> member, Range range, const char* help) {
  return with_range(value(FieldKind::number, key, label, member, help), range);
}

FieldInfo number(const char* key, const char* label, Member<std::optional<double>> member, Range range,
                 const char* help) {
  return with_range(value(FieldKind::number, key, label, member, help), range);
}

FieldInfo integer(const char* key, const char* label, Member<int> member, Range range, const char* help) {
  return with_range(value(FieldKind::integer, key, label, member, help), range);
}

FieldInfo boolean(const char* key, const char* label, Member<std::optional<bool>> member, const char* help) {
  return value(FieldKind::boolean, key, label, member, help);
}

FieldInfo interval(const char* key, const char* label, Member<std::optional<Interval>> member,
                   const char* help) {
  return value(FieldKind::interval, key, label, member, help);
}

FieldInfo texts(const char* key, const char* label, Member<std::vector<std::string>> member,
                const char* help) {
  return value(FieldKind::text_list, key, label, member, help);
}

FieldInfo references(const char* key, const char* label, Member<std::vector<std::string>> member, IdList list,
                     const char* help) {
  return with_ids(value(FieldKind::reference_list, key, label, member, help), list);
}

FieldInfo numbers(const char* key, const char* label, Member<std::vector<double>> member, Range range,
                  const char* help) {
  return with_range(value(FieldKind::number_list, key, label, member, help), range);
}

FieldInfo pairs(const char* key, const char* label, Member<std::vector<NumberPair>> member, Range range,
                const char* help) {
  return with_range(value(FieldKind::number_pairs, key, label, member, help), range);
}

FieldInfo pairs(const char* key, const char* label, Member<std::vector<TextPair>> member, const char* help) {
  return value(FieldKind::text_pairs, key, label, member, help);
}

FieldInfo point(const char* key, const char* label, Member<std::optional<Point_mm>> member,
                const char* help) {
  return value(FieldKind::point, key, label, member, help);
}

FieldInfo point(const char* key, const char* label, Member<Point_mm> member, const char* help) {
  return value(FieldKind::point, key, label, member, help);
}

FieldInfo path(const char* key, const char* label, Member<std::vector<Point_mm>> member, const char* help) {
  return value(FieldKind::path, key, label, member, help);
}

FieldInfo object(const char* key, const char* label, const NestedMember& member, const char* help) {
  return nested(FieldKind::object, key, label, member, help);
}

FieldInfo objects(const char* key, const char* label, const NestedMember& member, const char* help) {
  return nested(FieldKind::object_list, key, label, member, help);
}

}  // namespace seamtakt::table
