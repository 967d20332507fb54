#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json/json_node.hpp"

namespace seamtakt {

/// The one text of a JSON value: no blanks, members sorted by the UTF-16 units of their keys, numbers as
/// ECMAScript writes them, strings with the fewest escapes. Source: rfc-8785, section 3.2.
/// No Unicode normalisation. std::logic_error where a number isn't finite.
std::string canonical_json(const JsonNode& value);

/// A number as ECMAScript's Number::toString writes it (rfc-8785, section 3.2.2.3); 0 for -0.
void append_canonical_number(std::string& out, double value);

void append_canonical_string(std::string& out, std::string_view text);

/// Before by UTF-16 units, which isn't the order of the code points above U+FFFF. Both are valid UTF-8.
bool canonical_key_less(std::string_view a, std::string_view b);

/// A member of the outermost object, as text from the whole.
struct CanonicalMember {
  std::string_view key;    ///< without quotes; escaped as in the text
  std::string_view value;  ///< JSON text
};

/// Whether `text` is an object in canonical form, i.e. equals canonical_json of itself; fills `members` with
/// those of the outermost object. Builds no tree: verifying a million records spends most time here.
bool scan_canonical_object(std::string_view text, std::vector<CanonicalMember>& members);

/// The text of a member; empty view where it isn't there.
std::string_view member_text(const std::vector<CanonicalMember>& members, std::string_view key);

}  // namespace seamtakt
