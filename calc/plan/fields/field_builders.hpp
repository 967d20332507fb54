#pragma once

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "plan/fields/field.hpp"
#include "plan/fields/nested_access.hpp"

/// One call makes one field: key, heading, member, what it may hold, and a sentence of help. The unit is the
/// one that the key's name ends in. This is what a table in fields_*.cpp is written with.
namespace seamtakt::table {

template <class T>
const T& standard_of() {
  static const T standard{};
  return standard;
}

template <class T, class M>
std::size_t offset_of(M T::*member) {
  const T& object = standard_of<T>();
  return static_cast<std::size_t>(reinterpret_cast<const std::byte*>(&(object.*member)) -
                                  reinterpret_cast<const std::byte*>(&object));
}

template <class T>
StructInfo struct_info(const char* name, const char* title) {
  return {name, title, &standard_of<T>(), offset_of(&T::file_keys)};
}

/// A member of type M, of any struct.
template <class M>
struct Member {
  template <class T>
  Member(M T::*member) : offset(offset_of(member)) {}
  std::size_t offset;
};

/// A member that holds objects of a plan's struct: one that may be absent, or a list.
struct NestedMember {
  template <class T, class S>
  NestedMember(std::optional<S> T::*member)
      : offset(offset_of(member)), nested(&fields_of<S>), access(&one<OptionalObject<S>>()) {}
  template <class T, class S>
  NestedMember(std::vector<S> T::*member)
      : offset(offset_of(member)), nested(&fields_of<S>), access(&one<ObjectList<S>>()) {}
  std::size_t offset;
  const FieldTable& (*nested)();
  const NestedAccess* access;

 private:
  template <class Access>
  static const NestedAccess& one() {
    static const Access access;
    return access;
  }
};

/// What all fields have; the caller adds the member and what it may hold.
FieldInfo info(FieldKind kind, const char* key, const char* label, const char* help);

FieldInfo text(const char* key, const char* label, Member<std::string> member, const char* help);

/// The id of an object in its list.
FieldInfo id(Member<std::string> member, const char* help);

FieldInfo date(const char* key, const char* label, Member<std::string> member, const char* help);

FieldInfo choice(const char* key, const char* label, Member<std::string> member,
                 std::initializer_list<std::string_view> choices, const char* help);
FieldInfo choice(const char* key, const char* label, Member<std::string> member,
                 const std::vector<std::string_view>& choices, const char* help);

FieldInfo reference(const char* key, const char* label, Member<std::string> member, IdList list,
                    const char* help);

FieldInfo number(const char* key, const char* label, Member<double> member, Range range, const char* help);
FieldInfo number(const char* key, const char* label, Member<std::optional<double>> member, Range range,
                 const char* help);

FieldInfo integer(const char* key, const char* label, Member<int> member, Range range, const char* help);

FieldInfo boolean(const char* key, const char* label, Member<std::optional<bool>> member, const char* help);

FieldInfo interval(const char* key, const char* label, Member<std::optional<Interval>> member,
                   const char* help);

FieldInfo texts(const char* key, const char* label, Member<std::vector<std::string>> member,
                const char* help);

FieldInfo references(const char* key, const char* label, Member<std::vector<std::string>> member, IdList list,
                     const char* help);

FieldInfo numbers(const char* key, const char* label, Member<std::vector<double>> member, Range range,
                  const char* help);

/// A list of pairs of numbers, or of texts.
FieldInfo pairs(const char* key, const char* label, Member<std::vector<NumberPair>> member, Range range,
                const char* help);
FieldInfo pairs(const char* key, const char* label, Member<std::vector<TextPair>> member, const char* help);

FieldInfo point(const char* key, const char* label, Member<Point_mm> member, const char* help);
FieldInfo point(const char* key, const char* label, Member<std::optional<Point_mm>> member, const char* help);

FieldInfo path(const char* key, const char* label, Member<std::vector<Point_mm>> member, const char* help);

FieldInfo object(const char* key, const char* label, const NestedMember& member, const char* help);

FieldInfo objects(const char* key, const char* label, const NestedMember& member, const char* help);

}  // namespace seamtakt::table
