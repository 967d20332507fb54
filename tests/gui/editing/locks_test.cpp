#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QMessageBox>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTreeWidget>

#include "document/plan_address.hpp"
#include "pages/heat_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/window_panel.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/window_plot.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/plan_data_dialog.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"
#include "widgets/revision_dialog.hpp"

/// No way of editing changes anything reviewed or approved: a new revision is offered.
namespace seamtakt::desk {
namespace {

class LocksTest : public DeskTest {
 protected:
  const Plan& plan() const { return *window->document().plan(); }
  std::string text() const { return write_plan(plan()); }
  const Schedule& schedule(const char* id) const { return *find_by_id(plan().schedules, id); }
  SchedulesPage& page() { return page_of<SchedulesPage>(*window, DeskPage::schedules); }
  void choose(UserActions& actions, const char* id) {
    actions.page(DeskPage::schedules);
    window->selection().setSchedule(*find_schedule(plan(), id));
    QApplication::processEvents();
  }
  QWidget* editor(const char* key) { return page().form().editorOf(key); }
  RevisionDialog* offer() { return qobject_cast<RevisionDialog*>(question()); }
  /// Answers with the keyboard, as the dialog comes: Escape leaves all as it is.
  void escape(QDialog* dialog) {
    ASSERT_NE(dialog, nullptr);
    QTest::keyClick(dialog, Qt::Key_Escape);
    QApplication::processEvents();
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    bring_to_front(*window);
  }
  void press(QDialog* dialog, const QString& name) {
    ASSERT_NE(dialog, nullptr);
    for (QPushButton* button : dialog->findChildren<QPushButton*>())
      if (button->text() == name) {
        QTest::mouseClick(button, Qt::LeftButton);
        QApplication::processEvents();
        return bring_to_front(*window);
      }
    FAIL() << "no button " << name.toStdString();
  }
};

TEST_F(LocksTest, ATypedChangeOfAnApprovedScheduleOffersARevisionAndRefusingItChangesNothing) {
  UserActions actions(*window);
  choose(actions, "F5S");
  const std::string before = text();
  ASSERT_TRUE(page().form().focusField("travel_speed_mm_s"));
  actions.typeOver("11");
  EXPECT_EQ(text(), before) << "not while it is typed either";
  actions.key(Qt::Key_Tab);
  RevisionDialog* dialog = offer();
  ASSERT_NE(dialog, nullptr);
  EXPECT_EQ(static_cast<std::size_t>(dialog->seams().count()), seams_welded_by(plan(), "F5S").size());
  EXPECT_EQ(dialog->seams().findItems("BD/S11", Qt::MatchExactly).size(), 1);
  for (int row = 0; row < dialog->seams().count(); ++row)
    EXPECT_EQ(dialog->seams().item(row)->checkState(), Qt::Unchecked);
  photograph("locked-schedule");
  ASSERT_TRUE(dialog->grab().save(QString::fromStdString(build_path("/screenshots/revision-dialog.png"))));
  escape(dialog);
  EXPECT_EQ(text(), before);
  EXPECT_EQ(window->document().undo().count(), 0);
  EXPECT_FALSE(window->document().isModified());
  EXPECT_EQ(qobject_cast<QuantityEdit*>(editor("travel_speed_mm_s"))->text(), "10.5");
  EXPECT_EQ(question(100), nullptr) << "asked once";
}

TEST_F(LocksTest, AnAcceptedOfferMakesADraftAndMovesTheTickedSeamsAlone) {
  UserActions actions(*window);
  choose(actions, "F5S");
  const std::string before = text();
  const auto seams = seams_welded_by(plan(), "F5S");
  ASSERT_GT(seams.size(), 2u);
  ASSERT_TRUE(page().form().focusField("travel_speed_mm_s"));
  actions.typeOver("11");
  actions.key(Qt::Key_Return);
  RevisionDialog* dialog = offer();
  ASSERT_NE(dialog, nullptr);
  dialog->seams().setCurrentRow(1);
  QTest::keyClick(&dialog->seams(), Qt::Key_Space);
  QTest::keyClick(dialog, Qt::Key_Return);
  bring_to_front(*window);
  settle();
  const Schedule& draft = plan().schedules.back();
  EXPECT_EQ(draft.id, "F5S-r4");
  EXPECT_EQ(draft.revision, 4);
  EXPECT_EQ(draft.status, "draft");
  EXPECT_EQ(draft.revision_of, "F5S");
  EXPECT_TRUE(draft.approved_by.empty());
  EXPECT_TRUE(draft.approved_sha256.empty());
  EXPECT_TRUE(draft.effective_from.empty());
  EXPECT_EQ(draft.travel_speed_mm_s, 11);
  EXPECT_EQ(schedule("F5S").travel_speed_mm_s, 10.5);
  EXPECT_EQ(schedule("F5S").status, "approved");
  const auto moved = seams_welded_by(plan(), "F5S-r4");
  ASSERT_EQ(moved.size(), 1u);
  EXPECT_EQ(seam_names(plan(), moved), seam_names(plan(), {seams[1]}));
  EXPECT_EQ(seams_welded_by(plan(), "F5S").size(), seams.size() - 1);
  EXPECT_EQ(window->selection().schedule(), plan().schedules.size() - 1) << "the draft is looked at next";
  EXPECT_TRUE(qobject_cast<GridView*>(QApplication::focusWidget())) << "and no field of its";
  EXPECT_EQ(write_plan(parse_plan(text(), "again")), text());
  window->document().undo().undo();
  EXPECT_EQ(text(), before);
}

TEST_F(LocksTest, ADraggedWorkingPointOfAnApprovedScheduleIsOfferedWhenItIsLetGo) {
  UserActions actions(*window);
  actions.page(DeskPage::heat);
  auto& heat = page_of<HeatPage>(*window, DeskPage::heat);
  heat.table().selectRow(3);
  WindowPlot& plot = heat.window().plot();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !plot.map().broken.empty(); }));
  QApplication::processEvents();  // laid out and painted: the point has its place
  const std::string id = plot.map().schedule, before = text();
  const Schedule held = schedule(id.c_str());
  ASSERT_EQ(held.status, "approved");
  const auto drag = [&] {
    QWidget* canvas = plot.findChild<QWidget*>();
    const QPoint from = plot.pointPixel().toPoint(), to = from + QPoint(40, -15);
    QTest::mousePress(canvas, Qt::LeftButton, {}, from);
    for (int step = 1; step <= 5; ++step) QTest::mouseMove(canvas, from + (to - from) * step / 5);
    EXPECT_EQ(text(), before);
    EXPECT_EQ(question(50), nullptr) << "nobody is asked in the middle of a drag";
    QTest::mouseRelease(canvas, Qt::LeftButton, {}, to);
    return from;
  };
  const QPoint from = drag();
  escape(offer());
  EXPECT_EQ(text(), before);
  EXPECT_EQ(plot.pointPixel().toPoint(), from) << "the point is where it was";
  drag();
  press(offer(), "New revision as draft");
  settle();
  EXPECT_GT(plan().schedules.back().travel_speed_mm_s, held.travel_speed_mm_s);
  EXPECT_EQ(plan().schedules.back().status, "draft");
  EXPECT_EQ(schedule(id.c_str()).travel_speed_mm_s, held.travel_speed_mm_s);
  plot.setFocus();
  actions.key(Qt::Key_Up);
  EXPECT_NE(offer(), nullptr) << "the arrow keys ask too";
}

