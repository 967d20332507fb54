#include "exchange/schedules/schedule_sheet.hpp"

#include <algorithm>
#include <iterator>
#include <set>

#include "base/error.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/text/comma_list.hpp"
#include "exchange/report/caution.hpp"
#include "exchange/schedules/schedule_blocks.hpp"
#include "exchange/schedules/schedule_items.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t most_findings = 4;
/// Of the page's width: sketches and seams, joint, arc.
constexpr int wide = 10, narrow = 7;

constexpr Word sketch_note =
    "Sketches to scale: one of each kind and size of joint, at most four, those of most seams first. Runs in "
    "order, this schedule's are filled; where in the weld a run lies isn't in the plan."_word;

/// The title block: one row across the page.
Sheet title_row(const Plan& plan, const Schedule& schedule) {
  const auto stated = [](const std::string& text) {
    return text.empty() ? SheetCell(not_stated) : SheetCell(text);
  };
  Sheet sheet{"title",
              {{"manufacturer", {"Manufacturer"_word}, 0},
               {"plan", {"Plan"_word}, 0},
               {"schedule", {"Schedule"_word}, 0},
               {"revision", {"Revision number"_word}, 0},
               {"status", {"Status"_word}, 0},
               {"approved_by", {"Approved by"_word}, 0},
               {"effective_from", {"In force from"_word}, 0},
               {"code", {"Code"_word}, 0}},
              {}};
  sheet.rows.push_back({not_stated, stated(plan.title), schedule.id,
                        Count{static_cast<std::uint64_t>(std::max(schedule.revision, 0))},
                        schedule.status.empty() ? SheetCell(not_stated) : SheetCell(Choice{schedule.status}),
                        stated(schedule.approved_by), stated(schedule.effective_from), stated(plan.code)});
  return sheet;
}

GroupBlock column_of(int share, std::vector<Block> blocks) {
  return {GroupBlock::Kind::whole, std::move(blocks), share};
}

void append(std::vector<Block>& to, std::vector<Block> blocks) {
  std::move(blocks.begin(), blocks.end(), std::back_inserter(to));
}

SheetCell origin_of_sheet(const Provenance& provenance) {
  return PatternCell{
      "Seamtakt {1}; plan {2}, SHA-256 {3}; made at {4}"_word,
      {provenance.program_version,
       provenance.plan_file.empty() ? SheetCell(not_stated) : SheetCell(provenance.plan_file),
       provenance.plan_sha256.empty() ? SheetCell(not_stated) : SheetCell(provenance.plan_sha256),
       provenance.made_at_utc.empty() ? SheetCell(not_stated) : SheetCell(provenance.made_at_utc)}};
}

}  // namespace

ScheduleSheets::ScheduleSheets(const PlanReport& report)
    : report_(report), index_(report.plan), uses_(report.plan) {
  for (const Finding& finding : report.evaluation.findings) findings_[finding.where].push_back(&finding);
}

/// Of the schedule itself, then of the passes and seams that it welds, the worst first.
std::vector<const Finding*> ScheduleSheets::findings_at(const Schedule& schedule) const {
  std::vector<const Finding*> found;
  const auto take = [&](const std::string& place) {
    const auto at = findings_.find(place);
    if (at != findings_.end()) found.insert(found.end(), at->second.begin(), at->second.end());
  };
  take(schedule.id);
  take("schedule " + schedule.id);
  for (const SeamUse& use : uses_.of(schedule.id)) {
    take(seam_place(use.weldment->id, use.seam->id));
    for (const int run : use.runs) take(pass_place(use.weldment->id, use.seam->id, run));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Finding* a, const Finding* b) { return a->severity > b->severity; });
  return found;
}

