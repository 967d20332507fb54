#pragma once

#include "plan/fields/field_builders.hpp"

namespace seamtakt::table {

/// A stage's time: one of the words, or seconds (Stage::time_of and Stage::time_s). In the table of Stage
/// only.
FieldInfo stage_time(const char* key, const char* label, std::initializer_list<std::string_view> words,
                     const char* help);

}  // namespace seamtakt::table
