#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/json/json_node.hpp"
#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// A member of a record that a correction may set.
struct CorrectableMember {
  enum class Type { text, person, whole, number, date, moment, choice };
  const char* path;  ///< "results.length_mm"
  Type type;
  const char* unit = "";
  double lowest = 0, highest = 0;  ///< number and whole: both allowed
  bool may_be_null = false;
  /// The verdict depends on it: a pass verdict with another value is undecided until it is judged again.
  bool judged = false;
  const char* choices = "";  ///< "A|B|C"
};

/// A member that follows from others and is never set.
struct DerivedMember {
  const char* path;
  Word from;  ///< what it is derived from, for people
};

/// Those of a kind of record; empty: nothing of such a record is corrected.
std::span<const CorrectableMember> correctable_members(std::string_view kind);
std::span<const DerivedMember> derived_members();
bool is_derived_member(std::string_view path);

/// The value's JSON text in canonical form, of `text` as a person typed it. A person's name comes back as
/// text: its digest is made when it is written. InputError at --set: another type, outside its range.
std::string correctable_value(const CorrectableMember& member, const std::string& text);

/// InputError at --set that says why `path` isn't set in a record of this kind.
[[noreturn]] void refuse_member(std::string_view kind, std::string_view path);

}  // namespace seamtakt
