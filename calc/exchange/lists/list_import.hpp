#pragma once

#include <string>
#include <utility>
#include <vector>

#include "exchange/lists/list_mapping.hpp"

namespace seamtakt {

/// A value of a list that can't be taken: where it is, what was found, what was expected.
struct RefusedCell {
  std::string sheet;
  std::size_t row = 0;  ///< as a spreadsheet counts; of a CSV the line
  std::string heading;  ///< empty: it is about the whole row
  std::string place;    ///< "list.xlsx:Seams!C5"
  Sentence found, expected;
};

struct ChangedValue {
  std::string key, before, after;  ///< as lists have them; empty: absent
};

/// A row of a list, and what the import makes of it.
struct ImportedRow {
  enum class State : char { added, changed, unchanged, refused };
  State state = State::unchanged;
  std::size_t row = 0;
  std::string weldment, id;
  std::vector<ChangedValue> changes;  ///< of a changed row
  std::vector<RefusedCell> refused;   ///< of a refused one, at least one
};

struct ListImportOptions {
  ListKind kind = ListKind::seams;
  /// Of rows that name none; made where the plan lacks it. Empty: the plan's only weldment.
  std::string weldment;
  bool skip_refused = false;
  /// What new rows have where they say nothing: key of ListColumn, text as in a cell.
  std::vector<std::pair<std::string, std::string>> standards;
};

/// What an import would make of a plan. The plan is a whole one, checked, with the rows that aren't refused:
/// it is to be taken where is_complete(), or where a person leaves the refused rows out.
struct ListImport {
  Plan plan;
  std::vector<ImportedRow> rows;  ///< in the list's order
  std::vector<std::string> new_weldments;

  std::size_t count(ImportedRow::State state) const;
  bool is_complete() const { return count(ImportedRow::State::refused) == 0; }
  /// In the list's order.
  std::vector<RefusedCell> refused() const;
};

/// Rows whose id the plan has change that seam or schedule, others are added at the end. An empty cell leaves
/// a value as it is; a dash takes it out. Where a row gives one of leg, throat and groove, the others go. A
/// locked schedule isn't changed. Names of weldments that the plan lacks are refused, unless it has no seam
/// yet or `weldment` is that name.
/// Errors: InputError where no weldment can be told, or a default can't be read. What a row does wrong is in
/// the result.
ListImport import_list(const Plan& plan, const Book& book, const ListMapping& mapping,
                       const ListImportOptions& options);

}  // namespace seamtakt
