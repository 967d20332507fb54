#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json/json_document.hpp"
#include "plan/fields/field.hpp"

/// Reading, writing and checking a whole struct by its table.
namespace seamtakt {

class ReferenceCheck;

/// Refuses a missing required key, or a group of keys of which not just one is there.
void check_presence(const FieldTable& table, const KeySet& present, const FieldPath& place);

[[noreturn]] void refuse_key(std::string_view key, const FieldTable& table, const FieldPath& place);

/// The order in which an object's keys are written: the file's order, and each key that the file hadn't after
/// the one that precedes it in the table. `written` tells which of the table's keys are to be written.
/// Indexes below the table's size are fields; others are its size plus an index into file_keys.free.
std::vector<std::size_t> key_order(const FieldTable& table, const FileKeys& file_keys, const KeySet& written);

/// Which of the table's keys the file had.
KeySet keys_in_file(const FieldTable& table, const FileKeys& file_keys);

/// Appends `"key": `, with a comma before it where it isn't the first one.
void append_json_key(std::string& json, std::string_view key, bool& is_first);

/// Reads an object, in which nothing was set before, by its table. InputError where it can't be used.
void read_object(ObjectRef object, const JsonValue& node, ReadContext& context);

/// Appends an object as JSON text.
void write_object(ConstObjectRef object, std::string& json);

/// Checks an object's fields and key groups, and all within it.
void check_object(ConstObjectRef object, ReferenceCheck& check);

}  // namespace seamtakt
