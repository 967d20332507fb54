#include "plan/fields/object_fields.hpp"

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "plan/fields/json_layout.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t npos = TableInfo::npos;

/// Index of a free key; `hint` is where it stands when nobody has changed the lists in memory.
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

}  // namespace

void check_presence(const TableInfo& table, const KeySet& present, const FieldPath& place) {
  if (table.allows(present)) return;
  for (std::size_t i = 0; i < table.infos.size(); ++i)
    if (table.infos[i]->required && !present.test(i))
      place.refuse("no key " + quoted(table.infos[i]->key),
                   std::string(table.title) + " to have it: " + table.infos[i]->expectation());
  for (const KeyGroup& group : table.groups) {
    std::vector<std::string_view> given;
    for (std::string_view key : group.keys)
      if (present.test(table.find(key))) given.push_back(key);
    if (given.size() > 1 || (given.empty() && group.needed))
      place.refuse(given.empty() ? "none of the keys " + listed(group.keys) : "the keys " + listed(given),
                   std::string(group.needed ? "one of " : "at most one of ") + listed(group.keys));
  }
}

void refuse_key(std::string_view key, const TableInfo& table, const FieldPath& place) {
  std::vector<std::string_view> known;
  for (const FieldInfo* field : table.infos) known.push_back(field->key);
  place.refuse(
      "the unknown key " + quoted(key),
      std::string("a key of ") + table.title + " or one that begins with x_" + nearest_hint(key, known));
}

KeySet keys_in_file(const TableInfo& table, const FileKeys& file_keys) {
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

std::vector<std::size_t> key_order(const TableInfo& table, const FileKeys& file_keys, const KeySet& written) {
  const std::size_t count = table.infos.size();
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

}  // namespace seamtakt
