#include <gtest/gtest.h>

#include <QFile>
#include <QLabel>
#include <QRegularExpression>
#include <set>

#include "app/theme_choice.hpp"
#include "document/refusal_text.hpp"
#include "exchange/report/caution.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/finding_text.hpp"
#include "models/words/place_text.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/fields/plan_file.hpp"
#include "records/passes/audit.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {

extern const char *const core_words[], *const core_helps[];
extern const int core_word_count, core_help_count;

namespace {

class German : public ::testing::Test {
 protected:
  void SetUp() override { choose_language("de"); }
  void TearDown() override { choose_language("en"); }
};

template <class Object>
void add_labels(std::set<std::string>& labels) {
  for (const FieldInfo& field : fields_of<Object>().fields) labels.insert(field.label);
}

TEST_F(German, IsSpokenByTheChainTheMenusAndTheCoresTables) {
  MainWindow window;
  EXPECT_EQ(window.page(DeskPage::seams).title(), "Nähte");
  EXPECT_EQ(core_label("travel speed"), "Schweißgeschwindigkeit");
  EXPECT_EQ(core_label("Heat input"), "Wärmeeinbringung");
  EXPECT_EQ(severity_word(Severity::fail), "Fehler");
}

TEST_F(German, KnowsEveryLabelOfFieldsAndColumns) {
  std::set<std::string> known(core_words, core_words + core_word_count), labels;
  known.insert(core_helps, core_helps + core_help_count);
  add_labels<Seam>(labels);
  add_labels<Schedule>(labels);
  add_labels<ScheduleLimits>(labels);
  add_labels<Weldment>(labels);
  add_labels<Robot>(labels);
  add_labels<Stage>(labels);
  add_labels<Wire>(labels);
  for (const auto& column : pass_columns()) labels.insert(column.label);
  for (const auto& column : seam_columns()) labels.insert(column.label);
  for (const std::string& label : labels)
    EXPECT_TRUE(known.count(label)) << label << ": add it to gui/models/core_words.cpp";
}

template <class Object>
void expect_german_expectations() {
  for (const FieldInfo& field : fields_of<Object>().fields)
    if (field.kind != FieldKind::object && field.kind != FieldKind::object_list)
      for (const std::string& text : {field.expectation(), field.element_expectation()}) {
        if (text.find("[x, y, z]") == std::string::npos) {
          EXPECT_NE(expectation_text(text).toStdString(), text)
              << field.key << ": add it to gui/models/refusal_text.cpp";
        }
        EXPECT_FALSE(expectation_text(text).contains(QRegularExpression("\\b(a|an|each|the|of)\\b")))
            << expectation_text(text).toStdString();
      }
}

TEST_F(German, SaysWhatFieldsMayHold) {
  EXPECT_EQ(expectation_text("a number from 0 to 100 mm"), "eine Zahl von 0 bis 100 mm");
  EXPECT_EQ(expectation_text("a list of 2, each a number above 0 mm"),
            "eine Liste mit 2 Einträgen, jeweils eine Zahl über 0 mm");
  EXPECT_EQ(refusal_text(InputError("x", "unit \"kg\" in \"45 kg\"", "a number with mm/s, m/min or in/min")),
            "gefunden: Einheit \"kg\" in \"45 kg\", erwartet: eine Zahl mit mm/s, m/min oder in/min");
  EXPECT_EQ(expectation_text("\"this or that\""), "\"this or that\"");
  EXPECT_EQ(expectation_text("the id of a wire; the nearest is S12"),
            "die Kennung eines Drahts; am nächsten liegt S12");
  expect_german_expectations<BaseMetal>();
  expect_german_expectations<Wire>();
  expect_german_expectations<Gas>();
  expect_german_expectations<PowerSource>();
  expect_german_expectations<Schedule>();
  expect_german_expectations<ScheduleLimits>();
  expect_german_expectations<Seam>();
  expect_german_expectations<Weldment>();
  expect_german_expectations<Robot>();
  expect_german_expectations<Stage>();
}

TEST_F(German, SaysTheCaution) {
  EXPECT_TRUE(core_text(caution_text()).startsWith("Nur Schätzungen.")) << "gui/models/core_helps.cpp";
}

TEST_F(German, SpeaksOfFindingsWithTheirNamesAndNumbers) {
  EXPECT_EQ(finding_text("Fillet leg is 5.1 of 6 mm that the drawing asks for."),
            "Schenkel der Kehlnaht: 5.1 von 6 mm, die die Zeichnung verlangt.");
  EXPECT_EQ(finding_text(
                "The cycle takes 2573.1 s; the takt leaves 2160 s. Accepted by w. e. on 2026-11-25: %1 days"),
            "Die Taktzeit ist 2573.1 s; der Takt lässt 2160 s. Angenommen von w. e. am 2026-11-25: %1 days");
  EXPECT_EQ(finding_text("A sentence that nobody knows."), "A sentence that nobody knows.");
  choose_language("en");
  EXPECT_EQ(finding_text("Welded more than once."), "Welded more than once.");
}

TEST_F(German, SpeaksOfWhatIsJudgedAtTheEdgeAndWhatIsNot) {
  EXPECT_EQ(
      finding_text("Preheat isn't judged on 2 passes with schedule F4S: heat input 0.484 kJ/mm, method B "
                   "begins at 0.5 kJ/mm."),
      "Auf 2 Lagen mit dem Schweißplan F4S wird die Vorwärmung nicht beurteilt: Wärmeeinbringung 0.484 "
      "kJ/mm, Methode B beginnt bei 0.5 kJ/mm.");
  EXPECT_EQ(finding_text("Preheat of 163 passes is judged at the edge of method B's range (CET 0.2 %; plate "
                         "thickness 10 mm): that asks for no less than they need."),
            "Die Vorwärmung von 163 Lagen wird am Rand des Bereichs der Methode B beurteilt (CET 0.2 %; "
            "Blechdicke 10 mm): Der verlangt nicht weniger, als sie brauchen.");
  EXPECT_EQ(
      finding_text("CET and preheat aren't computed on seams of M, nor judged: Mn is 2.1 %, the formulas "
                   "hold up to 1.9 %."),
      "CET und Vorwärmung werden weder berechnet auf Nähten von M, noch beurteilt: Mn ist 2.1 %, die "
      "Formeln gelten bis 1.9 %.");
  EXPECT_EQ(finding_text("Qualification Q by ISO 15612 isn't judged: whether execution class and grade admit "
                         "that route, and its ranges."),
            "Die Qualifizierung Q nach ISO 15612 wird nicht beurteilt: ob Ausführungsklasse und Stahlsorte "
            "diesen Weg zulassen, und ihre Bereiche.");
  EXPECT_EQ(
      finding_text("Fillet throat of 4.79 mm: quality level B allows at most 1.42 mm over the 2.83 mm that "
                   "the drawing asks for."),
      "Kehlnahtdicke von 4.79 mm: Die Bewertungsgruppe B erlaubt höchstens 1.42 mm über den 2.83 mm, die "
      "die Zeichnung verlangt.");
}

TEST_F(German, SpeaksOfEveryFindingOfTheDemo) {
  const auto results = results_of(std::make_shared<const Plan>(load_plan(demo_path().toStdString())));
  Findings findings = results->findings;
  const AuditResult audited = audit({{demo_log().toStdString(), nullptr}}, {}, results->plan.get());
  findings.insert(findings.end(), audited.findings.begin(), audited.findings.end());
  ASSERT_GT(findings.size(), 10u);
  for (const Finding& finding : findings)
    EXPECT_NE(finding_text(finding.text).toStdString(), finding.text)
        << finding.rule << ": add its sentence to gui/models/finding_templates.cpp";
}

TEST_F(German, SpeaksOfUnweldedSeamsAndRefusedTimes) {
  EXPECT_EQ(
      finding_text("Unwelded: 36 of its 63 robot seams. This isn't the cycle of a finished weldment: it "
                   "has no margin against takt."),
      "Ungeschweißt: 36 von 63 Roboternähten. Das ist nicht die Taktzeit eines fertigen Bauteils: Sie hat "
      "keinen Abstand zum Takt.");
  EXPECT_EQ(finding_text("Unwelded: 36 of its 63 robot seams. Units of it that wait and aren't run: 11."),
            "Ungeschweißt: 36 von 63 Roboternähten. Einheiten davon, die warten und nicht laufen: 11.");
  EXPECT_EQ(finding_text("nobody welds 2 of its 2 robot seams"), "niemand schweißt 2 von 2 Roboternähten");
  EXPECT_EQ(expectation_text("a time of at most 10000000 s"), "eine Zeit von höchstens 10000000 s");
  EXPECT_EQ(expectation_text("a number from -1000000 to 1000000 mm"),
            "eine Zahl von -1000000 bis 1000000 mm");
}

TEST_F(German, SpeaksOfTheLinesLossesAndCures) {
  EXPECT_EQ(finding_text("wire or tip change at cell"), "Wechsel von Draht oder Kontaktrohr an cell");
  EXPECT_EQ(finding_text("time -10 %"), "Zeit −10 %");
  EXPECT_EQ(
      finding_text("The unit (BD) waits: 2 P7 are missing (none there); 1 P8 is missing (1 of 2 there). "
                   "No complete unit is behind it."),
      "Die Einheit (BD) wartet: 2 P7 fehlen (keines da); 1 P8 fehlt (1 von 2 da). Keine vollständige "
      "steht hinter ihr.");
}

TEST_F(German, SpeaksOfTheSourcesOfFindings) {
  EXPECT_EQ(finding_text("ISO 17662 (recalled)"), "ISO 17662 (aus dem Gedächtnis)");
  EXPECT_EQ(finding_text("IEC 60974-1, rating plate (recalled)"),
            "IEC 60974-1, Leistungsschild (aus dem Gedächtnis)");
  EXPECT_EQ(finding_text("iso-13920"), "iso-13920");
}

TEST_F(German, NamesPlacesAsTheyAreRead) {
  EXPECT_EQ(place_text("BD/S03/pass 12"), "BD/S03/Lage 12");
  EXPECT_EQ(place_text("schedule F5S"), "Schweißplan F5S");
  EXPECT_EQ(place_text("BD/S03"), "BD/S03");
  choose_language("en");
  EXPECT_EQ(place_text("BD/S03/pass 12"), "BD/S03/pass 12");
}

TEST_F(German, HasNoTextLeftUntranslated) {
  QFile file(QString::fromStdString(source_path("/gui/translations/desk_de.ts")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  EXPECT_EQ(text.count("type=\"unfinished\""), 0);
  EXPECT_GT(text.count("<message>"), 500);
}

/// A placeholder lost in translation would show "%1" or drop a figure.
TEST_F(German, KeepsThePlaceholdersOfEachText) {
  QFile file(QString::fromStdString(source_path("/gui/translations/desk_de.ts")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  static const QRegularExpression message("<source>(.*?)</source>\\s*<translation>(.*?)</translation>",
                                          QRegularExpression::DotMatchesEverythingOption);
  int compared = 0;
  for (auto match = message.globalMatch(text); match.hasNext(); ++compared) {
    const auto pair = match.next();
    for (const QString& mark : {QStringLiteral("%1"), QStringLiteral("%2"), QStringLiteral("%3")})
      EXPECT_EQ(pair.captured(1).contains(mark), pair.captured(2).contains(mark))
          << pair.captured(1).toStdString();
  }
  EXPECT_GT(compared, 500);
}

}  // namespace
}  // namespace seamtakt::desk
