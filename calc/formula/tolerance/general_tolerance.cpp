#include "formula/tolerance/general_tolerance.hpp"

#include <cmath>
#include <limits>
#include <vector>

#include "base/error.hpp"
#include "base/sentences/name_list.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

struct ToleranceRow {
  ToleranceKind kind;
  std::string tolerance_class;
  double above_mm, up_to_mm;
  GeneralTolerance tolerance;
};

const char* word_of(ToleranceKind kind) {
  switch (kind) {
    case ToleranceKind::linear:
      return "linear";
    case ToleranceKind::angular:
      return "angular";
    case ToleranceKind::straightness:
      return "straightness";
  }
  return "";
}

ToleranceKind kind_of_row(const ReferenceTable& table, std::size_t row) {
  const std::string& word = table.text(row, "kind");
  for (ToleranceKind kind : {ToleranceKind::linear, ToleranceKind::angular, ToleranceKind::straightness})
    if (word == word_of(kind)) return kind;
  table.refuse(row, "kind", one_of_names({"linear", "angular", "straightness"}));
}

/// The standard states angles in whole minutes; the table's degrees are rounded.
std::optional<double> whole_minutes_deg(std::optional<double> degrees) {
  if (!degrees) return degrees;
  return std::round(*degrees * 60) / 60;
}

std::vector<ToleranceRow> read_tolerance_rows() {
  const ReferenceTable table("iso13920.csv");
  std::vector<ToleranceRow> rows;
  for (std::size_t row = 0; row < table.size(); ++row) {
    GeneralTolerance tolerance;
    tolerance.tolerance_mm = table.number_or_empty(row, "tolerance_mm");
    tolerance.tolerance_deg = whole_minutes_deg(table.number_or_empty(row, "tolerance_deg"));
    tolerance.tolerance_mm_per_m = table.number_or_empty(row, "tolerance_mm_per_m");
    tolerance.basis = table.basis(row);
    rows.push_back({kind_of_row(table, row), table.text(row, "class"), table.number(row, "above_mm"),
                    table.number_or_empty(row, "up_to_mm").value_or(std::numeric_limits<double>::infinity()),
                    tolerance});
  }
  return rows;
}

/// The linear table begins at 2 mm, that length included; every other range leaves its lower bound out.
bool tolerance_covers(const ToleranceRow& row, double length_mm) {
  constexpr double linear_from_mm = 2;
  const bool above =
      length_mm > row.above_mm ||
      (row.kind == ToleranceKind::linear && row.above_mm == linear_from_mm && length_mm == linear_from_mm);
  return above && length_mm <= row.up_to_mm;
}

}  // namespace

std::optional<GeneralTolerance> general_tolerance(ToleranceKind kind, std::string_view tolerance_class,
                                                  double length_mm) {
  static const std::vector<ToleranceRow> rows = read_tolerance_rows();
  bool class_known = false;
  for (const ToleranceRow& row : rows) {
    if (row.kind != kind || row.tolerance_class != tolerance_class) continue;
    class_known = true;
    if (tolerance_covers(row, length_mm)) return row.tolerance;
  }
  if (!class_known)
    throw InputError("--class", printable(tolerance_class),
                     kind == ToleranceKind::straightness
                         ? "E, F, G or H for straightness"_word
                         : "A, B, C or D for linear and angular dimensions"_word);
  return std::nullopt;
}

std::optional<ToleranceKind> kind_of_class(std::string_view tolerance_class) {
  if (tolerance_class.size() != 1) return std::nullopt;
  if (tolerance_class >= "A" && tolerance_class <= "D") return ToleranceKind::linear;
  if (tolerance_class >= "E" && tolerance_class <= "H") return ToleranceKind::straightness;
  return std::nullopt;
}

}  // namespace seamtakt
