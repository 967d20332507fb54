// The words of explanations are German where the desk's language is German.
#include <gtest/gtest.h>

#include <QRegularExpression>
#include <map>
#include <set>

#include "app/theme_choice.hpp"
#include "document/shown_text.hpp"
#include "formula/quantities/quantity.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/result_label.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {

namespace {

class GermanNotes : public ::testing::Test {
 protected:
  void SetUp() override { choose_language("de"); }
  void TearDown() override { choose_language("en"); }
};

constexpr SourceBasis every_basis[] = {SourceBasis::read, SourceBasis::part_read, SourceBasis::recalled,
                                       SourceBasis::derived, SourceBasis::common_practice};

/// What explanations say, each text once, with the id of a note that says it.
struct SaidInNotes {
  std::map<std::string, std::string> texts, results;
  std::map<std::string, QString> meanings;  ///< of symbols: in English, and as they are shown
  std::set<std::string> notes;

  void add(const FormulaNote& note) {
    for (const char* text : {note.range, note.accuracy, note.clause, to_string(note.basis)})
      texts.emplace(text, note.id);
    results.emplace(note.result, note.id);
    notes.insert(note.id);
  }

  /// A value, and all that it rests on. A column without a formula says nothing.
  void add(const Plan& plan, const std::string& place, const char* key) {
    try {
      for (const Explanation& explanation : explain(plan, place, key)) {
        add(*explanation.note);
        for (const SymbolValue& symbol : explanation.inputs)
          meanings.emplace(symbol.meaning.english(), shown_text(symbol.meaning));
      }
    } catch (const InputError&) {
    }
  }
};

SaidInNotes said_by_the_demo() {
  const Plan plan = load_plan(demo_path().toStdString());
  SaidInNotes said;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      const std::string place = weldment.id + "/" + seam.id;
      for (const auto& column : seam_columns()) said.add(plan, place, column.key);
      for (std::size_t pass = 1; pass <= seam.schedules.size(); ++pass)
        for (const auto& column : pass_columns())
          said.add(plan, place + "/pass " + std::to_string(pass), column.key);
    }
  return said;
}

SaidInNotes said_by_the_registry() {
  SaidInNotes said;
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes) said.add(*note);
  return said;
}

/// "C.3", "CET" and a formula without words are the same in every language.
bool has_words(const std::string& text) {
  static const QRegularExpression word(QStringLiteral("[a-z]{3}"));
  return QString::fromStdString(text).contains(word);
}

void expect_german(const SaidInNotes& said) {
  for (const auto& [text, note] : said.texts)
    if (has_words(text)) {
      EXPECT_NE(shown_word(text).toStdString(), text) << note;
    }
  for (const auto& [english, shown] : said.meanings)
    if (has_words(english)) {
      EXPECT_NE(shown.toStdString(), english);
    }
  for (const auto& [key, note] : said.results)
    if (has_words(key)) {
      EXPECT_NE(result_label(key).toStdString(), key)
          << note << ": add its label to gui/models/words/result_label.cpp";
    }
}

TEST_F(GermanNotes, SayAllThatTheDemoExplains) {
  const SaidInNotes said = said_by_the_demo();
  EXPECT_GT(said.meanings.size(), 20u);
  for (const char* id : {"cooling-time.2d", "cooling-time.3d", "preheat.method-b", "haz-hardness.yurioka",
                         "distortion.fillet-angular-angle", "plan.leg"})
    EXPECT_TRUE(said.notes.contains(id)) << id << " isn't explained: the walk is too short";
  EXPECT_GE(said.notes.size(), 24u);
  expect_german(said);
}

TEST_F(GermanNotes, SayWhatEveryRegisteredFormulaSays) {
  const SaidInNotes said = said_by_the_registry();
  EXPECT_GT(said.notes.size(), 80u);
  expect_german(said);
}

TEST_F(GermanNotes, SayHowEachSourceWasHad) {
  SaidInNotes said;
  for (const SourceBasis basis : every_basis) said.texts.emplace(to_string(basis), "basis");
  EXPECT_EQ(said.texts.size(), 5u);
  expect_german(said);
}

TEST_F(GermanNotes, FillTheirHoles) {
  const Sentence efficiency("symbol.thermal-efficiency"_key, {{"process", "138"}});
  const Sentence shape("symbol.shape-factor"_key, {{"joint", "tee"_word}});
  EXPECT_EQ(shown_text(efficiency), "thermischer Wirkungsgrad des Prozesses 138");
  EXPECT_EQ(shown_text(shape), "Nahtfaktor, T-Stoß");
  EXPECT_EQ(shown_word("A text that nobody knows."), "A text that nobody knows.");
  choose_language("en");
  EXPECT_EQ(shown_text(shape), "shape factor, joint tee");
}

TEST_F(GermanNotes, NameResultsThatAreNoColumn) {
  EXPECT_EQ(result_label("cooling_time_2d_s"), "Abkühlzeit t8/5, zweidimensionale Wärmeableitung");
  EXPECT_EQ(result_label("heat_input_kJ_mm"), "Wärmeeinbringung");
  EXPECT_EQ(result_label("no_such_key"), "no_such_key");
  choose_language("en");
  EXPECT_EQ(result_label("cooling_time_2d_s"), "Cooling time, two-dimensional heat flow");
}

TEST_F(GermanNotes, StandInThePanelAndInTooltips) {
  const Plan plan = load_plan(demo_path().toStdString());
  const QString html = explanation_html(plan, "BD/S02/pass 1", "cooling_time_s");
  for (const char* part : {"BD/S02/Raupe 1", "Abkühlzeit t8/5, zweidimensionale Wärmeableitung", "Anhang D",
                           "teils gelesen", "Nahtfaktor", "Vorwärmung"})
    EXPECT_TRUE(html.contains(part)) << part;
  EXPECT_TRUE(explanation_tip(plan, "BD/S02/pass 1", "cooling_time_s")
                  .endsWith("Anhang D, zweidimensionale Wärmeableitung"));
}

}  // namespace
}  // namespace seamtakt::desk