TEST_F(LocksTest, ACellOfTheTableAsksToo) {
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  const std::string before = text();
  ASSERT_TRUE(page().table().focusCell(0, "travel_speed_mm_s"));
  actions.type("11");
  actions.key(Qt::Key_Return);
  escape(offer());
  EXPECT_EQ(text(), before);
  ASSERT_TRUE(page().table().focusCell(0, "id"));
  actions.type("28,5");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(text(), before) << "an id is no cell to type into";
  EXPECT_EQ(question(100), nullptr);
}

TEST_F(LocksTest, TheCommandRenameLeavesALockedScheduleAndSaysWhy) {
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  const std::string before = text();
  ASSERT_TRUE(page().table().focusCell(0, "id"));
  actions.key(Qt::Key_F2);
  auto* dialog = qobject_cast<RenameDialog*>(question());
  ASSERT_NE(dialog, nullptr);
  dialog->line().selectAll();
  QTest::keyClicks(&dialog->line(), "28,5");
  QTest::keyClick(&dialog->line(), Qt::Key_Return);
  QApplication::processEvents();
  EXPECT_TRUE(dialog->isVisible());
  EXPECT_EQ(text(), before);
  bool said = false;
  for (QLabel* label : dialog->findChildren<QLabel*>())
    said = said || (label->isVisible() && label->text().contains("F4S (approved)"));
  EXPECT_TRUE(said);
  escape(dialog);
  EXPECT_EQ(text(), before);
}

