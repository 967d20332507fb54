// A report speaks the language and units asked for; files for other programs, and what nobody asked, stay
// English and SI.
#include <gtest/gtest.h>

#include <cctype>
#include <set>
#include <string>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/report.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "german_words.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// Words that both languages spell alike.
const std::set<std::string> same_in_german = {"Plan", "Position", "Takt"};

TextView german_view() {
  return TextView(german());
}

TextView in_us_units() {
  return TextView(english(), UnitSystem::us);
}

Sheet welds() {
  Sheet sheet{"seams",
              {{"heat_input_kJ_mm", {"Heat input"_word, "kJ/mm"}, 4},
               {"preheat_C", {"Preheat"_word, "C"}, 3, true, 20},
               {"throat_mm", {"Throat"_word, "mm"}, 3},
               {"transfer", {"Transfer"_word}, 0}},
              {}};
  sheet.rows = {{1.0, 100.0, 6.35, Choice{"spray"}}, {0.5, 20.0, Pair{25.4, 50.8}, Choice{"a robot"}}};
  return sheet;
}

/// All fixed texts of a report: words, headings, patterns.
class FixedTexts {
 public:
  std::set<std::string> texts;

  void take(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit(*this, block);
  }
  void take(const Sheet& sheet) {
    for (const Sheet::Column& column : sheet.columns) (*this)(column.heading);
    for (const auto& row : sheet.rows)
      for (const SheetCell& cell : row) take(cell);
  }
  void take(const SheetCell& cell) { std::visit(*this, cell); }

  void operator()(Word word) { texts.insert(std::string(word.english())); }
  void operator()(const Choice& choice) { texts.insert(choice.english); }
  void operator()(const Heading& heading) { (*this)(heading.label); }
  void operator()(const KeyCell& cell) { (*this)(cell.heading); }
  void operator()(const PatternCell& cell) {
    (*this)(cell.pattern);
    for (const SheetCell& value : cell.values) take(value);
  }
  void operator()(const TitleBlock& block) { take(block.text); }
  void operator()(const ParagraphBlock& block) { take(block.text); }
  void operator()(const ItemsBlock& block) {
    for (const auto& [label, value] : block.items) {
      take(label);
      take(value);
    }
  }
  void operator()(const TableBlock& block) { take(block.sheet); }
  void operator()(const CodeBlock& block) { (*this)(block.label); }
  void operator()(const SignBlock& block) {
    for (const Word place : block.places) (*this)(place);
  }
  void operator()(const GroupBlock& block) { take(block.blocks); }
  template <class Other>
  void operator()(const Other&) {}  // text of a person, numbers, drawings
};

/// The demo's report, with all that it is made from.
struct Demo {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  Evaluation evaluation = evaluate(plan, "2026-11-25");
  std::vector<CycleResult> cycles;
  Provenance provenance = provenance_without_plan();

  Demo() {
    for (const Weldment& weldment : plan.weldments) cycles.push_back(cycle_given(plan, weldment, evaluation));
  }
};

}  // namespace

TEST(ReportLanguage, each_fixed_text_of_the_demos_report_has_a_german_one) {
  const Demo demo;
  FixedTexts found;
  found.take(plan_report(demo.plan, demo.evaluation, demo.cycles, demo.provenance).blocks);
  for (const Sheet& sheet : report_sheets(demo.plan, demo.evaluation, demo.cycles, demo.provenance)) {
    found.take(sheet);
    found.texts.insert(sheet.name);
  }
  ASSERT_GT(found.texts.size(), 100u);
  for (const std::string& text : found.texts) {
    if (!has_words(text)) continue;
    EXPECT_TRUE(german().known_word(text)) << "add \"" << text << "\" to languages/de.json";
    if (!same_in_german.contains(text)) {
      EXPECT_NE(german().word(text), text);
    }
  }
}

TEST(ReportLanguage, us_units_convert_heads_and_numbers) {
  const ShownTable shown = shown_table(welds(), in_us_units());
  EXPECT_EQ(shown.head,
            (std::vector<std::string>{"Heat input, kJ/in", "Preheat, °F", "Throat, in", "Transfer"}));
  EXPECT_EQ(shown.rows[0], (std::vector<std::string>{"25.4", "212", "0.25", "spray"}));
  EXPECT_EQ(shown.rows[1], (std::vector<std::string>{"12.7", "none", "1 to 2", "a robot"}));
}

