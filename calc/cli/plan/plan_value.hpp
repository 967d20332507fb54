#pragma once

#include <string>
#include <string_view>

#include "base/json/json_writer.hpp"

namespace seamtakt::cli {

/// A member that is a value of a plan, given as its JSON text; null where it is absent (empty).
inline void plan_value_member(JsonWriter& json, std::string_view key, const std::string& value) {
  json.key(key);
  if (value.empty())
    json.null();
  else
    json.raw(value);
}

}  // namespace seamtakt::cli
