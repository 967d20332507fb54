#include <QAction>
#include <QSignalSpy>
#include <QToolButton>
#include <QWheelEvent>

#include "app/theme_choice.hpp"
#include "cell/timeline/timeline.hpp"
#include "models/pictures/palette.hpp"
#include "pages/cell_page.hpp"
#include "pages/seams_page.hpp"
#include "plots/axonometric_view.hpp"
#include "plots/timeline_view.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

class AxonometricTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::seams);
  }
  SeamsPage& page() { return page_of<SeamsPage>(*window, DeskPage::seams); }
  AxonometricView& space() { return page().space(); }
  SeamPlace now() const { return window->selection().seam(); }
  /// A seam whose bead can be clicked where its label points: no other is as near.
  int clickable() {
    const auto count = static_cast<int>(space().scene().seam_count());
    for (int i = 1; i < count; ++i) {
      const QPointF at = space().pointOf(i);
      bool is_alone = space().rect().adjusted(4, 30, -4, -40).contains(at.toPoint());
      for (int k = 0; k < count && is_alone; ++k) {
        const QPointF other = space().pointOf(k);
        is_alone = k == i || std::hypot(other.x() - at.x(), other.y() - at.y()) > 24;
      }
      if (!is_alone) continue;
      QSignalSpy picked(&space(), &AxonometricView::picked);
      QTest::mouseClick(&space(), Qt::LeftButton, Qt::NoModifier, at.toPoint());
      if (picked.count() == 1 && picked[0][0].toInt() == i) return i;
    }
    return -1;
  }
  int pixelsOf(const QColor& color) {
    const QImage picture = space().grab().toImage();
    int count = 0;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y) == color;
    return count;
  }
  std::unique_ptr<UserActions> actions;
};

TEST_F(AxonometricTest, AClickOnABeadChoosesItsSeamEverywhere) {
  ASSERT_TRUE(space().isVisible()) << "the page opens with the picture in space";
  ASSERT_EQ(space().scene().seam_count(), window->document().plan()->weldments[0].seams.size());
  const int index = clickable();
  ASSERT_GT(index, 0) << "no bead that lies apart";
  window->selection().setSeam({0, 0});
  actions->clickAt(&space(), space().pointOf(index).toPoint());
  EXPECT_EQ(now(), (SeamPlace{0, static_cast<std::size_t>(index)}));
  EXPECT_EQ(page().table().currentRow(), index);
  const QString name = QString::fromStdString(window->document().plan()->weldments[0].seams[now().seam].id);
  EXPECT_TRUE(space().labelTexts().first().startsWith(name)) << "the chosen seam has a label";
}

TEST_F(AxonometricTest, DraggingTurnsWithoutChoosingAndTheWheelZooms) {
  const SeamPlace before = now();
  const ViewAngles first = space().angles();
  const QPoint middle = space().rect().center();
  actions->drag(&space(), middle, middle + QPoint(60, 30));
  EXPECT_LT(space().angles().yaw_deg, first.yaw_deg) << "the near side goes to the right with the hand";
  EXPECT_GT(space().angles().pitch_deg, first.pitch_deg);
  EXPECT_EQ(now(), before);
  const QPointF at = space().pointOf(0);
  QWheelEvent wheel(at, space().mapToGlobal(at), {}, {0, 120}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&space(), &wheel);
  EXPECT_GT(space().zoomFactor(), 1);
  EXPECT_NEAR(space().pointOf(0).x(), at.x(), 1e-6) << "what is under the cursor stays";
  EXPECT_NEAR(space().pointOf(0).y(), at.y(), 1e-6);
}