TEST_F(LocksTest, APasteOverLockedSchedulesIsWholeOrNothing) {
  ASSERT_FALSE(window->document().edit(
      "one draft", {}, [](Plan& changed) { changed.schedules[1].status = "draft"; }, WhenLocked::withdraw));
  window->document().undo().clear();
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  const std::string before = text();
  const double first = plan().schedules[0].travel_speed_mm_s;
  ASSERT_TRUE(page().table().focusCell(0, "travel_speed_mm_s"));
  QApplication::clipboard()->setText("11\n9\n7");
  actions.key(Qt::Key_V, Qt::ControlModifier);
  escape(offer());
  EXPECT_EQ(text(), before) << "the draft's cell isn't taken alone";
  actions.key(Qt::Key_V, Qt::ControlModifier);
  RevisionDialog* dialog = offer();
  ASSERT_NE(dialog, nullptr);
  const std::size_t lines = seams_welded_by(plan(), "F4S").size() + seams_welded_by(plan(), "F6S").size();
  EXPECT_EQ(static_cast<std::size_t>(dialog->seams().count()), lines);
  press(dialog, "New revision as draft");
  settle();
  EXPECT_EQ(plan().schedules[0].travel_speed_mm_s, first);
  EXPECT_EQ(plan().schedules[1].travel_speed_mm_s, 9);
  EXPECT_EQ(schedule("F4S-r3").travel_speed_mm_s, 11);
  EXPECT_EQ(schedule("F6S-r3").travel_speed_mm_s, 7);
  window->document().undo().undo();
  EXPECT_EQ(text(), before);
}

TEST_F(LocksTest, ACheckBoxOfTheFormAsksToo) {
  UserActions actions(*window);
  choose(actions, "F5S");
  const std::string before = text();
  QCheckBox* weave = nullptr;
  for (QCheckBox* box : page().form().findChildren<QCheckBox*>())
    if (box->accessibleName() == "Weave" && box->isVisibleTo(&page().form())) weave = box;
  ASSERT_NE(weave, nullptr);
  weave->setFocus();
  actions.key(Qt::Key_Space);
  escape(offer());
  EXPECT_EQ(text(), before);
  EXPECT_FALSE(weave->isChecked());
}

