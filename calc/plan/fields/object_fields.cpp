#include "plan/fields/object_fields.hpp"

#include <span>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/sentences/name_list.hpp"
#include "plan/fields/field_access.hpp"
#include "plan/fields/json_layout.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t npos = FieldTable::npos;

/// Index of a free key; `hint` is its position if nobody has changed the lists in memory.
std::size_t free_key_index(const FileKeys& file_keys, std::string_view key, std::size_t hint) {
  if (hint < file_keys.free.size() && file_keys.free[hint].first == key) return hint;
  for (std::size_t i = 0; i < file_keys.free.size(); ++i)
    if (file_keys.free[i].first == key) return i;
  return npos;
}

/// Puts a key that the file hadn't after the nearest one before it in the table, else at the front.
void insert_in_table_order(std::vector<std::size_t>& order, std::size_t field) {
  auto place = order.begin();
  std::size_t before = npos;
  for (auto at = order.begin(); at != order.end(); ++at) {
    if (*at >= field || (before != npos && *at < before)) continue;
    before = *at;
    place = at + 1;
  }
  order.insert(place, field);
}

/// Collects the keys of an object and finds their fields; where the keys are those of the last object, they
/// are shared with it and needn't be looked for.
class KeyOrderReader {
 public:
  static constexpr std::size_t free_key = FieldTable::npos - 1;

  KeyOrderReader(LastKeys& last, const FieldTable& table)
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
  const FieldTable& table_;
  std::span<const std::string> last_keys_;
  std::vector<std::string> own_;
  std::vector<std::size_t> own_fields_;
  std::size_t same_ = 0;
};

}  // namespace

void check_presence(const FieldTable& table, const KeySet& present, const FieldPath& place) {
  if (table.allows(present)) return;
  for (std::size_t i = 0; i < table.fields.size(); ++i)
    if (table.fields[i].required && !present.test(i))
      place.refuse(Sentence("field.found.no-key"_key, {{"key", quoted(table.fields[i].key)}}),
                   Sentence("field.needed"_key, {{"title", Word::of_table(table.title)},
                                                 {"expected", table.fields[i].expectation()}}));
  for (const KeyGroup& group : table.groups) {
    std::vector<std::string_view> given;
    for (std::string_view key : group.keys)
      if (present.test(table.find(key))) given.push_back(key);
    if (given.size() > 1 || (given.empty() && group.needed))
      place.refuse(given.empty()
                       ? Sentence("field.found.none-of-keys"_key, {{"keys", all_of_names(group.keys)}})
                       : Sentence("field.found.keys"_key, {{"keys", all_of_names(given)}}),
                   Sentence(group.needed ? "field.keys.one-of"_key : "field.keys.at-most-one-of"_key,
                            {{"keys", all_of_names(group.keys)}}));
  }
}

void refuse_key(std::string_view key, const FieldTable& table, const FieldPath& place) {
  std::vector<std::string_view> known;
  for (const FieldInfo& field : table.fields) known.push_back(field.key);
  place.refuse(
      Sentence("field.found.unknown-key"_key, {{"key", quoted(key)}}),
      with_nearest(Sentence("field.known-key"_key, {{"title", Word::of_table(table.title)}}), key, known));
}

KeySet keys_in_file(const FieldTable& table, const FileKeys& file_keys) {
  KeySet present;
  std::size_t expected = 0;
  for (const std::string& key : file_keys.order) {
    const std::size_t at = table.find(key, expected);
    if (at == npos) continue;
    present.set(at);
    expected = at + 1;
  }
  return present;
}

std::vector<std::size_t> key_order(const FieldTable& table, const FileKeys& file_keys,
                                   const KeySet& written) {
  const std::size_t count = table.fields.size();
  KeySet missing = written;
  std::vector<bool> free_missing(file_keys.free.size(), true);
  std::vector<std::size_t> order;
  order.reserve(file_keys.order.size() + 4);
  std::size_t expected = 0, expected_free = 0;
  for (const std::string& key : file_keys.order) {
    if (is_free_key(key)) {
      const std::size_t at = free_key_index(file_keys, key, expected_free);
      if (at == npos || !free_missing[at]) continue;
      expected_free = at + 1;
      order.push_back(count + at);
      free_missing[at] = false;
      continue;
    }
    const std::size_t at = table.find(key, expected);
    if (at == npos || !missing.test(at)) continue;
    order.push_back(at);
    missing.reset(at);
    expected = at + 1;
  }
  for (std::size_t i = 0; i < count; ++i)
    if (missing.test(i)) insert_in_table_order(order, i);
  for (std::size_t i = 0; i < free_missing.size(); ++i)
    if (free_missing[i]) order.push_back(count + i);
  return order;
}

void append_json_key(std::string& json, std::string_view key, bool& is_first) {
  if (!is_first) json += ", ";
  is_first = false;
  append_json_string(json, key);
  json += ": ";
}

void read_object(ObjectRef object, const JsonValue& node, ReadContext& context) {
  const FieldTable& table = object.table();
  if (node.kind() != JsonValue::Kind::object) context.refuse(found_text(node), object_expectation(table));
  FileKeys& file_keys = object.file_keys();
  KeySet present;
  KeyOrderReader order(context.last_keys(table), table);
  node.each_member([&](std::string_view key, const JsonValue& value) {
    FieldPath::Step step(context, key);
    const std::size_t at = order.take(key);
    if (at == KeyOrderReader::free_key) {
      file_keys.free.emplace_back(key, context.source_text(value));
      return;
    }
    if (at == npos) refuse_key(key, table, context);
    present.set(at);
    const FieldInfo& field = table.fields[at];
    if (!field.nullable || value.kind() != JsonValue::Kind::null)
      field.access->read(object.data(), value, field, context);
  });
  file_keys.order = order.done();
  check_presence(table, present, context);
}

void write_object(ConstObjectRef object, std::string& json) {
  const FieldTable& table = object.table();
  const FileKeys& file_keys = object.file_keys();
  const KeySet in_file = keys_in_file(table, file_keys);
  KeySet written;
  for (std::size_t i = 0; i < table.fields.size(); ++i) {
    const FieldInfo& field = table.fields[i];
    written.set(i, field.access->is_written(object.data(), field, in_file.test(i)));
  }
  json += '{';
  bool is_first = true;
  for (std::size_t at : key_order(table, file_keys, written)) {
    if (at < table.fields.size()) {
      append_json_key(json, table.fields[at].key, is_first);
      table.fields[at].access->write(object.data(), table.fields[at], json);
    } else {
      const auto& [key, text] = file_keys.free[at - table.fields.size()];
      append_json_key(json, key, is_first);
      json += text;
    }
  }
  json += '}';
}

void check_object(ConstObjectRef object, ReferenceCheck& check) {
  const FieldTable& table = object.table();
  KeySet present;
  for (std::size_t i = 0; i < table.fields.size(); ++i) {
    const FieldInfo& field = table.fields[i];
    if (check.values_are_known_good() && !table.points_elsewhere(i)) {
      present.set(i, field.required);
      continue;
    }
    present.set(i, field.required || field.access->is_written(object.data(), field, false));
    FieldPath::Step step(check, field.key);
    field.access->check(object.data(), field, check);
  }
  check_presence(table, present, check);
}

}  // namespace seamtakt
