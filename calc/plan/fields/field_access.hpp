#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "plan/fields/field.hpp"

namespace seamtakt {

class JsonValue;
class ReferenceCheck;

/// How a field's value is reached and handled: one handler for each type of value, whatever struct it is a
/// member of. `object` is of the field's struct.
class FieldAccess {
 public:
  virtual ~FieldAccess() = default;
  /// Reads and checks the value of the key at which `context` is. InputError where it can't be used.
  virtual void read(void* object, const JsonValue& node, const FieldInfo& field,
                    ReadContext& context) const = 0;
  /// Whether saving writes the key: it was in the file, or its value isn't the one that an absent key has.
  virtual bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const = 0;
  /// Appends the value as JSON text.
  virtual void write(const void* object, const FieldInfo& field, std::string& json) const = 0;
  /// Checks type-independent rules on a value in memory: range, choices, references. Throws InputError.
  virtual void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const = 0;
  virtual std::string text(const void* object, const FieldInfo& field) const = 0;
  virtual void set_text(void* object, const FieldInfo& field, std::string_view text) const = 0;
  virtual std::optional<double> number(const void* object, const FieldInfo& field) const = 0;
  virtual void set_number(void* object, const FieldInfo& field, std::optional<double> number) const = 0;
  /// JSON text of the value that `object` has; empty where that says nothing.
  virtual std::string default_json(const void* object, const FieldInfo& field) const;
};

/// The handler of values of type M: std::string, double, int, Point_mm, lists of texts, numbers, pairs and
/// points, and std::optional of double, bool, Point_mm and Interval.
template <class M>
const FieldAccess& access_to();

// clang-format off
template <> const FieldAccess& access_to<std::string>();
template <> const FieldAccess& access_to<double>();
template <> const FieldAccess& access_to<int>();
template <> const FieldAccess& access_to<Point_mm>();
template <> const FieldAccess& access_to<std::vector<std::string>>();
template <> const FieldAccess& access_to<std::vector<double>>();
template <> const FieldAccess& access_to<std::vector<NumberPair>>();
template <> const FieldAccess& access_to<std::vector<TextPair>>();
template <> const FieldAccess& access_to<std::vector<Point_mm>>();
template <> const FieldAccess& access_to<std::optional<Point_mm>>();
template <> const FieldAccess& access_to<std::optional<double>>();
template <> const FieldAccess& access_to<std::optional<bool>>();
template <> const FieldAccess& access_to<std::optional<Interval>>();
// clang-format on

/// The member at `offset` of an object.
template <class M>
M& member_at(void* object, std::size_t offset) {
  return *reinterpret_cast<M*>(static_cast<std::byte*>(object) + offset);
}
template <class M>
const M& member_at(const void* object, std::size_t offset) {
  return *reinterpret_cast<const M*>(static_cast<const std::byte*>(object) + offset);
}

}  // namespace seamtakt
