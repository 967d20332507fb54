#pragma once

#include <string>
#include <string_view>

namespace seamtakt::cli {

/// A JSON Schema, written from a shape such as "{point: text, at?: [number], hints: [@hint], note: text?}":
///   number whole text truth any    a value of that kind
///   measure                        a number, a list of numbers, or null: what a result in a unit is
///   scalar                         a number, a text, a truth, a list or null
///   [X]  <X>  {key: X, key?: X}    a list, an object of any keys, an object of these keys (with ?: or
///   without)
///   @name                          what the schema defines under that name
///   "word"                         that word alone
///   X?                             X or null
///   X | Y                          one of them
/// std::logic_error where the shape can't be read: it is a text of the program.
std::string schema_of_shape(std::string_view shape);

}  // namespace seamtakt::cli
