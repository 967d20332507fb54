#pragma once

#include "base/json_text.hpp"
#include "plan/field.hpp"
#include "plan/plan_check.hpp"

/// Reading, writing and checking a whole struct by its table.
namespace seamtakt {

/// Refuses a missing required key, or a group of keys of which not just one is there.
void check_presence(const TableInfo& table, const KeySet& present, const FieldPlace& place);

[[noreturn]] void refuse_key(std::string_view key, const TableInfo& table, const FieldPlace& place);

/// The order in which an object's keys are written: the file's order, and each key that the file hadn't after
/// the one that precedes it in the table. `written` tells which of the table's keys are to be written.
/// Indexes below the table's size are fields; others are its size plus an index into file_keys.free.
std::vector<std::size_t> key_order(const TableInfo& table, const FileKeys& file_keys, const KeySet& written);

/// Which of the table's keys the file had.
KeySet keys_in_file(const TableInfo& table, const FileKeys& file_keys);

/// Appends `"key": `, with a comma before it where it isn't the first one.
void append_json_key(std::string& json, std::string_view key, bool& is_first);

/// Gathers the keys of an object; where they are those of the last one, they are shared with it.
class KeyOrderReader {
 public:
  explicit KeyOrderReader(KeyOrder& last) : last_(last) {}

  void take(std::string_view key) {
    if (is_same_ && same_ < last_.size() && last_.keys()[same_] == key) {
      ++same_;
    } else {
      if (is_same_) begin_own();
      own_.emplace_back(key);
    }
  }
  const KeyOrder& done() {
    if (is_same_ && same_ < last_.size()) begin_own();
    if (!is_same_) last_ = KeyOrder(std::move(own_));
    return last_;
  }

 private:
  void begin_own() {
    is_same_ = false;
    own_.assign(last_.begin(), last_.begin() + static_cast<std::ptrdiff_t>(same_));
  }

  KeyOrder& last_;
  std::vector<std::string> own_;
  std::size_t same_ = 0;
  bool is_same_ = true;
};

template <class T>
void read_object(T& object, const JsonValue& node, ReadContext& context) {
  const FieldTable<T>& table = fields_of<T>();
  if (node.kind() != JsonValue::Kind::object)
    context.refuse(found_text(node), std::string("an object (") + table.title + ")");
  KeySet present;
  std::size_t expected = 0;
  KeyOrderReader order(context.last_order(table));
  node.each_member([&](std::string_view key, const JsonValue& value) {
    FieldPlace::Step step(context, key);
    order.take(key);
    if (is_free_key(key)) {
      object.file_keys.free.emplace_back(key, context.source_text(value));
      return;
    }
    const std::size_t at = table.find(key, expected);
    if (at == TableInfo::npos) refuse_key(key, table, context);
    expected = at + 1;
    present.set(at);
    const Field<T>& field = table.fields[at];
    if (!field.nullable || value.kind() != JsonValue::Kind::null) field.read(object, value, context);
  });
  object.file_keys.order = order.done();
  check_presence(table, present, context);
}

template <class T>
void write_object(const T& object, std::string& json) {
  const FieldTable<T>& table = fields_of<T>();
  const KeySet in_file = keys_in_file(table, object.file_keys);
  KeySet written;
  for (std::size_t i = 0; i < table.fields.size(); ++i)
    written.set(i, table.fields[i].is_written(object, in_file.test(i)));
  json += '{';
  bool is_first = true;
  for (std::size_t at : key_order(table, object.file_keys, written)) {
    if (at < table.fields.size()) {
      append_json_key(json, table.fields[at].key, is_first);
      table.fields[at].write(object, json);
    } else {
      const auto& [key, text] = object.file_keys.free[at - table.fields.size()];
      append_json_key(json, key, is_first);
      json += text;
    }
  }
  json += '}';
}

template <class T>
void check_object(const T& object, PlanCheck& check) {
  const FieldTable<T>& table = fields_of<T>();
  KeySet present;
  for (std::size_t i = 0; i < table.fields.size(); ++i) {
    const Field<T>& field = table.fields[i];
    present.set(i, field.required || field.is_written(object, false));
    FieldPlace::Step step(check, field.key);
    field.check(object, check);
  }
  check_presence(table, present, check);
}

}  // namespace seamtakt
