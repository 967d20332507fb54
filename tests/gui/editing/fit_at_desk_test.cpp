// Settings are fitted at the desk: what exists first, before and after, conflicts with their numbers, one
// step.
#include <QCheckBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QPushButton>

#include "document/plan_address.hpp"
#include "jobs/schedule_trial.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/schedule_choice.hpp"
#include "models/words/unit_view.hpp"
#include "pages/seams_page.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/choice_dialog.hpp"
#include "widgets/fit_dialog.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

class FitAtDesk : public DeskTest {
 protected:
  GridView& table() { return page_of<SeamsPage>(*window, DeskPage::seams).table(); }
  const Seam& seam(std::size_t at) { return window->document().plan()->weldments[0].seams[at]; }
  /// Asks for a fit of the rows by the menu's key and waits for the answer.
  FitDialog* fitRows(std::initializer_list<int> rows) {
    window->showPage(DeskPage::seams);
    table().clearSelection();
    for (const int row : rows) {
      const QModelIndex at = table().proxy().index(row, table().grid().columnNamed("leg_mm"));
      table().selectionModel()->setCurrentIndex(at, QItemSelectionModel::Select);
    }
    table().setFocus();
    QTest::keyClick(&table(), Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    auto* dialog = qobject_cast<FitDialog*>(question());
    if (!dialog) return nullptr;
    dialog->job().wait();
    QApplication::processEvents();
    return dialog;
  }
  QString cell(FitDialog& dialog, int row, const char* key) {
    return dialog.table().grid().index(row, dialog.table().grid().columnNamed(key)).data().toString();
  }
};

TEST_F(FitAtDesk, NewSettingsGoIntoADraftAsOneStep) {
  // So fast that the legs are too small; other seams are welded with it too, so it may not change.
  make_drafts(window->document());
  const auto shared = *find_schedule(*window->document().plan(), "F6S");
  ASSERT_FALSE(window->document().setField(schedule_address(shared), "travel_speed_mm_s", "11"));
  settle();
  FitDialog* dialog = fitRows({4, 5});
  ASSERT_NE(dialog, nullptr);
  ASSERT_EQ(dialog->table().grid().rowCount(), 2);
  EXPECT_EQ(cell(*dialog, 0, "seam").toStdString(), "BD/" + seam(4).id);
  dialog->onlyExisting().setChecked(false);
  EXPECT_TRUE(cell(*dialog, 0, "schedule").startsWith("F6S → "))
      << cell(*dialog, 0, "schedule").toStdString();
  EXPECT_TRUE(cell(*dialog, 0, "travel_speed_mm_s").startsWith("11 → "))
      << cell(*dialog, 0, "travel_speed_mm_s").toStdString();
  dialog->grab().save(QString::fromStdString(build_path("/screenshots/fit.png")));
  const PlanPtr before = window->document().plan();
  const int steps = window->document().undo().count();
  UserActions(*window).press(*dialog, "Take it over");
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  const Plan& after = *window->document().plan();
  EXPECT_EQ(after.schedules[shared].travel_speed_mm_s, 11) << "other seams keep theirs";
  ASSERT_GT(after.schedules.size(), before->schedules.size());
  const auto is_new = [&](const Schedule& each) { return !find_by_id(before->schedules, each.id); };
  const auto found = std::ranges::find_if(after.schedules, is_new);
  ASSERT_NE(found, after.schedules.end());
  const Schedule& made = *found;
  EXPECT_EQ(made.revision_of, "F6S");
  EXPECT_TRUE(made.approved_sha256.empty());
  EXPECT_EQ(made.status, "draft");
  EXPECT_TRUE(made.approved_by.empty());
  EXPECT_LT(made.travel_speed_mm_s, 11);
  EXPECT_NE(seam(4).schedules, std::vector<std::string>{"F6S"});
  window->document().undo().undo();
  EXPECT_EQ(window->document().plan(), before);
}

TEST_F(FitAtDesk, AScheduleOfThePlanComesFirst) {
  // A leg that its schedule doesn't reach and that of another one does.
  std::size_t at = 0;
  while (seam(at).schedules != std::vector<std::string>{"F5S"}) ++at;
  ASSERT_FALSE(window->document().edit("leg", {}, [&](Plan& plan) {
    plan.weldments[0].seams[at].leg_mm = 6;
    plan.weldments[0].seams[at].throat_mm.reset();
  }));
  settle();
  FitDialog* dialog = fitRows({static_cast<int>(at)});
  ASSERT_NE(dialog, nullptr);
  ASSERT_TRUE(dialog->onlyExisting().isChecked()) << cell(*dialog, 0, "state").toStdString();
  EXPECT_EQ(cell(*dialog, 0, "state"), "existing schedule");
  const std::size_t schedules = window->document().plan()->schedules.size();
  dialog->take();
  EXPECT_EQ(window->document().plan()->schedules.size(), schedules) << "no schedule is new";
  EXPECT_NE(seam(at).schedules, std::vector<std::string>{"F5S"});
}

TEST_F(FitAtDesk, AConflictIsSaidWithTheNumberThatWouldBeNeeded) {
  make_drafts(window->document());
  ASSERT_FALSE(window->document().edit("limit", {}, [](Plan& plan) {
    Schedule& schedule = *find_by_id(plan.schedules, "F6S");
    if (!schedule.limits) schedule.limits.emplace();
    schedule.limits->heat_input_kJ_mm = Interval{{}, 0.3};  // a leg of 6 mm needs more
  }));
  settle();
  FitDialog* dialog = fitRows({4});
  ASSERT_NE(dialog, nullptr);
  EXPECT_EQ(cell(*dialog, 0, "state"), "no settings");
  EXPECT_TRUE(dialog->said().contains("No settings keep all of")) << dialog->said().toStdString();
  EXPECT_TRUE(dialog->said().contains("would have to be allowed")) << dialog->said().toStdString();
  for (QPushButton* button : dialog->findChildren<QPushButton*>())
    if (button->accessibleName() == "Take it over") {
      EXPECT_FALSE(button->isEnabled());
    }
  dialog->reject();
}

TEST_F(FitAtDesk, ASeamWithoutAScheduleSaysWhatAFitNeeds) {
  ASSERT_FALSE(
      window->document().edit("none", {}, [](Plan& plan) { plan.weldments[0].seams[0].schedules.clear(); }));
  settle();
  QString said;
  QObject::connect(&window->page(DeskPage::seams), &Page::message, [&](const QString& text) { said = text; });
  EXPECT_EQ(fitRows({0}), nullptr);
  EXPECT_TRUE(said.contains("a fit begins", Qt::CaseInsensitive)) << said.toStdString();
}

TEST_F(FitAtDesk, ASchedulesListHasThoseThatFitFirst) {
  window->showPage(DeskPage::seams);
  ASSERT_TRUE(table().focusCell(0, "schedules"));
  page_of<SeamsPage>(*window, DeskPage::seams).chooseSchedule();
  auto* dialog = qobject_cast<ChoiceDialog*>(question());
  ASSERT_NE(dialog, nullptr);
  dialog->findChild<ScheduleTrial*>()->wait();
  const GridModel& offered = dialog->table().grid();
  ASSERT_EQ(static_cast<std::size_t>(offered.rowCount()), window->document().plan()->schedules.size());
  int last = -1;
  for (int row = 0; row < offered.rowCount(); ++row) {
    const QVariant severity = offered.index(row, 0).data(SeverityRole);
    const int rank = severity.isValid() ? severity.toInt() : -1;
    EXPECT_GE(rank, last);
    last = rank;
  }
  EXPECT_GT(last, -1) << "one of them doesn't fit";
  const QString first = dialog->chosen(1);
  dialog->accept();
  QApplication::processEvents();
  EXPECT_EQ(seam(0).schedules, std::vector<std::string>{first.toStdString()});
}

TEST_F(FitAtDesk, ThreeHundredSchedulesAreShownAtOnceAndTriedAside) {
  ASSERT_FALSE(window->document().edit("many", {}, [](Plan& plan) {
    const Schedule like = plan.schedules.back();
    while (plan.schedules.size() < 300) {
      plan.schedules.push_back(like);
      plan.schedules.back().id = "X" + std::to_string(plan.schedules.size());
      plan.schedules.back().status = "draft";
    }
  }));
  settle();
  window->showPage(DeskPage::seams);
  ASSERT_TRUE(table().focusCell(0, "schedules"));
  page_of<SeamsPage>(*window, DeskPage::seams).chooseSchedule();
  // No event was handled since: all that is judged by now would have been judged by this thread.
  auto* dialog = window->findChild<ChoiceDialog*>();
  ASSERT_NE(dialog, nullptr);
  auto* trial = dialog->findChild<ScheduleTrial*>();
  ASSERT_NE(trial, nullptr);
  const GridModel& offered = dialog->table().grid();
  ASSERT_EQ(offered.rowCount(), 300);
  EXPECT_TRUE(trial->isBusy());
  for (int row = 0; row < offered.rowCount(); ++row) {
    ASSERT_EQ(offered.index(row, 0).data().toString(), "") << row;
    ASSERT_NE(offered.index(row, chosen_id_column).data().toString(), "") << row;
  }
  // The row that a person has gone to stays theirs when the answers come.
  dialog->table().selectRow(7);
  const QString gone_to = dialog->chosen(chosen_id_column);
  trial->wait();
  EXPECT_EQ(dialog->chosen(chosen_id_column), gone_to);
  int judged = 0;
  for (int row = 0; row < offered.rowCount(); ++row)
    judged += !offered.index(row, 0).data().toString().isEmpty();
  EXPECT_EQ(judged, 300);
  dialog->reject();
}

TEST_F(FitAtDesk, WhatIsHeldStaysAndTheMarginIsKept) {
  make_drafts(window->document());
  const auto shared = *find_schedule(*window->document().plan(), "F6S");
  ASSERT_FALSE(window->document().setField(schedule_address(shared), "travel_speed_mm_s", "11"));
  settle();
  FitDialog* dialog = fitRows({4});
  ASSERT_NE(dialog, nullptr);
  dialog->hold(FitHold::wire_feed).setChecked(true);
  dialog->hold(FitHold::voltage).setChecked(true);
  dialog->job().wait();
  dialog->onlyExisting().setChecked(false);
  const Schedule& planned = window->document().plan()->schedules[shared];
  const QString feed = UnitView::shared().numberText(planned.wire_feed_speed_m_min, "m/min", 4);
  EXPECT_EQ(cell(*dialog, 0, "wire_feed_speed_m_min"), feed);
  EXPECT_FALSE(cell(*dialog, 0, "arc_voltage_V").contains("→"));
  const QString held = cell(*dialog, 0, "travel_speed_mm_s");
  EXPECT_TRUE(held.startsWith("11 → ")) << held.toStdString();
  dialog->margin().setValue(4);
  dialog->job().wait();
  dialog->onlyExisting().setChecked(false);
  const QString with_margin = cell(*dialog, 0, "travel_speed_mm_s");
  ASSERT_TRUE(with_margin.startsWith("11 → ")) << with_margin.toStdString();
  EXPECT_LT(with_margin.section("→ ", 1).toDouble(), held.section("→ ", 1).toDouble());
  dialog->reject();
}

TEST_F(FitAtDesk, OnlyTheRowsThatAreTickedAreTakenOver) {
  make_drafts(window->document());
  const auto shared = *find_schedule(*window->document().plan(), "F6S");
  ASSERT_FALSE(window->document().setField(schedule_address(shared), "travel_speed_mm_s", "11"));
  settle();
  FitDialog* dialog = fitRows({4, 5});
  ASSERT_NE(dialog, nullptr);
  dialog->onlyExisting().setChecked(false);
  GridView& rows = dialog->table();
  const QModelIndex first = rows.proxy().index(0, 0), second = rows.proxy().index(1, 0);
  ASSERT_EQ(first.data(Qt::CheckStateRole).toInt(), Qt::Checked);
  ASSERT_EQ(second.data(Qt::CheckStateRole).toInt(), Qt::Checked);
  rows.setCurrentIndex(first);
  rows.setFocus();
  QTest::keyClick(&rows, Qt::Key_Space);
  EXPECT_EQ(first.data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
  const PlanPtr before = window->document().plan();
  const std::vector<std::string> kept = seam(4).schedules;
  const int steps = window->document().undo().count();
  UserActions(*window).press(*dialog, "Take it over");
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  EXPECT_EQ(seam(4).schedules, kept);
  EXPECT_NE(seam(5).schedules, before->weldments[0].seams[5].schedules);
  window->document().undo().undo();
  EXPECT_EQ(window->document().plan(), before);
}

}  // namespace
}  // namespace seamtakt::desk