TEST_F(LocksTest, AnApprovalIsWithdrawnByACommandAfterAQuestionAndNotByTheStatusField) {
  UserActions actions(*window);
  choose(actions, "F5S");
  const std::string before = text();
  auto* status = qobject_cast<QComboBox*>(editor("status"));
  ASSERT_EQ(status->currentData().toString(), "approved");
  status->setFocus();
  actions.key(Qt::Key_Up);
  QDialog* asks = question();
  ASSERT_NE(qobject_cast<QMessageBox*>(asks), nullptr);
  QString words = qobject_cast<QMessageBox*>(asks)->text();
  EXPECT_TRUE(words.remove(QChar(0x2060)).contains("BD/S11, ")) << words.toStdString();
  ASSERT_TRUE(asks->grab().save(QString::fromStdString(build_path("/screenshots/withdraw-dialog.png"))));
  escape(asks);
  EXPECT_EQ(text(), before);
  EXPECT_EQ(status->currentData().toString(), "approved");
  actions.press(page(), "Withdraw approval …");
  press(question(), "Withdraw");
  settle();
  EXPECT_EQ(schedule("F5S").status, "draft");
  EXPECT_TRUE(schedule("F5S").approved_by.empty());
  EXPECT_TRUE(schedule("F5S").effective_from.empty());
  EXPECT_EQ(window->document().undo().count(), 1);
  ASSERT_TRUE(page().form().focusField("travel_speed_mm_s"));
  actions.typeOver("11");
  EXPECT_EQ(schedule("F5S").travel_speed_mm_s, 11) << "a draft follows each key";
  EXPECT_EQ(question(100), nullptr);
}

TEST_F(LocksTest, WhoApprovesADraftFillsInWhoAndWhenOnce) {
  make_drafts(window->document());
  ASSERT_FALSE(window->document().edit("blank", {}, [](Plan& changed) {
    changed.schedules[1].approved_by.clear();
    changed.schedules[1].effective_from.clear();
  }));
  UserActions actions(*window);
  choose(actions, "F5S");
  auto* status = qobject_cast<QComboBox*>(editor("status"));
  status->setFocus();
  actions.key(Qt::Key_End);
  EXPECT_EQ(schedule("F5S").status, "approved");
  ASSERT_TRUE(page().form().focusField("approved_by"));
  actions.type("w. engineer");
  actions.key(Qt::Key_Tab);
  EXPECT_EQ(schedule("F5S").approved_by, "w. engineer");
  ASSERT_TRUE(page().form().focusField("effective_from"));
  actions.type("2026-12-01");
  actions.key(Qt::Key_Tab);
  EXPECT_EQ(schedule("F5S").effective_from, "2026-12-01");
  EXPECT_EQ(question(100), nullptr);
  ASSERT_TRUE(page().form().focusField("approved_by"));
  actions.typeOver("someone else");
  actions.key(Qt::Key_Tab);
  escape(offer());
  EXPECT_EQ(schedule("F5S").approved_by, "w. engineer");
}

TEST_F(LocksTest, ALockedScheduleIsNotRemoved) {
  ASSERT_FALSE(window->document().edit("spare", {}, [](Plan& changed) {
    changed.schedules.push_back(changed.schedules[0]);
    changed.schedules.back().id = "SPARE";
  }));
  UserActions actions(*window);
  choose(actions, "SPARE");
  QSignalSpy said(&page(), &Page::message);
  actions.key(Qt::Key_Delete, Qt::AltModifier);
  EXPECT_NE(find_by_id(plan().schedules, "SPARE"), nullptr);
  ASSERT_EQ(said.count(), 1);
  EXPECT_TRUE(said[0][0].toString().contains("SPARE (approved)")) << said[0][0].toString().toStdString();
}

