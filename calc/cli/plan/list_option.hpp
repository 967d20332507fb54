#pragma once

#include <string>
#include <vector>

#include "base/json/json_writer.hpp"
#include "exchange/lists/list_import.hpp"

namespace seamtakt::cli {

/// What an import is told beside its file.
struct ListOptions {
  std::string file, columns, weldment;
  std::vector<std::string> metals, standards;
  bool schedules = false, skip_refused = false;

  ListKind kind() const { return schedules ? ListKind::schedules : ListKind::seams; }
};

/// A list as it was read, where it is, and what it would make of the plan.
struct PreviewedList {
  Book book;
  ListMapping mapping;
  ListImport import;
};

/// Errors: those of read_book, load_list_columns, find_list and import_list; a default that can't be read.
PreviewedList preview_list(const Plan& plan, const ListOptions& options);

/// What was read as what, what changes, and what is refused, for people.
std::string preview_text(const PreviewedList& list, ListKind kind);
/// The same as members of an open object: file, list, sheet, head_row, columns, counts, rows, refused, notes.
void write_preview(JsonWriter& json, const PreviewedList& list, ListKind kind);

}  // namespace seamtakt::cli
