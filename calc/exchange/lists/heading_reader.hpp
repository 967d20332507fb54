#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "base/units/units.hpp"
#include "exchange/lists/list_columns.hpp"

namespace seamtakt {

/// A text as names are compared: lower case, umlauts written out, all but letters and digits as one blank.
std::string plain_name(std::string_view text);

/// The unit of that dimension as people write it ("mm", "inch", "\"", "°C"); nullptr where the text is none.
const Unit* unit_as_written(std::string_view text, Dimension dimension);

/// What a column's head says.
struct ReadHeading {
  ListColumn column;
  std::string unit_text;       ///< as it is there; empty: none is stated
  const Unit* unit = nullptr;  ///< nullptr: none is stated, or it doesn't fit the column
};

/// Knows the columns of a list by their heads: the plan file's keys, the labels of the fields in each
/// language of reference/languages, and words of the trade. A unit may follow in brackets, after a comma,
/// after "in", or alone: "leg [mm]", "Leg, in", "Kehlnahtdicke a in mm".
class HeadingReader {
 public:
  explicit HeadingReader(ListKind kind);

  /// Nothing where the head is unknown.
  std::optional<ReadHeading> recognise(std::string_view heading) const;

 private:
  void add(const std::string& name, const std::string& key);
  void add_column(const ListColumn& column, std::string_view name);
  std::optional<ListColumn> find(std::string_view name) const;

  ListKind kind_;
  std::map<std::string, std::string, std::less<>> keys_;  ///< plain name -> key
};

}  // namespace seamtakt
