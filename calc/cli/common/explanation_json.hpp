#pragma once

#include "base/json/json_writer.hpp"
#include "formula/note.hpp"

namespace seamtakt::cli {

/// An explanation as an element of the open array: key, value, unit, formula, numbers, symbols, source,
/// `validation` in words and `measured` in numbers (null where nothing was measured), and where the value has
/// an uncertainty its `budget`: U and u, `first_order` or not, degrees of freedom, inputs. Degrees of freedom
/// are a number, "infinite", or null where they aren't known.
void write_explanation(JsonWriter& json, const Explanation& explanation);

}  // namespace seamtakt::cli
