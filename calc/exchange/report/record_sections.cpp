#include "exchange/report/record_sections.hpp"

#include "exchange/report/caution.hpp"
#include "exchange/sheets/qr_code.hpp"

namespace seamtakt {

namespace {

struct TableSection {
  std::string_view sheet;
  Word title;
};

/// In order of the page.
constexpr TableSection table_sections[] = {{"open-items", "Open items and dispositions"_word},
                                           {"passes", "Heat input by robot pass"_word},
                                           {"methods", "How the heat input came about"_word},
                                           {"manual", "Manual seams"_word},
                                           {"schedules", "Schedule revisions"_word},
                                           {"instruments", "Instruments on the day"_word},
                                           {"findings", "Findings on the records"_word},
                                           {"logs", "Raw logs"_word},
                                           {"changes", "Corrections, void records, sign-offs"_word}};

constexpr Word trust_title = "Whether the records can be trusted"_word,
               origin_title = "Made with and from"_word;
constexpr Word anchor_advice =
    "Keep the line below outside of the store (paper will do). As long as the store agrees with it, no "
    "record up "
    "to its number was changed, taken away or slipped in since: seamtakt ledger verify --store STORE "
    "--anchor FILE; FILE takes the anchor as it stands here, in groups and on several lines, too."_word;

SheetCell problem_cell(const LedgerProblem& problem) {
  if (problem.seq == 0) return SentenceCell{problem.sentence};
  return PatternCell{"Record {1}: {2}"_word, {std::to_string(problem.seq), SentenceCell{problem.sentence}}};
}

void add_verification(Report& report, const VerifyReport& verified) {
  using Look = ParagraphBlock::Look;
  report.add(TitleBlock{2, trust_title});
  report.add(ParagraphBlock{PatternCell{"{1}."_word, {SentenceCell{verified.summary_sentence()}}},
                            verified.trusted ? Look::plain : Look::caution});
  for (const LedgerProblem& problem : verified.problems) report.add(ParagraphBlock{problem_cell(problem)});
  report.add(ParagraphBlock{anchor_advice, Look::quiet});
  if (!verified.newest_head) return;
  const std::string line = verified.newest_head->anchor_line();
  report.add(GroupBlock{GroupBlock::Kind::whole,
                        {CodeBlock{"Anchor"_word, anchor_groups(line)},
                         FigureBlock{[line](const TextView& view) {
                                       return qr_svg(line, view.word("The anchor line as a QR code"_word));
                                     },
                                     FigureBlock::Size::code}}});
}

void add_origin(Report& report, const VerifyReport& verified, const SheetOrigin& origin) {
  const auto value = [&](std::string_view key) {
    for (const OriginItem& item : origin)
      if (item.key == key) return item.value;
    return SheetCell(std::string());
  };
  report.add(TitleBlock{2, origin_title});
  report.add(ItemsBlock{{{"Program"_word, value("program")},
                         {"Store"_word, value("store")},
                         {"Store id"_word, value("store_id")},
                         {"Signing key"_word, verified.newest_head ? verified.newest_head->key_id : ""},
                         {"Made at"_word, value("made_at_utc")}}});
  report.add(SignBlock{{"Inspected: name, date, signature"_word, "Released: name, date, signature"_word}});
}

}  // namespace

Report record_report(SheetCell title, const VerifyReport& verified) {
  Report report{std::move(title), {}};
  report.add(ParagraphBlock{Word::of_table(caution_text()), ParagraphBlock::Look::caution});
  if (!verified.trusted)
    report.add(
        ParagraphBlock{PatternCell{"{1}. What follows can't be relied on; the reasons stand at its end."_word,
                                   {SentenceCell{verified.summary_sentence()}}},
                       ParagraphBlock::Look::caution});
  return report;
}

void add_table(Report& report, const std::vector<Sheet>& sheets, std::string_view name, Word title) {
  for (Block& block : titled_table(title, sheet_named(sheets, name))) report.add(std::move(block));
}

void add_record_sections(Report& report, const std::vector<Sheet>& sheets, const VerifyReport& verified,
                         const SheetOrigin& origin) {
  for (const TableSection& section : table_sections) add_table(report, sheets, section.sheet, section.title);
  add_record_ending(report, verified, origin);
}

void add_record_ending(Report& report, const VerifyReport& verified, const SheetOrigin& origin) {
  add_verification(report, verified);
  add_origin(report, verified, origin);
}

}  // namespace seamtakt
