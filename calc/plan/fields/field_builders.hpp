#pragma once

#include <utility>

#include "base/units/units.hpp"
#include "plan/fields/field_access.hpp"

/// One call makes one field: key, heading, member, what it may hold, and a sentence of help. The unit is the
/// one that the key's name ends in. This is what a table in fields_*.cpp is written with.
namespace seamtakt::table {

inline FieldInfo info(FieldKind kind, const char* key, const char* label, const char* help) {
  FieldInfo field;
  field.kind = kind;
  field.key = key;
  field.label = label;
  field.help = help;
  if (const Unit* unit = unit_of_key(key)) field.unit = unit->name;
  return field;
}

template <class T>
Field<T> text(const char* key, const char* label, std::string T::*member, const char* help) {
  return value_field(info(FieldKind::text, key, label, help), member);
}

/// The id of an object in its list.
template <class T>
Field<T> id(std::string T::*member, const char* help) {
  return text("id", "id", member, help).require();
}

template <class T>
Field<T> date(const char* key, const char* label, std::string T::*member, const char* help) {
  return value_field(info(FieldKind::date, key, label, help), member);
}

template <class T>
Field<T> choice(const char* key, const char* label, std::string T::*member,
                std::vector<std::string_view> choices, const char* help) {
  FieldInfo field = info(FieldKind::choice, key, label, help);
  field.choices = std::move(choices);
  return value_field(std::move(field), member);
}

template <class T>
Field<T> reference(const char* key, const char* label, std::string T::*member, IdList list,
                   const char* help) {
  FieldInfo field = info(FieldKind::reference, key, label, help);
  field.refers_to = list;
  return value_field(std::move(field), member);
}

/// A number (double or optional<double>).
template <class T, class M>
Field<T> number(const char* key, const char* label, M T::*member, Range range, const char* help) {
  FieldInfo field = info(FieldKind::number, key, label, help);
  field.range = range;
  return value_field(std::move(field), member);
}

template <class T>
Field<T> integer(const char* key, const char* label, int T::*member, Range range, const char* help) {
  FieldInfo field = info(FieldKind::integer, key, label, help);
  field.range = range;
  return value_field(std::move(field), member);
}

template <class T>
Field<T> boolean(const char* key, const char* label, std::optional<bool> T::*member, const char* help) {
  return value_field(info(FieldKind::boolean, key, label, help), member);
}

template <class T>
Field<T> interval(const char* key, const char* label, std::optional<Interval> T::*member, const char* help) {
  return value_field(info(FieldKind::interval, key, label, help), member);
}

template <class T>
Field<T> texts(const char* key, const char* label, std::vector<std::string> T::*member, const char* help) {
  return value_field(info(FieldKind::text_list, key, label, help), member);
}

template <class T>
Field<T> references(const char* key, const char* label, std::vector<std::string> T::*member, IdList list,
                    const char* help) {
  FieldInfo field = info(FieldKind::reference_list, key, label, help);
  field.refers_to = list;
  return value_field(std::move(field), member);
}

template <class T>
Field<T> numbers(const char* key, const char* label, std::vector<double> T::*member, Range range,
                 const char* help) {
  FieldInfo field = info(FieldKind::number_list, key, label, help);
  field.range = range;
  return value_field(std::move(field), member);
}

template <class T>
Field<T> point(const char* key, const char* label, Point_mm T::*member, const char* help) {
  return value_field(info(FieldKind::point, key, label, help), member);
}

template <class T>
Field<T> path(const char* key, const char* label, std::vector<Point_mm> T::*member, const char* help) {
  return value_field(info(FieldKind::path, key, label, help), member);
}

template <class S>
const TableInfo& table_of() {
  return fields_of<S>();
}

template <class T, class S>
Field<T> object(const char* key, const char* label, std::optional<S> T::*member, const char* help) {
  FieldInfo field = info(FieldKind::object, key, label, help);
  field.nested = &table_of<S>;
  return {std::move(field), std::make_shared<ObjectAccess<T, S>>(member)};
}

template <class T, class S>
Field<T> objects(const char* key, const char* label, std::vector<S> T::*member, const char* help) {
  FieldInfo field = info(FieldKind::object_list, key, label, help);
  field.nested = &table_of<S>;
  return {std::move(field), std::make_shared<ObjectListAccess<T, S>>(member)};
}

}  // namespace seamtakt::table
