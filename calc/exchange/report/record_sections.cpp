#include "exchange/report/record_sections.hpp"

#include "exchange/report/caution.hpp"
#include "exchange/sheets/qr_code.hpp"

namespace seamtakt {

namespace {

struct TableSection {
  std::string_view sheet;
  Words title;
};

/// In order of the page.
constexpr TableSection table_sections[] = {{"open-items", {"Open items and dispositions"}},
                                           {"passes", {"Heat input by robot pass"}},
                                           {"manual", {"Manual seams"}},
                                           {"schedules", {"Schedule revisions"}},
                                           {"instruments", {"Instruments on the day"}},
                                           {"changes", {"Corrections, void records, sign-offs"}}};

constexpr Words trust_title{"Whether the records can be trusted"}, origin_title{"Made with and from"};
constexpr Words anchor_advice{
    "Keep the line below outside of the store (paper will do). As long as the store agrees with it, no "
    "record up "
    "to its number was changed, taken away or slipped in since: seamtakt ledger verify --store STORE "
    "--anchor FILE; FILE takes the anchor as it stands here, in groups and on several lines, too."};

SheetCell problem_cell(const LedgerProblem& problem) {
  if (problem.seq == 0) return SentenceCell{problem.sentence};
  return PatternCell{{"Record {1}: {2}"}, {std::to_string(problem.seq), SentenceCell{problem.sentence}}};
}

void add_verification(Report& report, const VerifyReport& verified) {
  using Look = ParagraphBlock::Look;
  report.add(TitleBlock{2, trust_title});
  report.add(ParagraphBlock{verified.summary() + ".", verified.trusted ? Look::plain : Look::caution});
  for (const LedgerProblem& problem : verified.problems) report.add(ParagraphBlock{problem_cell(problem)});
  report.add(ParagraphBlock{anchor_advice, Look::quiet});
  if (!verified.newest_head) return;
  const std::string line = verified.newest_head->anchor_line();
  report.add(
      GroupBlock{GroupBlock::Kind::whole,
                 {CodeBlock{{"Anchor"}, anchor_groups(line)},
                  FigureBlock{qr_svg(line, "The anchor line as a QR code"), FigureBlock::Size::code}}});
}

void add_origin(Report& report, const SheetOrigin& origin) {
  const auto value = [&](std::string_view key) {
    for (const auto& [name, text] : origin)
      if (name == key) return text;
    return std::string();
  };
  report.add(TitleBlock{2, origin_title});
  report.add(ItemsBlock{{{Words{"Program"}, value("program")},
                         {Words{"Store"}, value("store")},
                         {Words{"Store id"}, value("store_id")},
                         {Words{"Made at"}, value("made_at_utc")}}});
  report.add(SignBlock{{{"Inspected"}, {"Released"}}});
}

}  // namespace

Report record_report(SheetCell title, const VerifyReport& verified) {
  Report report{std::move(title), {}};
  report.add(ParagraphBlock{Words{caution_text()}, ParagraphBlock::Look::caution});
  if (!verified.trusted)
    report.add(
        ParagraphBlock{PatternCell{{"{1}. What follows can't be relied on; the reasons stand at its end."},
                                   {verified.summary()}},
                       ParagraphBlock::Look::caution});
  return report;
}

void add_table(Report& report, const std::vector<Sheet>& sheets, std::string_view name, Words title) {
  for (Block& block : titled_table(title, sheet_named(sheets, name))) report.add(std::move(block));
}

void add_record_sections(Report& report, const std::vector<Sheet>& sheets, const VerifyReport& verified,
                         const SheetOrigin& origin) {
  for (const TableSection& section : table_sections) add_table(report, sheets, section.sheet, section.title);
  add_verification(report, verified);
  add_origin(report, origin);
}

}  // namespace seamtakt
