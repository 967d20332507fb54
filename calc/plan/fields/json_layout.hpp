#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace seamtakt {

/// Appends a number, the shortest text that reads back as the same double. Zero loses its sign.
/// InputError where it isn't finite.
void append_json_number(std::string& json, double value);

/// Byte after the JSON value that begins at byte `begin` of valid JSON text.
std::size_t json_value_end(std::string_view json, std::size_t begin);

/// The same JSON text on one line: a blank after ':' and ',' and none elsewhere. Strings and numbers stay as
/// they are written.
std::string compact_json(std::string_view json);

/// Lays out one-line JSON text for people: an array or object that fits into `width` columns is on one line,
/// any other has a line for each of its members. Ends with a newline. Its own output, made compact and laid
/// out again, gives the same bytes.
std::string layout_json(std::string_view compact, std::size_t width = 110);

}  // namespace seamtakt
