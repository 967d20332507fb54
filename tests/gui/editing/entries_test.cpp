#include <QClipboard>
#include <QFile>
#include <QLineEdit>
#include <QMessageBox>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTimer>
#include <QTreeWidget>

#include "app/theme_choice.hpp"
#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "document/plan_address.hpp"
#include "models/words/typed_numbers.hpp"
#include "models/words/unit_view.hpp"
#include "pages/findings_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/plan_data_dialog.hpp"
#include "widgets/quantity_edit.hpp"

/// An entry is taken whole or not at all, and no key changes anything unintended.
namespace seamtakt::desk {
namespace {

class EntriesTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    for (std::size_t s = 0; s < plan().weldments[0].seams.size() && seam_ == npos; ++s)
      if (plan().weldments[0].seams[s].leg_mm == 6) seam_ = s;
    ASSERT_NE(seam_, npos) << "the demo has a seam with a leg of 6 mm";
  }
  void TearDown() override {
    UnitView::shared().setSystem(UnitSystem::si);
    choose_language("en");
    DeskTest::TearDown();
  }
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
  const Plan& plan() const { return *window->document().plan(); }
  const Seam& seam() const { return plan().weldments[0].seams[seam_]; }
  QuantityEdit* enter(UserActions& actions, const char* key, const QString& typed) {
    actions.page(DeskPage::seams);
    window->selection().setSeam({0, seam_});
    QApplication::processEvents();
    FieldForm& form = page_of<SeamsPage>(*window, DeskPage::seams).form();
    EXPECT_TRUE(form.focusField(key));
    actions.typeOver(typed);
    return qobject_cast<QuantityEdit*>(form.editorOf(key));
  }
  std::size_t seam_ = npos;
};

TEST_F(EntriesTest, ARefusedEntryLeavesThePlanAndEscapeBringsBackWhatWasThere) {
  UserActions actions(*window);
  const std::string before = write_plan(plan());
  QuantityEdit* leg = enter(actions, "leg_mm", "12q");
  EXPECT_FALSE(leg->refusal().isEmpty());
  EXPECT_EQ(write_plan(plan()), before) << "the 12 that stood there for a moment isn't left behind";
  EXPECT_EQ(window->document().undo().count(), 0);
  actions.key(Qt::Key_Escape);
  EXPECT_EQ(leg->text(), "6");
  EXPECT_EQ(write_plan(plan()), before);
  enter(actions, "leg_mm", "12q");
  actions.key(Qt::Key_Tab);
  EXPECT_EQ(leg->text(), "6");
  EXPECT_EQ(write_plan(plan()), before);
  EXPECT_FALSE(window->document().isModified());
}

TEST_F(EntriesTest, EscapeBringsBackWhatWasThereBeforeAGoodEntryToo) {
  UserActions actions(*window);
  QuantityEdit* leg = enter(actions, "leg_mm", "12");
  EXPECT_EQ(seam().leg_mm, 12) << "judged while it is typed";
  actions.key(Qt::Key_Escape);
  EXPECT_EQ(seam().leg_mm, 6);
  EXPECT_EQ(leg->text(), "6");
  EXPECT_EQ(window->document().undo().count(), 0);
  enter(actions, "leg_mm", "12");
  actions.key(Qt::Key_Return);
  actions.key(Qt::Key_Escape);
  EXPECT_EQ(seam().leg_mm, 12) << "Enter ended the entry";
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(seam().leg_mm, 6);
}

TEST_F(EntriesTest, UndoInARefusedEntryDropsTheEntryAlone) {
  UserActions actions(*window);
  enter(actions, "leg_mm", "7");
  actions.key(Qt::Key_Return);
  QuantityEdit* leg = enter(actions, "leg_mm", "12q");
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(leg->text(), "7");
  EXPECT_EQ(seam().leg_mm, 7);
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(seam().leg_mm, 6);
}