TEST_F(LocksTest, TheFiguresOfAWireThatApprovedSchedulesNameGoIntoACopyAndItsPriceDoesNot) {
  UserActions actions(*window);
  actions.key(Qt::Key_M, Qt::ControlModifier);
  auto* data = window->findChild<PlanDataDialog*>();
  ASSERT_NE(data, nullptr);
  const auto wire = find_by_id(plan().wires, "S12") - plan().wires.data();
  ASSERT_TRUE(data->choose("/wires/" + std::to_string(wire)));
  const std::string before = text();
  const auto enter = [&](const char* key, const QString& typed) {
    bring_to_front(*data);
    ASSERT_TRUE(data->form().focusField(key));
    QApplication::processEvents();
    auto* line = qobject_cast<QuantityEdit*>(data->form().editorOf(key));
    QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(line, typed);
    QTest::keyClick(line, Qt::Key_Return);
    QApplication::processEvents();
  };
  enter("diameter_mm", "1.6");
  auto* asks = qobject_cast<QMessageBox*>(question());
  ASSERT_NE(asks, nullptr);
  EXPECT_TRUE(asks->text().contains("F4S (approved)")) << asks->text().toStdString();
  ASSERT_TRUE(asks->grab().save(QString::fromStdString(build_path("/screenshots/copy-dialog.png"))));
  escape(asks);
  EXPECT_EQ(text(), before);
  enter("diameter_mm", "1.6");
  press(question(), "Copy with the change");
  settle();
  EXPECT_EQ(find_by_id(plan().wires, "S12")->diameter_mm, 1.2);
  EXPECT_EQ(plan().wires.back().id, "S12-2");
  EXPECT_EQ(plan().wires.back().diameter_mm, 1.6);
  EXPECT_EQ(schedule("F4S").wire, "S12");
  enter("price_per_kg", "3.25");
  enter("alpha_mm_s_A", "0.31");
  EXPECT_EQ(question(100), nullptr);
  EXPECT_EQ(find_by_id(plan().wires, "S12")->price_per_kg, 3.25);
  EXPECT_EQ(find_by_id(plan().wires, "S12")->alpha_mm_s_A, 0.31);
}

TEST(ScheduleLock, DistinguishesLockedFromUnlocked) {
  const Plan before = load_plan(demo_path().toStdString());
  const auto changes = [&](const std::function<void(Plan&)>& edit) {
    Plan after = before;
    edit(after);
    return locked_change(before, after);
  };
  EXPECT_TRUE(changes([](Plan&) {}).none());
  EXPECT_TRUE(changes([](Plan& p) { p.gases[0].price_per_m3 += 1; }).none());
  EXPECT_TRUE(changes([](Plan& p) { p.power_sources[0].efficiency = 0.5; }).none());
  EXPECT_TRUE(changes([](Plan& p) { p.schedules[0].file_keys.free.emplace_back("x_note", "1"); }).none());
  EXPECT_EQ(changes([](Plan& p) { p.gases[0].designation = "other"; }).item, "/gases/0");
  EXPECT_EQ(changes([](Plan& p) { p.power_sources[0].rated_current_A = 99; }).item, "/power_sources/0");
  EXPECT_EQ(changes([](Plan& p) { p.schedules[2].weave->half_width_mm = 2; }).changed,
            std::vector<std::size_t>{2});
  EXPECT_EQ(changes([](Plan& p) { p.schedules[2].limits.reset(); }).changed, std::vector<std::size_t>{2});
  EXPECT_EQ(changes([](Plan& p) { p.schedules[2].status = "reviewed"; }).withdrawn,
            std::vector<std::size_t>{2});
  EXPECT_EQ(changes([](Plan& p) { p.schedules[2].status.clear(); }).withdrawn, std::vector<std::size_t>{2});
  EXPECT_EQ(changes([](Plan& p) { p.schedules.erase(p.schedules.begin()); }).removed,
            std::vector<std::size_t>{0});
}

TEST(ScheduleLock, ARevisionOfARevisionCountsOnInItsFamily) {
  Plan plan = load_plan(demo_path().toStdString());
  const Schedule next = next_revision(plan, plan.schedules[1]);
  EXPECT_EQ(next.id, "F5S-r4");
  EXPECT_EQ(next.revision_of, "F5S");
  plan.schedules.push_back(next);
  EXPECT_EQ(next_revision(plan, plan.schedules.back()).id, "F5S-r5");
  EXPECT_EQ(next_revision(plan, plan.schedules.back()).revision_of, "F5S")
      << "the family's first, not the last";
  EXPECT_EQ(next_revision(plan, plan.schedules[1]).id, "F5S-r5") << "revision 4 is there";
  EXPECT_EQ(next_revision(plan, plan.schedules[1]).revision, 5);
}

}  // namespace
}  // namespace seamtakt::desk
