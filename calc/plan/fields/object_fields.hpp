#pragma once

#include <span>

#include "base/json/json_document.hpp"
#include "plan/fields/field.hpp"
#include "plan/fields/reference_check.hpp"

/// Reading, writing and checking a whole struct by its table.
namespace seamtakt {

/// Refuses a missing required key, or a group of keys of which not just one is there.
void check_presence(const TableInfo& table, const KeySet& present, const FieldPath& place);

[[noreturn]] void refuse_key(std::string_view key, const TableInfo& table, const FieldPath& place);

/// The order in which an object's keys are written: the file's order, and each key that the file hadn't after
/// the one that precedes it in the table. `written` tells which of the table's keys are to be written.
/// Indexes below the table's size are fields; others are its size plus an index into file_keys.free.
std::vector<std::size_t> key_order(const TableInfo& table, const FileKeys& file_keys, const KeySet& written);

/// Which of the table's keys the file had.
KeySet keys_in_file(const TableInfo& table, const FileKeys& file_keys);

/// Appends `"key": `, with a comma before it where it isn't the first one.
void append_json_key(std::string& json, std::string_view key, bool& is_first);

/// Gathers the keys of an object and finds their fields; where the keys are those of the last object, they
/// are shared with it and needn't be looked for.
class KeyOrderReader {
 public:
  static constexpr std::size_t free_key = TableInfo::npos - 1;

  KeyOrderReader(LastKeys& last, const TableInfo& table)
      : last_(last), table_(table), last_keys_(last.order.keys()) {}

  /// Index of the key's field; free_key where it is a free one, npos where it is unknown.
  std::size_t take(std::string_view key) {
    if (own_.empty() && same_ < last_keys_.size() && last_keys_[same_] == key) return last_.fields[same_++];
    if (own_.empty()) begin_own();
    own_.emplace_back(key);
    const std::size_t hint = own_fields_.empty() ? 0 : own_fields_.back() + 1;
    own_fields_.push_back(is_free_key(key) ? free_key : table_.find(key, hint));
    return own_fields_.back();
  }
  const KeyOrder& done() {
    if (own_.empty() && same_ < last_.fields.size()) begin_own();
    if (same_ == last_.fields.size() && own_.empty()) return last_.order;
    last_ = {KeyOrder(std::move(own_)), std::move(own_fields_)};
    return last_.order;
  }

 private:
  void begin_own() {
    const auto count = static_cast<std::ptrdiff_t>(same_);
    own_.assign(last_.order.begin(), last_.order.begin() + count);
    own_fields_.assign(last_.fields.begin(), last_.fields.begin() + count);
  }

  LastKeys& last_;
  const TableInfo& table_;
  std::span<const std::string> last_keys_;
  std::vector<std::string> own_;
  std::vector<std::size_t> own_fields_;
  std::size_t same_ = 0;
};

template <class T>
void read_object(T& object, const JsonValue& node, ReadContext& context) {
  const FieldTable<T>& table = fields_of<T>();
  if (node.kind() != JsonValue::Kind::object)
    context.refuse(found_text(node), std::string("an object (") + table.title + ")");
  KeySet present;
  KeyOrderReader order(context.last_keys(table), table);
  node.each_member([&](std::string_view key, const JsonValue& value) {
    FieldPath::Step step(context, key);
    const std::size_t at = order.take(key);
    if (at == KeyOrderReader::free_key) {
      object.file_keys.free.emplace_back(key, context.source_text(value));
      return;
    }
    if (at == TableInfo::npos) refuse_key(key, table, context);
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
void check_object(const T& object, ReferenceCheck& check) {
  const FieldTable<T>& table = fields_of<T>();
  KeySet present;
  for (std::size_t i = 0; i < table.fields.size(); ++i) {
    const Field<T>& field = table.fields[i];
    if (check.values_are_known_good() && !table.points_elsewhere(i)) {
      present.set(i, field.required);
      continue;
    }
    present.set(i, field.required || field.is_written(object, false));
    FieldPath::Step step(check, field.key);
    field.check(object, check);
  }
  check_presence(table, present, check);
}

}  // namespace seamtakt
