#pragma once

#include "plan/fields/field.hpp"

namespace seamtakt::table {

/// A stage's time: one of the words, or seconds (Stage::time_of and Stage::time_s).
Field<Stage> stage_time(const char* key, const char* label, std::vector<std::string_view> words,
                        const char* help);

}  // namespace seamtakt::table