TEST(ReportLanguage, us_units_convert_the_numbers_of_a_workbook_with_all_their_digits) {
  EXPECT_NEAR(file_number(0.8125, in_us_units(), "kJ/mm").value(), 20.6375, 1e-12);
  EXPECT_NEAR(file_number(100.0, in_us_units(), "C").value(), 212, 1e-12);
  EXPECT_NEAR(file_number(Figure{6.35, "mm"}, in_us_units()).value(), 0.25, 1e-15);
  EXPECT_EQ(file_number(Count{7}, in_us_units(), "mm"), 7.0);
  EXPECT_EQ(file_number(std::string("S1"), in_us_units(), "mm"), std::nullopt);
  EXPECT_EQ(file_number(0.1234567890123, TextView::plain_english(), "kJ/mm"), 0.1234567890123);
}

TEST(ReportLanguage, us_units_convert_what_states_its_own_unit) {
  const TextView view = in_us_units();
  EXPECT_EQ(cell_text(Measure{6.35, "mm"}, view), "0.25\u202fin");
  EXPECT_EQ(cell_text(MeasureRange{6.35, 12.7, "mm"}, view), "0.25 to 0.5\u202fin");
  EXPECT_EQ(cell_text(MeasureRange{{}, 100.0, "C"}, view), "up to 212\u202f°F");
  EXPECT_EQ(cell_text(Figure{25.4, "mm"}, view), "1");
  EXPECT_EQ(cell_text(UnitCell{"mm"}, view), "in");
  EXPECT_EQ(cell_text(Heading{"Welded length"_word, "mm"}, view), "Welded length, in");
}

TEST(ReportLanguage, german_is_spoken_by_words_choices_sources_and_patterns) {
  const TextView view = german_view();
  EXPECT_EQ(cell_text("not stated"_word, view), "nicht angegeben");
  EXPECT_EQ(cell_text(MeasureRange{4.5, 6.0, "mm"}, view), "4.5 bis 6\u202fmm");
  EXPECT_EQ(cell_text(Choice{"spray"}, view), "Sprüh");
  EXPECT_EQ(cell_text(SourceCell{"ISO 17662 (recalled)"}, view), "ISO 17662 (aus dem Gedächtnis)");
  EXPECT_EQ(cell_text(PatternCell{"{1}, revision {2}"_word, {std::string("F6"), 2.0}}, view),
            "F6, Fassung 2");
  const KeyCell key{"heat_input_kJ_mm", {"Heat input"_word, "kJ/mm"}};
  EXPECT_EQ(cell_text(key, view), "Wärmeeinbringung, kJ/mm");
  EXPECT_EQ(cell_text(key, TextView::plain_english()), "heat_input_kJ_mm");
}

TEST(ReportLanguage, a_page_names_its_language) {
  const Demo demo;
  const std::string page =
      report_html(demo.plan, demo.evaluation, demo.cycles, demo.provenance, german_view());
  for (const char* part : {"<html lang=\"de\">", "<h2>Blätter der Schweißanweisungen (WPS)</h2>",
                           "<th class=\"n\">Wärmeeinbringung, kJ/mm</th>", "Nur Schätzungen.",
                           "aria-label=\"Zeitplan von BD\"", ">Schranke ", "<div>Freigegeben</div>"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
  for (const char* part : {"Estimates only", ">not stated", "Timeline of", ">Heat input", ">bound "})
    EXPECT_EQ(page.find(part), std::string::npos) << part;
}

TEST(ReportLanguage, a_csv_has_keys_and_numbers_whatever_a_reader_asks_for) {
  EXPECT_EQ(
      sheet_csv(welds(), {{"caution", "estimates only: qualification by test decides"_word, "Caution"_word}}),
      "heat_input_kJ_mm,preheat_C,throat_mm_lo,throat_mm_hi,transfer,caution\r\n"
      "1,100,,,spray,estimates only: qualification by test decides\r\n"
      "0.5,20,25.4,50.8,a robot,estimates only: qualification by test decides\r\n");
}

TEST(ReportLanguage, a_negative_number_of_a_csv_is_no_guarded_text) {
  const Sheet sheet{"t", {{"value", {"Value"_word}}}, {{Figure{-1.5, "mm"}}, {-2.0}}};
  EXPECT_EQ(sheet_csv(sheet, {{"plan", "p"}}), "value,plan\r\n-1.5,p\r\n-2,p\r\n");
}

}  // namespace seamtakt
