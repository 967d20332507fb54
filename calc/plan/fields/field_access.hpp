#pragma once

#include <cmath>
#include <type_traits>
#include <utility>

#include "base/parallel/thread_pool.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/reference_check.hpp"

/// How the fields' values are reached, and the one-line constructors that the tables in fields_*.cpp use.
namespace seamtakt {

template <class T>
const T& standard_of() {
  static const T standard{};
  return standard;
}

template <class M>
struct is_optional : std::false_type {};
template <class M>
struct is_optional<std::optional<M>> : std::true_type {};

template <class M>
constexpr bool is_list = false;
template <class E>
constexpr bool is_list<std::vector<E>> = true;

inline void check_references(const std::string& id, const FieldInfo& field, ReferenceCheck& check) {
  if (!id.empty()) check.reference(id, field);
}

inline void check_references(const std::vector<std::string>& ids, const FieldInfo& field,
                             ReferenceCheck& check) {
  for (std::size_t i = 0; i < ids.size(); ++i) {
    FieldPath::Step step(check, i);
    check.reference(ids[i], field);
  }
}

/// A member that always has a value, though it may be one that stands for "absent" (an empty text).
template <class T, class M>
class ValueAccess : public FieldAccess<T> {
 public:
  explicit ValueAccess(M T::*member) : member_(member) {}

  void read(T& object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const override {
    read_value(object.*member_, node, field, context);
  }
  bool is_written(const T& object, const FieldInfo& field, bool was_in_file) const override {
    return seamtakt::is_written(object.*member_, standard_of<T>().*member_, field, was_in_file);
  }
  void write(const T& object, const FieldInfo&, std::string& json) const override {
    write_value(object.*member_, json);
  }
  void check(const T& object, const FieldInfo& field, ReferenceCheck& check) const override {
    if (!check.values_are_known_good()) check_value(object.*member_, field, check);
    if constexpr (std::is_same_v<M, std::string> || std::is_same_v<M, std::vector<std::string>>)
      if (field.refers_to != IdList::none) check_references(object.*member_, field, check);
  }
  std::string text(const T& object, const FieldInfo&) const override { return value_text(object.*member_); }
  void set_text(T& object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    M value = standard_of<T>().*member_;
    if (trimmed(text).empty()) {
      if (field.required && !(is_list<M> && field.least == 0)) place.refuse("nothing", field.expectation());
    } else {
      parse_value(value, text, field, place);
    }
    object.*member_ = std::move(value);
  }
  std::optional<double> number(const T& object) const override {
    if constexpr (std::is_arithmetic_v<M>) return static_cast<double>(object.*member_);
    return std::nullopt;
  }
  void set_number(T& object, const FieldInfo& field, std::optional<double> number) const override {
    set_text(object, field, number ? value_text(*number) : std::string());
  }

 private:
  M T::*member_;
};

/// A member that may be absent.
template <class T, class M>
class OptionalAccess : public FieldAccess<T> {
 public:
  explicit OptionalAccess(std::optional<M> T::*member) : member_(member) {}

  void read(T& object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const override {
    read_value((object.*member_).emplace(), node, field, context);
  }
  bool is_written(const T& object, const FieldInfo& field, bool was_in_file) const override {
    return (object.*member_).has_value() || (field.nullable && was_in_file);
  }
  void write(const T& object, const FieldInfo&, std::string& json) const override {
    if (object.*member_) {
      write_value(*(object.*member_), json);
    } else {
      json += "null";
    }
  }
  void check(const T& object, const FieldInfo& field, ReferenceCheck& check) const override {
    if (object.*member_ && !check.values_are_known_good()) check_value(*(object.*member_), field, check);
  }
  std::string text(const T& object, const FieldInfo&) const override {
    return object.*member_ ? value_text(*(object.*member_)) : std::string();
  }
  void set_text(T& object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    std::optional<M> value;
    if (!trimmed(text).empty()) parse_value(value.emplace(), text, field, place);
    object.*member_ = std::move(value);
  }
  std::optional<double> number(const T& object) const override {
    if constexpr (std::is_arithmetic_v<M> && !std::is_same_v<M, bool>)
      if (object.*member_) return static_cast<double>(*(object.*member_));
    return std::nullopt;
  }
  void set_number(T& object, const FieldInfo& field, std::optional<double> number) const override {
    set_text(object, field, number ? value_text(*number) : std::string());
  }

 private:
  std::optional<M> T::*member_;
};

/// What objects and lists of objects have in common: they can be shown as a count, not typed.
template <class T>
class NestedAccess : public FieldAccess<T> {
 public:
  void set_text(T&, const FieldInfo& field, std::string_view text) const override {
    FieldPath(field.key).refuse(quoted(text), "its fields one by one");
  }
  std::optional<double> number(const T&) const override { return std::nullopt; }
  void set_number(T&, const FieldInfo& field, std::optional<double>) const override {
    FieldPath(field.key).refuse("a number", "its fields one by one");
  }
};

template <class T, class S>
class ObjectAccess : public NestedAccess<T> {
 public:
  explicit ObjectAccess(std::optional<S> T::*member) : member_(member) {}

