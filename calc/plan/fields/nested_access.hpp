#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "plan/fields/field_access.hpp"

namespace seamtakt {

/// Objects that are one after another in memory; the first of them, their number, and bytes from one to the
/// next.
struct Elements {
  const void* first = nullptr;
  std::size_t count = 0, size = 0;
};

/// How nested objects of a plan's struct are reached: an object that may be absent, or a list of objects.
/// They can be shown as a count, not typed.
class NestedAccess : public FieldAccess {
 public:
  /// Those that are there.
  virtual Elements elements(const void* object, const FieldInfo& field) const = 0;
  /// Leaves `count` objects, each as if nothing was set; an object that may be absent takes 0 or 1.
  virtual void make(void* object, const FieldInfo& field, std::size_t count) const = 0;
  /// Appends a copy of the element, which is there, and removes one. Of a list only.
  virtual void append_copy(void* object, const FieldInfo& field, std::size_t index) const = 0;
  virtual void erase(void* object, const FieldInfo& field, std::size_t index) const = 0;

  /// The element at `index`, which is less than their count.
  static ConstObjectRef element(const Elements& elements, const FieldInfo& field, std::size_t index) {
    return {field.nested(), static_cast<const std::byte*>(elements.first) + index * elements.size};
  }
  /// The same, of an object that may be changed.
  ObjectRef element_of(void* object, const FieldInfo& field, std::size_t index) const {
    const ConstObjectRef found = element(elements(object, field), field, index);
    return {found.table(), const_cast<void*>(found.data())};  // neither `object` nor its content is constant
  }

  void set_text(void* object, const FieldInfo& field, std::string_view text) const override;
  std::optional<double> number(const void* object, const FieldInfo& field) const override;
  void set_number(void* object, const FieldInfo& field, std::optional<double> number) const override;
};

/// The part for an optional object that doesn't depend on its struct.
class ObjectAccess : public NestedAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const override;
  bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const override;
  void write(const void* object, const FieldInfo& field, std::string& json) const override;
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override;
  std::string text(const void* object, const FieldInfo& field) const override;
  void append_copy(void* object, const FieldInfo& field, std::size_t index) const override;
  void erase(void* object, const FieldInfo& field, std::size_t index) const override;
};

/// The part for a list of objects that doesn't depend on their struct.
class ObjectListAccess : public NestedAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const override;
  bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const override;
  void write(const void* object, const FieldInfo& field, std::string& json) const override;
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override;
  std::string text(const void* object, const FieldInfo& field) const override;
};

template <class S>
class OptionalObject final : public ObjectAccess {
 public:
  Elements elements(const void* object, const FieldInfo& field) const override {
    const auto& value = member_at<std::optional<S>>(object, field.offset);
    return {value ? &*value : nullptr, value ? 1u : 0u, sizeof(S)};
  }
  void make(void* object, const FieldInfo& field, std::size_t count) const override {
    auto& value = member_at<std::optional<S>>(object, field.offset);
    value.reset();
    if (count > 0) value.emplace();
  }
};

template <class S>
class ObjectList final : public ObjectListAccess {
 public:
  Elements elements(const void* object, const FieldInfo& field) const override {
    const auto& list = member_at<std::vector<S>>(object, field.offset);
    return {list.data(), list.size(), sizeof(S)};
  }
  void make(void* object, const FieldInfo& field, std::size_t count) const override {
    member_at<std::vector<S>>(object, field.offset) = std::vector<S>(count);
  }
  void append_copy(void* object, const FieldInfo& field, std::size_t index) const override {
    auto& list = member_at<std::vector<S>>(object, field.offset);
    list.push_back(list[index]);
  }
  void erase(void* object, const FieldInfo& field, std::size_t index) const override {
    auto& list = member_at<std::vector<S>>(object, field.offset);
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(index));
  }
};

}  // namespace seamtakt
