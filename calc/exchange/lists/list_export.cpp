#include "exchange/lists/list_export.hpp"

#include "base/error.hpp"
#include "exchange/lists/list_item.hpp"

namespace seamtakt {

namespace {

Sheet::Column sheet_column(const ListColumn& column) {
  Sheet::Column shown;
  shown.key = column.key;
  if (!column.field) {
    shown.heading = {"Weldment"_word};
    return shown;
  }
  shown.heading = {Word::of_table(column.field->label), column.field->unit};
  if (column.object) shown.group = Word::of_table(column.object->label);
  return shown;
}

void add_row(Sheet& sheet, ListKind kind, const std::string& weldment, ConstObjectRef item) {
  auto& row = sheet.rows.emplace_back();
  for (const ListColumn& column : list_columns(kind))
    row.push_back(column.field ? column_cell(item, column) : SheetCell(weldment));
}

}  // namespace

Sheet list_sheet(const Plan& plan, ListKind kind, const std::string& weldment) {
  Sheet sheet;
  sheet.name = kind == ListKind::seams ? "seams" : "schedules";
  for (const ListColumn& column : list_columns(kind)) sheet.columns.push_back(sheet_column(column));
  if (kind == ListKind::schedules)
    for (const Schedule& schedule : plan.schedules) add_row(sheet, kind, {}, schedule);
  else
    for (const Weldment& each : plan.weldments)
      if (weldment.empty() || each.id == weldment)
        for (const Seam& seam : each.seams) add_row(sheet, kind, each.id, seam);
  return sheet;
}

void check_workbook_cells(const Sheet& list) {
  constexpr std::size_t most_bytes = 32767;
  for (const auto& row : list.rows)
    for (std::size_t i = 0; i < row.size(); ++i) {
      const auto* text = std::get_if<std::string>(&row[i]);
      if (!text || text->size() <= most_bytes) continue;
      const std::size_t id = list.columns.front().key == weldment_key ? 1 : 0;
      throw InputError(printable(std::get<std::string>(row[id])) + "." + list.columns[i].key,
                       Sentence("field.found.text-size"_key, {{"bytes", text->size()}}),
                       Sentence("list.workbook-cell"_key, {{"count", most_bytes}}));
    }
}

}  // namespace seamtakt