  void read(T& object, const JsonValue& node, const FieldInfo&, ReadContext& context) const override {
    read_object((object.*member_).emplace(), node, context);
  }
  bool is_written(const T& object, const FieldInfo&, bool) const override {
    return (object.*member_).has_value();
  }
  void write(const T& object, const FieldInfo&, std::string& json) const override {
    write_object(*(object.*member_), json);
  }
  void check(const T& object, const FieldInfo&, ReferenceCheck& check) const override {
    if (object.*member_) check_object(*(object.*member_), check);
  }
  std::string text(const T& object, const FieldInfo&) const override { return object.*member_ ? "1" : ""; }

 private:
  std::optional<S> T::*member_;
};

template <class T, class S>
class ObjectListAccess : public NestedAccess<T> {
 public:
  explicit ObjectListAccess(std::vector<S> T::*member) : member_(member) {}

  void read(T& object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const override {
    require_kind(node, node.kind() == JsonValue::Kind::array, field, context);
    std::vector<S>& list = object.*member_;
    const std::vector<JsonValue> elements = node.elements();
    list.clear();
    list.resize(elements.size());
    share_out(elements.size(), context, [&](std::size_t i, ReadContext& place) {
      FieldPath::Step step(place, i);
      read_object(list[i], elements[i], place);
    });
  }
  bool is_written(const T& object, const FieldInfo& field, bool was_in_file) const override {
    return field.required || was_in_file || !(object.*member_).empty();
  }
  void write(const T& object, const FieldInfo&, std::string& json) const override {
    json += '[';
    bool first = true;
    for (const S& item : object.*member_) {
      if (!first) json += ", ";
      first = false;
      write_object(item, json);
    }
    json += ']';
  }
  void check(const T& object, const FieldInfo&, ReferenceCheck& check) const override {
    const std::vector<S>& list = object.*member_;
    const std::size_t duplicate = first_duplicate(list);
    share_out(list.size(), check, [&](std::size_t i, ReferenceCheck& place) {
      FieldPath::Step step(place, i);
      if constexpr (requires { list[i].id; })
        if (i == duplicate) refuse_duplicate(list[i].id, place);
      place.enter(list[i]);
      check_object(list[i], place);
    });
  }
  std::string text(const T& object, const FieldInfo&) const override {
    return std::to_string((object.*member_).size());
  }

 private:
  /// Calls work(i, place) for each element. A long list is shared out to the pool's threads, each with a
  /// place of its own; the first element that is refused is the one that is reported, as in a short list.
  template <class Place, class Work>
  static void share_out(std::size_t count, Place& place, const Work& work) {
    constexpr std::size_t elements_a_piece = 32;
    if (count <= elements_a_piece || ThreadPool::is_inside_piece()) {
      for (std::size_t i = 0; i < count; ++i) work(i, place);
      return;
    }
    ThreadPool::shared().parallel_for(count, elements_a_piece, [&](std::size_t begin, std::size_t end) {
      Place own(place);
      for (std::size_t i = begin; i < end; ++i) work(i, own);
    });
  }

  /// The first element whose id an earlier one has; the list's size where there is none.
  static std::size_t first_duplicate(const std::vector<S>& list) {
    if constexpr (requires(S item) { item.id; }) {
      IdSet ids;
      ids.reserve(list.size());
      for (std::size_t i = 0; i < list.size(); ++i)
        if (!ids.add(list[i].id)) return i;
    }
    return list.size();
  }

  static void refuse_duplicate(const std::string& id, FieldPath& place) {
    FieldPath::Step step(place, "id");
    place.refuse("the id " + quoted(id) + " a second time", "each id once in a list");
  }

  std::vector<S> T::*member_;
};

/// JSON text of the value that an absent key has; empty where that says nothing.
template <class M>
std::string default_json(const M& standard) {
  std::string json;
  if constexpr (std::is_same_v<M, std::string>) {
    if (!standard.empty()) write_value(standard, json);
  } else if constexpr (std::is_arithmetic_v<M> || std::is_same_v<M, Point_mm>) {
    write_value(standard, json);
  }
  return json;
}

template <class T, class M>
Field<T> value_field(FieldInfo info, M T::*member) {
  if constexpr (is_optional<M>::value) {
    return {std::move(info), std::make_shared<OptionalAccess<T, typename M::value_type>>(member)};
  } else {
    info.default_json = default_json(standard_of<T>().*member);
    return {std::move(info), std::make_shared<ValueAccess<T, M>>(member)};
  }
}

}  // namespace seamtakt
