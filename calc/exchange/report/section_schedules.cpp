#include "exchange/schedules/schedule_sheet.hpp"

namespace seamtakt {

namespace {

constexpr Word schedules_title = "Schedule sheets"_word;
constexpr Word schedules_basis =
    "Data items as ISO 15609-1 lists them for a welding procedure specification; on paper a page a schedule."_word;

}  // namespace

ReportSection schedules_section(const PlanReport& report) {
  const ScheduleSheets sheets(report);
  ReportSection section{
      {TitleBlock{2, schedules_title}, ParagraphBlock{schedules_basis, ParagraphBlock::Look::quiet}},
      {sheets.table_of(schedules_named(report.plan, {}, {}))}};
  for (const Schedule& schedule : report.plan.schedules)
    section.blocks.emplace_back(sheets.page_of(schedule));
  return section;
}

}  // namespace seamtakt
