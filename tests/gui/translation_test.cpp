#include <gtest/gtest.h>

#include <QFile>
#include <QLabel>
#include <QRegularExpression>

#include "app/theme_choice.hpp"
#include "base/units/units.hpp"
#include "document/shown_text.hpp"
#include "exchange/report/caution.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/place_text.hpp"
#include "models/words/unit_view.hpp"
#include "plan/fields/plan_file.hpp"
#include "records/passes/audit.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/quantity_edit.hpp"

namespace seamtakt::desk {

namespace {

class German : public ::testing::Test {
 protected:
  void SetUp() override { choose_language("de"); }
  void TearDown() override { choose_language("en"); }
};

/// Why a quantity can't be taken.
QString refusal_of(const char* typed, const char* unit) {
  try {
    parse_quantity(typed, *find_unit(unit), "x");
  } catch (const InputError& error) {
    return refusal_text(error);
  }
  return {};
}

Sentence undersize(double obtained_mm, double needed_mm) {
  return Sentence("fillet.size.undersize"_key, {{"what", "Fillet leg"_word},
                                                {"obtained", UnitValue{obtained_mm, "mm", 3}},
                                                {"needed", UnitValue{needed_mm, "mm", 3}}});
}

TEST_F(German, IsSpokenByTheChainTheMenusAndTheCoresTables) {
  MainWindow window;
  EXPECT_EQ(window.page(DeskPage::seams).title(), "Nähte");
  EXPECT_EQ(core_label("travel speed"), "Schweißgeschwindigkeit");
  EXPECT_EQ(core_label("Heat input"), "Wärmeeinbringung");
  EXPECT_EQ(severity_word(Severity::fail), "Fehler");
}

TEST_F(German, IsTheLanguageOfWordsSentencesAndRefusals) {
  EXPECT_EQ(shown_word("travel speed"), "Schweißgeschwindigkeit");
  EXPECT_EQ(shown_word("A text that nobody knows."), "A text that nobody knows.");
  EXPECT_EQ(shown_text(field_named<Schedule>("travel_speed_mm_s")->expectation()),
            "eine Zahl über 0\u202fmm/s");
  EXPECT_EQ(shown_text(Sentence::verbatim("\"this or that\"")), "\"this or that\"");
  EXPECT_EQ(refusal_of("45 kg", "mm/s"),
            "gefunden: Einheit \"kg\" in \"45 kg\", erwartet: eine Zahl mit mm/s, cm/min, m/min, mm/min oder "
            "in/min");
  choose_language("en");
  EXPECT_EQ(shown_word("travel speed"), "travel speed");
  EXPECT_EQ(refusal_of("", "mm/s"),
            "found nothing, expected a number with mm/s, cm/min, m/min, mm/min or in/min");
}

TEST_F(German, IsSpokenInTheUnitsOfTheView) {
  UnitView::shared().setSystem(UnitSystem::us);
  EXPECT_EQ(shown_text(field_named<Seam>("leg_mm")->expectation()), "eine Zahl über 0\u202fin");
  EXPECT_EQ(shown_text(undersize(6.35, 12.7)),
            "Schenkel der Kehlnaht: 0,25 von 0,5\u202fin, die die Zeichnung verlangt.");
  UnitView::shared().setSystem(UnitSystem::si);
  EXPECT_EQ(shown_text(undersize(5.1, 6)),
            "Schenkel der Kehlnaht: 5,1 von 6\u202fmm, die die Zeichnung verlangt.");
}

TEST_F(German, TellsInAFormWhatAFieldMayHold) {
  QuantityEdit edit;
  edit.setField(field_named<Schedule>("travel_speed_mm_s"));
  EXPECT_TRUE(edit.toolTip().endsWith("\neine Zahl über 0\u202fmm/s")) << edit.toolTip().toStdString();
}

TEST_F(German, SaysTheCaution) {
  EXPECT_TRUE(shown_word(caution_text()).startsWith("Nur Schätzungen."));
}

TEST_F(German, LeavesTheWordsOfPeopleAsTheyAre) {
  const Sentence accepted(
      "finding.accepted"_key,
      {{"finding", undersize(5.1, 6)}, {"by", "w. e."}, {"date", "2026-11-25"}, {"why", "{by} %1 days"}});
  EXPECT_EQ(shown_text(accepted),
            "Schenkel der Kehlnaht: 5,1 von 6\u202fmm, die die Zeichnung verlangt. Angenommen von w. e. am "
            "2026-11-25: {by} %1 days");
}

TEST_F(German, SpeaksOfEveryFindingOfTheDemo) {
  const auto results = results_of(std::make_shared<const Plan>(load_plan(demo_path().toStdString())));
  Findings findings = results->findings;
  const AuditResult audited = audit({{demo_log().toStdString(), nullptr}}, {}, results->plan.get());
  findings.insert(findings.end(), audited.findings.begin(), audited.findings.end());
  ASSERT_GT(findings.size(), 10u);
  for (const Finding& finding : findings)
    EXPECT_NE(shown_text(finding.sentence).toStdString(), finding.text()) << finding.rule;
}

TEST_F(German, SpeaksOfTheSourcesOfFindings) {
  EXPECT_EQ(shown_source("ISO 17662 (recalled)"), "ISO 17662 (aus dem Gedächtnis)");
  EXPECT_EQ(shown_source("IEC 60974-1, rating plate (recalled)"),
            "IEC 60974-1, Leistungsschild (aus dem Gedächtnis)");
  EXPECT_EQ(shown_source("iso-13920"), "iso-13920");
}

TEST_F(German, NamesPlacesAsTheyAreRead) {
  EXPECT_EQ(place_text("BD/S03/pass 12"), "BD/S03/Raupe 12");
  EXPECT_EQ(place_text("schedule F5S"), "Schweißanweisung F5S");
  EXPECT_EQ(place_text("BD/S03"), "BD/S03");
  choose_language("en");
  EXPECT_EQ(place_text("BD/S03/pass 12"), "BD/S03/pass 12");
}

TEST_F(German, HasNoTextLeftUntranslated) {
  QFile file(QString::fromStdString(source_path("/gui/translations/desk_de.ts")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  EXPECT_EQ(text.count("type=\"unfinished\""), 0);
  EXPECT_GT(text.count("<message>"), 300);
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
  EXPECT_GT(compared, 300);
}

}  // namespace
}  // namespace seamtakt::desk
