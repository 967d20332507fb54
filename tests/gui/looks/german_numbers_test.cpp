// The German view: one decimal sign everywhere, words by their count, keys by their names, and the language
// in the View menu.
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTextDocumentFragment>

#include "app/theme_choice.hpp"
#include "document/shown_text.hpp"
#include "models/tables/finding_index.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/formula_layout.hpp"
#include "models/words/state_text.hpp"
#include "models/words/typed_numbers.hpp"
#include "models/words/unit_view.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/quantity_edit.hpp"

namespace seamtakt::desk {
namespace {

class GermanDesk : public DeskTest {
 protected:
  void SetUp() override {
    choose_language("de");
    DeskTest::SetUp();
  }
  void TearDown() override {
    DeskTest::TearDown();
    choose_language("en");
    QSettings().remove("view/language");
  }
  QAction* action(const QString& menu_title, const QString& text) {
    for (QAction* top : window->menuBar()->actions())
      for (QAction* each : top->menu()->actions()) {
        if (top->text() == menu_title && each->text() == text) return each;
        if (each->menu() && each->text() == menu_title)
          for (QAction* inner : each->menu()->actions())
            if (inner->text() == text) return inner;
      }
    return nullptr;
  }
};

TEST_F(GermanDesk, NoTableHasADecimalPoint) {
  static const QRegularExpression point(QStringLiteral("(^|[^0-9.])[0-9]+\\.[0-9]+($|[^0-9.])"));
  int commas = 0;
  for (const DeskPage page : desk_pages) {
    window->showPage(page);
    QApplication::processEvents();
    for (const GridView* table : window->page(page).findChildren<GridView*>())
      for (int row = 0; row < table->grid().rowCount(); ++row)
        for (int column = 0; column < table->grid().columnCount(); ++column) {
          const std::string& key = table->grid().columns()[static_cast<std::size_t>(column)].key;
          // A rule, a source and an id are names: "EN 1011-2, 4.1".
          if (key == "source" || key == "rule" || key == "id" || key == "text") continue;
          const QString text = table->grid().index(row, column).data().toString();
          EXPECT_FALSE(point.match(text).hasMatch()) << key << ": " << text.toStdString();
          commas += text.contains(',');
        }
  }
  EXPECT_GT(commas, 200);
}

TEST_F(GermanDesk, AFormShowsTypesAndStepsWithAComma) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  auto& page = page_of<SchedulesPage>(*window, DeskPage::schedules);
  ASSERT_TRUE(page.form().focusField("wire_feed_speed_m_min"));
  auto* edit = qobject_cast<QuantityEdit*>(page.form().editorOf("wire_feed_speed_m_min"));
  EXPECT_EQ(edit->text(), "8,6");
  actions.key(Qt::Key_Up);
  EXPECT_EQ(edit->text(), "8,7");
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].wire_feed_speed_m_min, 8.7);
  actions.typeOver("9,25");
  actions.key(Qt::Key_Tab);
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].wire_feed_speed_m_min, 9.25);
  EXPECT_EQ(edit->text(), "9,25");
}

TEST_F(GermanDesk, RangesAndListsHaveOneNotation) {
  const UnitView& units = UnitView::shared();
  const FieldInfo& current = *field_named<ScheduleLimits>("current_A");
  EXPECT_EQ(units.fieldShown("253 .. 309.5", current), "253 bis 309,5");
  EXPECT_EQ(units.fieldShown("253 ..", current), "ab 253");
  EXPECT_EQ(units.fieldShown(".. 309", current), "bis 309");
  const FieldInfo& plates = *field_named<Seam>("thickness_mm");
  EXPECT_EQ(units.fieldShown("8.5, 12", plates), "8,5; 12");
  EXPECT_EQ(units.fieldShown("F5S, F6S", *field_named<Seam>("schedules")), "F5S; F6S");
  // What is shown is read as the same.
  for (const char* text : {"253 .. 309.5", "253 ..", ".. 309"})
    EXPECT_EQ(units.fieldTyped(units.fieldShown(text, current), current), text);
  EXPECT_EQ(units.fieldTyped("8,5; 12", plates), "8.5, 12");
  EXPECT_EQ(units.fieldTyped("F5S; F6S", *field_named<Seam>("schedules")), "F5S, F6S");
  choose_language("en");
  EXPECT_EQ(units.fieldShown("253 .. 309.5", current), "253 to 309.5");
  EXPECT_EQ(units.fieldTyped("253 to 309.5", current), "253 .. 309.5");
}

TEST(TypedNumbers, AnIntervalIsTypedInWords) {
  for (const auto& [typed, plain] :
       {std::pair("253 to 309", "253 .. 309"), std::pair("253 bis 309", "253 .. 309"),
        std::pair("from 2 to 6,5", "2 .. 6.5"), std::pair("253–309", "253 .. 309"),
        std::pair("253 - 309", "253 .. 309"), std::pair("-5 - 20", "-5 .. 20"),
        std::pair("up to 20", ".. 20"), std::pair("ab 3", "3 .."), std::pair("2 .. 6", "2 .. 6"),
        std::pair("12", "12")})
    EXPECT_EQ(plain_numbers(typed, FieldKind::interval, true), plain) << typed;
}