TEST_F(EntriesTest, AGermanCommaIsADecimalSignInListsToo) {
  choose_language("de");
  UserActions actions(*window);
  const std::vector<double> before = seam().thickness_mm;
  QuantityEdit* plates = enter(actions, "thickness_mm", "8,5");
  EXPECT_EQ(seam().thickness_mm, before) << "one value isn't two";
  EXPECT_FALSE(plates->refusal().isEmpty());
  actions.key(Qt::Key_Escape);
  for (const auto& [typed, values] :
       {std::pair("8,5; 12", std::vector<double>{8.5, 12}),
        std::pair("8.5; 12", std::vector<double>{8.5, 12}),
        std::pair("8.5, 12", std::vector<double>{8.5, 12}),
        std::pair("8,5, 12", std::vector<double>{8.5, 12}), std::pair("8; 10", std::vector<double>{8, 10}),
        std::pair("9, 11", std::vector<double>{9, 11}),
        std::pair("8,5 mm; 1,2 cm", std::vector<double>{8.5, 12})}) {
    enter(actions, "thickness_mm", typed);
    actions.key(Qt::Key_Return);
    EXPECT_EQ(seam().thickness_mm, values) << typed;
  }
  enter(actions, "gap_mm", "0,5");
  EXPECT_EQ(seam().gap_mm, 0.5);
}

TEST_F(EntriesTest, AnEnglishListKeepsItsCommas) {
  UserActions actions(*window);
  for (const auto& [typed, values] :
       {std::pair("8, 12", std::vector<double>{8, 12}), std::pair("8,10", std::vector<double>{8, 10}),
        std::pair("8.5; 12", std::vector<double>{8.5, 12}),
        std::pair("8,5; 12", std::vector<double>{8.5, 12})}) {
    enter(actions, "thickness_mm", typed);
    actions.key(Qt::Key_Return);
    EXPECT_EQ(seam().thickness_mm, values) << typed;
  }
  const std::vector<double> before = seam().thickness_mm;
  enter(actions, "thickness_mm", "8, 5; 12");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(seam().thickness_mm, before) << "neither two values nor three";
}

TEST(TypedNumbers, ACommaIsTheDecimalSignWhereItCannotBeAnythingElse) {
  struct Case {
    FieldKind kind;
    const char *typed, *plain, *plain_with_comma;
  };
  for (const Case& each :
       {Case{FieldKind::number, "12,5", "12.5", "12.5"}, Case{FieldKind::integer, "2,5", "2.5", "2.5"},
        Case{FieldKind::interval, "2,5 .. 6,5", "2.5 .. 6.5", "2.5 .. 6.5"},
        Case{FieldKind::interval, ".. 6,5", ".. 6.5", ".. 6.5"},
        Case{FieldKind::point, "1,5 2 3,25", "1.5 2 3.25", "1.5 2 3.25"},
        Case{FieldKind::path, "0 0 0; 300,5 0 0", "0 0 0; 300.5 0 0", "0 0 0; 300.5 0 0"},
        Case{FieldKind::number_pairs, "0 0; 300,5 8,25", "0 0; 300.5 8.25", "0 0; 300.5 8.25"},
        Case{FieldKind::composition, "C=0,17, Mn=1,45", "C=0.17, Mn=1.45", "C=0.17, Mn=1.45"},
        Case{FieldKind::composition, "C=0,17; Mn=1,45", "C=0.17, Mn=1.45", "C=0.17, Mn=1.45"},
        Case{FieldKind::number_list, "8,5", "8,5", "8.5"},
        Case{FieldKind::number_list, "8, 5; 12", "8, 5; 12", "8, 5; 12"},
        Case{FieldKind::text, "12,5", "12,5", "12,5"}}) {
    EXPECT_EQ(plain_numbers(each.typed, each.kind, false), each.plain);
    EXPECT_EQ(plain_numbers(each.typed, each.kind, true), each.plain_with_comma) << each.typed;
  }
}