TEST_F(AxonometricTest, KeysTurnItAndSnapToSixViews) {
  space().setFocus();
  const ViewAngles first = space().angles();
  actions->key(Qt::Key_Left);
  EXPECT_DOUBLE_EQ(space().angles().yaw_deg, first.yaw_deg - 5);
  actions->key(Qt::Key_Up);
  EXPECT_DOUBLE_EQ(space().angles().pitch_deg, first.pitch_deg + 5);
  actions->key(Qt::Key_Plus);
  EXPECT_GT(space().zoomFactor(), 1);
  for (std::size_t i = 0; i < snap_views.size(); ++i) {
    actions->key(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i)));
    EXPECT_EQ(space().angles(), angles_of(snap_views[i])) << i;
    EXPECT_EQ(space().zoomFactor(), 1);
  }
  actions->key(Qt::Key_Home);
  EXPECT_EQ(space().angles(), first);
  EXPECT_EQ(space().viewActions().size(), 7);
  space().viewActions()[4]->trigger();
  EXPECT_EQ(space().angles(), angles_of(SnapView::above));
}

TEST_F(AxonometricTest, LabelsOnlyWhatIsChosenAndWhatFails) {
  window->selection().setSeam({1, 0});
  QApplication::processEvents();
  const auto& plan = *window->document().plan();
  int failing = 0;
  for (const Seam& seam : plan.weldments[1].seams)
    failing += has_fail("TT/" + seam.id + "/") || has_fail("TT/" + seam.id);
  EXPECT_GE(space().labelTexts().size(), 1);
  EXPECT_LE(space().labelTexts().size(), 1 + failing);
  photograph("seams-in-space");
}

TEST_F(AxonometricTest, ThePlatesOfTheChosenSeamAreTinted) {
  space().setPicked(-1);
  const QImage plain = space().grab().toImage();
  space().setPicked(0);
  const QImage tinted = space().grab().toImage();
  int changed = 0;
  for (int y = 0; y < plain.height(); ++y)
    for (int x = 0; x < plain.width(); ++x) changed += plain.pixel(x, y) != tinted.pixel(x, y);
  EXPECT_GT(changed, 500) << "more than a label's and a bead's pixels";
  EXPECT_GE(space().scene().solids_of(0).size(), 2u);
}

TEST_F(AxonometricTest, TheViewsAreChosenByButtons) {
  const auto button = [&](const char* name) -> QToolButton* {
    for (QToolButton* each : page().findChildren<QToolButton*>())
      if (each->accessibleName() == name) return each;
    return nullptr;
  };
  actions->click(button("View: Plan"));
  EXPECT_FALSE(space().isVisible());
  actions->click(button("View: 3D"));
  EXPECT_TRUE(space().isVisible());
}

TEST_F(AxonometricTest, BothThemesHaveTheirTones) {
  photograph("seams-in-space-light");
  EXPECT_GT(pixelsOf(QColor(0xe3, 0xde, 0xd1)) + pixelsOf(QColor(0xef, 0xec, 0xe3)), 100);
  choose_theme("dark");
  QApplication::processEvents();
  EXPECT_GT(pixelsOf(QColor(0x2e, 0x34, 0x3c)) + pixelsOf(QColor(0x36, 0x3d, 0x46)), 100);
  photograph("seams-in-space-dark");
  choose_theme("light");
}

TEST_F(AxonometricTest, OnCellItHasTheOrderAndTheTorchesAtTheCursor) {
  actions->page(DeskPage::cell);
  auto& cell = page_of<CellPage>(*window, DeskPage::cell);
  ASSERT_TRUE(cell.space().isVisible());
  const QImage before = cell.space().grab().toImage();
  TimelineView& line = cell.timeline();
  const CycleResult& cycle = window->evaluator().results()->cycles[0];
  int arc = 0;
  while (cycle.moves[static_cast<std::size_t>(arc)].kind != MoveKind::arc) ++arc;
  const QPointF at = line.barOf(arc).center();
  QMouseEvent move(QEvent::MouseMove, at, line.mapToGlobal(at), Qt::NoButton, Qt::NoButton, Qt::NoModifier);
  QApplication::sendEvent(&line, &move);
  EXPECT_NE(cell.space().grab().toImage(), before) << "a torch is drawn";
  photograph("cell-in-space");
}

}  // namespace
}  // namespace seamtakt::desk