std::vector<Block> ScheduleSheets::findings_on(const Schedule& schedule) const {
  const std::vector<const Finding*> found = findings_at(schedule);
  if (found.empty()) return {ParagraphBlock{"No findings on it or on the seams that it welds."_word}};
  Sheet sheet{"findings",
              {{"severity", {"Severity"_word}, 0},
               {"where", {"Where"_word}, 0},
               {"text", {"Finding"_word}, 0},
               {"source", {"Source"_word}, 0}},
              {}};
  for (std::size_t i = 0; i < std::min(found.size(), most_findings); ++i)
    sheet.rows.push_back({SeverityCell{found[i]->severity}, SentenceCell{place_sentence(found[i]->where)},
                          SentenceCell{found[i]->sentence}, SourceCell{found[i]->source}});
  std::vector<Block> blocks = {TableBlock{std::move(sheet)}};
  if (found.size() > most_findings)
    blocks.emplace_back(ParagraphBlock{PatternCell{"Further findings, in the plan's report: {1}."_word,
                                                   {Count{found.size() - most_findings}}}});
  return blocks;
}

GroupBlock ScheduleSheets::page_of(const Schedule& schedule) const {
  const std::vector<LikeSeams> alike = uses_.alike(schedule.id);
  std::vector<Block> left;
  if (!alike.empty()) {
    left.emplace_back(sketches_of(alike, most_sketches));
    left.emplace_back(ParagraphBlock{sketch_note, ParagraphBlock::Look::quiet});
  }
  append(left, uses_table(alike));
  GroupBlock columns{GroupBlock::Kind::columns, {}};
  columns.blocks.emplace_back(column_of(wide, std::move(left)));
  columns.blocks.emplace_back(column_of(narrow, {joint_items(index_, schedule, uses_.of(schedule.id))}));
  columns.blocks.emplace_back(column_of(narrow, {arc_items(index_, schedule)}));
  GroupBlock page{GroupBlock::Kind::page, {}};
  page.blocks.emplace_back(TitleBlock{3, PatternCell{"Schedule {1}"_word, {schedule.id}}});
  page.blocks.emplace_back(TableBlock{title_row(report_.plan, schedule)});
  page.blocks.emplace_back(std::move(columns));
  append(page.blocks, findings_on(schedule));
  append(page.blocks, changes_table(report_.plan, schedule));
  page.blocks.emplace_back(
      SignBlock{{"Drafted: name, date, signature"_word, "Reviewed: name, date, signature"_word,
                 "Approved: name, date, signature"_word}});
  page.blocks.emplace_back(ParagraphBlock{Word::of_table(caution_text()), ParagraphBlock::Look::caution});
  page.blocks.emplace_back(ParagraphBlock{origin_of_sheet(report_.provenance), ParagraphBlock::Look::quiet});
  return page;
}

Sheet ScheduleSheets::table_of(const std::vector<const Schedule*>& schedules) const {
  Sheet sheet{
      "schedules", {{"schedule", {"Schedule"_word}}, {"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  for (const Schedule* schedule : schedules)
    for (const ItemsBlock& block :
         {document_items(report_.plan, *schedule), joint_items(index_, *schedule, uses_.of(schedule->id)),
          arc_items(index_, *schedule)})
      for (const auto& [item, value] : block.items) sheet.rows.push_back({schedule->id, item, value});
  return sheet;
}

std::vector<const Schedule*> schedules_named(const Plan& plan, const std::vector<std::string>& ids,
                                             const std::string& where) {
  std::set<std::string_view> wanted;
  for (const std::string& id : ids) {
    if (find_by_id(plan.schedules, id) == nullptr)
      throw InputError(where, "\"" + printable(id) + "\"", "the id of a schedule of the plan"_word);
    wanted.insert(id);
  }
  std::vector<const Schedule*> schedules;
  for (const Schedule& schedule : plan.schedules)
    if (wanted.empty() || wanted.contains(schedule.id)) schedules.push_back(&schedule);
  return schedules;
}

Report schedule_report(const PlanReport& report, const std::vector<const Schedule*>& schedules) {
  Report made;
  made.title = report.plan.title.empty()
                   ? SheetCell("Schedule sheets"_word)
                   : SheetCell(PatternCell{"Schedule sheets: {1}"_word, {report.plan.title}});
  const ScheduleSheets sheets(report);
  for (const Schedule* schedule : schedules) made.add(sheets.page_of(*schedule));
  return made;
}

std::vector<Sheet> schedule_report_sheets(const PlanReport& report,
                                          const std::vector<const Schedule*>& schedules) {
  return {ScheduleSheets(report).table_of(schedules), about_section(report).sheets.at(0)};
}

}  // namespace seamtakt