TEST_F(EntriesTest, PairsAreTypedInTheViewsUnitsAndLanguage) {
  const FieldInfo& outline = *field_named<Plate>("outline_mm");
  choose_language("de");
  EXPECT_EQ(UnitView::shared().fieldTyped("0 0; 300,5 8,25", outline), "0 0; 300.5 8.25");
  choose_language("en");
  UnitView::shared().setSystem(UnitSystem::us);
  // 1 in is 25.4 mm.
  EXPECT_EQ(UnitView::shared().fieldTyped("12 0; 1.5 2", outline), "304.8 0; 38.1 50.8");
  EXPECT_EQ(UnitView::shared().fieldShown("304.8 0; 38.1 50.8", outline), "12 0; 1.5 2");
  EXPECT_EQ(UnitView::shared().fieldTyped("06:00 - 06:15; 9:00 - 9:30", *field_named<Shift>("breaks")),
            "06:00 - 06:15; 9:00 - 9:30");
}

TEST_F(EntriesTest, OpeningAPageFocusesItsTableAndStrayKeysChangeNothing) {
  UserActions actions(*window);
  for (const DeskPage page : desk_pages) {
    if (position_of(page) % 2 == 0)
      actions.page(page);
    else
      actions.click(&window->chain().link(page));
    QWidget* focus = QApplication::focusWidget();
    ASSERT_NE(focus, nullptr);
    EXPECT_NE(qobject_cast<GridView*>(focus), nullptr)
        << page << ": " << focus->metaObject()->className() << " " << focus->accessibleName().toStdString();
  }
  actions.page(DeskPage::schedules);
  const std::string before = write_plan(plan());
  actions.type("28,5");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(write_plan(plan()), before);
  EXPECT_EQ(question(100), nullptr);
}

TEST_F(EntriesTest, APlanThatIsOpenedIsLookedAtInItsTableToo) {
  window->document().start(Plan());
  settle();
  UserActions actions(*window);
  for (const DeskPage page : {DeskPage::seams, DeskPage::schedules}) {
    actions.page(page);
    actions.press(window->page(page), "Open the demo");
    settle();
    QWidget* focus = QApplication::focusWidget();
    ASSERT_NE(focus, nullptr);
    EXPECT_NE(qobject_cast<GridView*>(focus), nullptr)
        << focus->metaObject()->className() << " " << focus->accessibleName().toStdString();
    window->document().start(Plan());
    settle();
  }
}

TEST_F(EntriesTest, EnterInPlanDataEndsTheEntryAndPressesNoButton) {
  UserActions actions(*window);
  actions.key(Qt::Key_M, Qt::ControlModifier);
  auto* data = window->findChild<PlanDataDialog*>();
  ASSERT_NE(data, nullptr);
  bring_to_front(*data);
  const std::size_t metals = plan().base_metals.size();
  for (const char* key : {"tensile_MPa", "standard"}) {
    ASSERT_TRUE(data->form().focusField(key)) << key << " of " << data->form().pointer();
    auto* line = qobject_cast<QuantityEdit*>(data->form().editorOf(key));
    QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(line, "515");
    QTest::keyClick(line, Qt::Key_Return);
    QTest::keyClick(line, Qt::Key_Enter);
    QApplication::processEvents();
  }
  QTest::keyClick(&data->tree(), Qt::Key_Return);
  QApplication::processEvents();
  EXPECT_EQ(plan().base_metals.size(), metals);
  EXPECT_EQ(plan().base_metals[0].tensile_MPa, 515);
  EXPECT_TRUE(data->isVisible());
}