TEST_F(GermanDesk, WordsFollowTheirCount) {
  Tally one;
  one.warn = one.note = 1;
  EXPECT_EQ(tally_text(one), "Befunde: 0 Fehler, 1 Warnung, 1 Hinweis");
  EXPECT_EQ(shown_text(Sentence("desk.seams"_key, {{"seams", 1}})), "1 Naht");
  EXPECT_EQ(shown_text(Sentence("desk.seams"_key, {{"seams", 2}})), "2 Nähte");
  choose_language("en");
  EXPECT_EQ(tally_text(one), "Findings: 0 fail, 1 warning, 1 note");
}

TEST_F(GermanDesk, AStepOfUndoIsNamedInTheViewsLanguage) {
  make_drafts(window->document());
  ASSERT_FALSE(window->document().setField("/schedules/0", "travel_speed_mm_s", "9"));
  EXPECT_EQ(window->document().undo().undoText(), "Schweißgeschwindigkeit ändern");
}

TEST_F(GermanDesk, UndoIsAWordAloneWhereThereIsNothingToUndo) {
  make_drafts(window->document());
  const auto text_of = [&](int at) { return window->menuBar()->actions()[1]->menu()->actions()[at]; };
  EXPECT_EQ(text_of(0)->text(), "Rückgängig");
  EXPECT_FALSE(text_of(0)->isEnabled());
  EXPECT_EQ(text_of(1)->text(), "Wiederholen");
  EXPECT_FALSE(text_of(1)->isEnabled());
  ASSERT_FALSE(window->document().setField("/schedules/0", "travel_speed_mm_s", "9"));
  EXPECT_EQ(text_of(0)->text(), "Rückgängig: Schweißgeschwindigkeit ändern");
  EXPECT_TRUE(text_of(0)->isEnabled());
  window->document().undo().undo();
  EXPECT_EQ(text_of(0)->text(), "Rückgängig");
  EXPECT_EQ(text_of(1)->text(), "Wiederholen: Schweißgeschwindigkeit ändern");
}

TEST_F(GermanDesk, FormulasHaveTheDecimalCommaAndTellTheirArgumentsApart) {
  EXPECT_EQ(plain_formula("Q = 0.8*max(1.5, t8/5)"), "Q = 0,8*max(1,5; t8/5)");
  EXPECT_EQ(stacked_formula("0.8*k"), "<p>0,8·<i>k</i></p>");
  EXPECT_TRUE(stacked_formula("max(1.5, 2)").contains("1,5 ; 2"))
      << stacked_formula("max(1.5, 2)").toStdString();
  static const QRegularExpression point(QStringLiteral("[0-9]\\.[0-9]"));
  static const QRegularExpression sources(
      QStringLiteral("<tr><td[^>]*>(Quelle|Gilt für|Genauigkeit)</td>.*?</tr>"));
  const Plan& plan = *window->document().plan();
  int commas = 0;
  for (const char* key :
       {"heat_input_kJ_mm", "cooling_time_s", "haz_hardness_HV", "preheat_needed_C", "current_A"}) {
    const QString html = explanation_html(plan, "BD/S01/pass 1", key).remove(sources);
    QString text = QTextDocumentFragment::fromHtml(html).toPlainText();
    EXPECT_FALSE(point.match(text).hasMatch()) << key << "\n" << text.toStdString();
    commas += text.count(',');
  }
  EXPECT_GT(commas, 20);
  choose_language("en");
  EXPECT_EQ(plain_formula("Q = 0.8*max(1.5, 2)"), "Q = 0.8*max(1.5, 2)");
  EXPECT_EQ(stacked_formula("0.8*k"), "<p>0.8·<i>k</i></p>");
}

TEST_F(GermanDesk, KeysHaveTheirNames) {
  EXPECT_EQ(QKeySequence(Qt::CTRL | Qt::Key_S).toString(QKeySequence::NativeText), "Strg+S");
  EXPECT_TRUE(window->chain().link(DeskPage::seams).toolTip().contains("Strg+1"));
}

TEST_F(GermanDesk, TheLanguageIsChosenInTheViewMenuAndThePlanStaysOpen) {
  ASSERT_FALSE(window->document().edit("title", {}, [](Plan& plan) { plan.title = "changed"; }));
  window->showPage(DeskPage::cell);
  QSignalSpy chosen(window.get(), &MainWindow::languageChosen);
  QAction* english = action("&Sprache", "English");
  ASSERT_NE(english, nullptr);
  english->trigger();
  ASSERT_EQ(chosen.count(), 1);
  EXPECT_EQ(QSettings().value("view/language").toString(), "en");
  const OpenPlan open = window->openPlanNow();
  EXPECT_TRUE(open.is_modified);
  choose_language("en");
  MainWindow other;
  other.takeUp(open);
  EXPECT_EQ(other.document().plan()->title, "changed");
  EXPECT_TRUE(other.document().isModified());
  EXPECT_EQ(other.document().path(), window->document().path());
  EXPECT_EQ(other.currentPage(), DeskPage::cell);
  EXPECT_EQ(other.page(DeskPage::cell).title(), "Cell");
  other.document().undo().setClean();
}

}  // namespace
}  // namespace seamtakt::desk
