#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/fields/field.hpp"

namespace seamtakt {

/// Which objects of a plan a list has, one a row.
enum class ListKind : char { seams, schedules };

const FieldTable& table_of(ListKind kind);

/// What a column of a list holds: a value of the listed object, of an object in it ("groove.angle_deg"), one
/// element of a list ("thickness_mm[2]"), or one coordinate of a point ("path_mm[1].x").
struct ListColumn {
  std::string key;
  const FieldInfo* object = nullptr;  ///< the field that holds the object; nullptr: the listed one itself
  const FieldInfo* field = nullptr;   ///< nullptr: the id of the weldment
  std::size_t element = 0;            ///< from 1; 0: the whole value
  std::size_t axis = 0;               ///< 1 to 3: x, y, z; 0: not of a point

  bool is_part() const { return element > 0; }
  bool is_id() const { return key == "id"; }
  /// The key of the listed object's field: "groove" of "groove.angle_deg".
  std::string_view top_key() const;
};

/// The column of a seam list that names the weldment.
inline constexpr std::string_view weldment_key = "weldment";

/// The columns that hold whole values, in the order in which a list is written: the weldment (of seams), then
/// each field of the table that isn't a list of objects, and the fields of objects in their place.
const std::vector<ListColumn>& list_columns(ListKind kind);

/// The column of a key, parts of lists included; nothing where there is none.
std::optional<ListColumn> list_column(ListKind kind, std::string_view key);

/// The whole column of a field's part: "thickness_mm" of "thickness_mm[2]".
std::string_view whole_key(std::string_view key);

/// Whether single elements of the list may have columns of their own.
bool has_parts(const ListColumn& column);

/// How many such columns are known by their heads, and by keys.
inline constexpr std::size_t most_parts = 20;

}  // namespace seamtakt