TEST_F(EntriesTest, TheKeyForOtherUnitsWorksInAFieldAndEmptiesNone) {
  UserActions actions(*window);
  const std::string before = write_plan(plan());
  actions.page(DeskPage::seams);
  window->selection().setSeam({0, seam_});
  QApplication::processEvents();
  FieldForm& form = page_of<SeamsPage>(*window, DeskPage::seams).form();
  for (const char* key : {"area_allowance", "leg_mm"}) {
    ASSERT_TRUE(form.focusField(key));
    const QString shown = qobject_cast<QuantityEdit*>(form.editorOf(key))->text();
    actions.key(Qt::Key_F8);
    EXPECT_EQ(UnitView::shared().system(), UnitSystem::us) << key;
    EXPECT_EQ(write_plan(plan()), before) << key;
    EXPECT_FALSE(qobject_cast<QuantityEdit*>(form.editorOf(key))->text().isEmpty());
    actions.key(Qt::Key_F8);
    EXPECT_EQ(qobject_cast<QuantityEdit*>(form.editorOf(key))->text(), shown);
  }
  // In the middle of an entry: it stays the length that it was typed as.
  QuantityEdit* leg = enter(actions, "leg_mm", "12");
  actions.key(Qt::Key_F8);
  EXPECT_EQ(leg->text(), "0.4724");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(seam().leg_mm, 12);
  actions.key(Qt::Key_F8);
  // In a table's editor the text would be read in other units than it was typed in.
  ASSERT_TRUE(
      page_of<SeamsPage>(*window, DeskPage::seams).table().focusCell(static_cast<int>(seam_), "leg_mm"));
  actions.type("9");
  actions.key(Qt::Key_F8);
  EXPECT_EQ(UnitView::shared().system(), UnitSystem::si);
  actions.key(Qt::Key_Return);
  EXPECT_TRUE(QTest::qWaitFor([&] { return seam().leg_mm == 9; }));
  actions.page(DeskPage::findings);
  for (QLineEdit* line : window->page(DeskPage::findings).findChildren<QLineEdit*>()) {
    if (line->accessibleName() != "Reason") continue;
    line->setFocus();
    actions.type("tried");
    actions.key(Qt::Key_F8);
    EXPECT_EQ(line->text(), "tried");
    EXPECT_EQ(UnitView::shared().system(), UnitSystem::us);
  }
}

/// A desk whose last session left a copy of the demo with another title.
class RecoveryTest : public ::testing::Test {
 protected:
  void SetUp() override {
    Plan plan = load_plan(demo_path().toStdString());
    plan.title = "left behind";
    save_atomically(kept().toStdString(), write_plan(plan));
    window = std::make_unique<MainWindow>(folder.path());
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  void TearDown() override { window->document().undo().setClean(); }
  QString kept() const { return folder.filePath("before.weldplan.json"); }
  /// Offers what was left and answers with a key or a button.
  void offer(const std::function<void(QMessageBox&)>& answer) {
    bool asked = false;
    QTimer::singleShot(0, window.get(), [&] {
      auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
      ASSERT_NE(box, nullptr);
      asked = true;
      answer(*box);
    });
    window->offerRecovery();
    EXPECT_TRUE(asked);
  }
  static void press(QMessageBox& box, const QString& name) {
    for (QAbstractButton* button : box.buttons())
      if (button->text().remove('&') == name) return QTest::mouseClick(button, Qt::LeftButton);
    FAIL() << name.toStdString();
  }
  QTemporaryDir folder;
  std::unique_ptr<MainWindow> window;
};

TEST_F(RecoveryTest, EscapeKeepsTheCopyForLater) {
  offer([](QMessageBox& box) { QTest::keyClick(&box, Qt::Key_Escape); });
  EXPECT_TRUE(QFile::exists(kept()));
  EXPECT_TRUE(window->document().isEmpty());
  offer([](QMessageBox& box) { box.close(); });
  EXPECT_TRUE(QFile::exists(kept()));
  offer([](QMessageBox& box) { press(box, "Later"); });
  EXPECT_TRUE(QFile::exists(kept()));
  EXPECT_EQ(load_plan(kept().toStdString()).title, "left behind");
}

TEST_F(RecoveryTest, RecoverTakesTheCopyUp) {
  offer([](QMessageBox& box) { QTest::keyClick(&box, Qt::Key_Return); });
  EXPECT_EQ(window->document().plan()->title, "left behind");
  EXPECT_TRUE(window->document().isModified());
  window->document().start(Plan());
}

TEST_F(RecoveryTest, OnlyDiscardDeletesTheCopy) {
  offer([](QMessageBox& box) { press(box, "Discard"); });
  EXPECT_FALSE(QFile::exists(kept()));
  EXPECT_TRUE(window->document().isEmpty());
}

}  // namespace
}  // namespace seamtakt::desk
