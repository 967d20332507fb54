// A list of seams on the desk: shown before it is taken, taken as one step, remembered by its headings.
#include <QCheckBox>
#include <QComboBox>
#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QMimeData>
#include <QSettings>
#include <QTableWidget>
#include <QTemporaryDir>

#include "app/theme_choice.hpp"
#include "user_actions.hpp"
#include "widgets/seam_import_dialog.hpp"

namespace seamtakt::desk {
namespace {

class ListImportTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    QSettings().remove("lists");
  }
  void TearDown() override {
    QSettings().remove("lists");
    DeskTest::TearDown();
  }
  QString file(const QString& name, const QByteArray& bytes) {
    QFile made(folder_.filePath(name));
    EXPECT_TRUE(made.open(QIODevice::WriteOnly));
    made.write(bytes);
    return made.fileName();
  }
  SeamImportDialog* opened(const QString& path) {
    window->importList(path);
    auto* dialog = window->findChild<SeamImportDialog*>();
    if (dialog) settle(*dialog);
    return dialog;
  }
  static void settle(SeamImportDialog& dialog) {
    dialog.reading().wait();
    QApplication::processEvents();
  }
  static QPushButton* importButton(SeamImportDialog& dialog) {
    for (QPushButton* button : dialog.findChildren<QPushButton*>())
      if (button->accessibleName() == "Import") return button;
    return nullptr;
  }
  static QTableWidget* table(SeamImportDialog& dialog, const QString& name) {
    for (QTableWidget* each : dialog.findChildren<QTableWidget*>())
      if (each->accessibleName() == name) return each;
    return nullptr;
  }
  const std::vector<Seam>& seams() const { return window->document().plan()->weldments[0].seams; }

  QTemporaryDir folder_;
};

TEST_F(ListImportTest, TheGermanPreviewHasTheDecimalComma) {
  choose_language("de");
  SeamImportDialog* dialog =
      opened(file("list.csv", "weldment,id,gap_mm,thickness_mm\nBD,S01,0.8,\"8.5; 12\"\n"));
  ASSERT_NE(dialog, nullptr);
  ASSERT_TRUE(dialog->list());
  QStringList after;
  for (const QTableWidget* each : dialog->findChildren<QTableWidget*>())
    for (int row = 0; row < each->rowCount(); ++row)
      if (each->columnCount() == 6 && each->item(row, 5)) after << each->item(row, 5)->text();
  choose_language("en");
  EXPECT_TRUE(after.contains("0,8")) << after.join(" | ").toStdString();
  EXPECT_TRUE(after.contains("8,5; 12")) << after.join(" | ").toStdString();
  dialog->reject();
}

TEST_F(ListImportTest, WhatChangesIsShownAndTakenAsOneStep) {
  const std::size_t before = seams().size();
  SeamImportDialog* dialog =
      opened(file("list.csv",
                  "weldment,id,gap_mm,joint,thickness_mm,base_metals,leg_mm,schedules,path_mm\n"
                  "BD,S01,0.8,,,,,,\n"
                  "BD,N1,,tee,8; 8,S355J2,5,F5S,0 0 0; 100 0 0\n"));
  ASSERT_NE(dialog, nullptr);
  ASSERT_TRUE(dialog->list());
  QTableWidget* preview = table(*dialog, "Preview");
  ASSERT_EQ(preview->rowCount(), 2);
  EXPECT_EQ(preview->item(0, 1)->text(), "BD/S01");
  EXPECT_EQ(preview->item(0, 3)->text(), "gap_mm");
  EXPECT_EQ(preview->item(0, 4)->text(), "0.3");
  EXPECT_EQ(preview->item(0, 5)->text(), "0.8");
  EXPECT_EQ(preview->item(1, 2)->text(), "new");
  EXPECT_EQ(seams().size(), before) << "nothing is taken yet";
  ASSERT_TRUE(importButton(*dialog)->isEnabled());
  const int steps = window->document().undo().count();
  UserActions(*window).click(importButton(*dialog));
  DeskTest::settle();
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  ASSERT_EQ(seams().size(), before + 1);
  EXPECT_EQ(seams()[0].gap_mm, 0.8);
  EXPECT_EQ(window->currentPage(), DeskPage::seams);
  window->document().undo().undo();
  EXPECT_EQ(seams().size(), before);
  EXPECT_EQ(seams()[0].gap_mm, 0.3);
}

TEST_F(ListImportTest, ARefusedCellKeepsTheButtonOffUntilItsRowIsLeftOut) {
  SeamImportDialog* dialog = opened(file("list.csv", "weldment,id,gap_mm\nBD,S01,wide\nBD,S02,0.7\n"));
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(importButton(*dialog)->isEnabled());
  QTableWidget* preview = table(*dialog, "Preview");
  EXPECT_EQ(preview->item(0, 2)->text(), "refused");
  EXPECT_EQ(preview->item(0, 4)->text(), "\"wide\"");
  QTest::keyClick(dialog, Qt::Key_Return);
  QApplication::processEvents();
  EXPECT_EQ(seams()[1].gap_mm, 0.3) << "Enter doesn't get round it";
  ASSERT_TRUE(dialog->isVisible());
  dialog->findChild<QCheckBox*>()->click();
  settle(*dialog);
  ASSERT_TRUE(importButton(*dialog)->isEnabled());
  UserActions(*window).click(importButton(*dialog));
  EXPECT_EQ(seams()[0].gap_mm, 0.3);
  EXPECT_EQ(seams()[1].gap_mm, 0.7);
}

TEST_F(ListImportTest, AColumnIsReadAsAPersonSaysAndTheHeadingIsRemembered) {
  const QString path = file("list.csv", "weldment,id,Slot\nBD,S01,0.9\n");
  SeamImportDialog* dialog = opened(path);
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(importButton(*dialog)->isEnabled()) << "an unknown heading changes nothing";
  auto* choice = qobject_cast<QComboBox*>(table(*dialog, "Columns")->cellWidget(2, 2));
  ASSERT_NE(choice, nullptr);
  EXPECT_EQ(choice->currentText(), "not read");
  choice->setCurrentIndex(choice->findData("gap_mm"));
  emit choice->activated(choice->currentIndex());
  settle(*dialog);
  ASSERT_TRUE(importButton(*dialog)->isEnabled());
  UserActions(*window).click(importButton(*dialog));
  QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_EQ(seams()[0].gap_mm, 0.9);
  SeamImportDialog* again = opened(file("next.csv", "weldment,id,Slot\nBD,S02,0.6\n"));
  ASSERT_NE(again, nullptr);
  ASSERT_TRUE(again->list());
  EXPECT_EQ(again->list()->mapping.columns[2].key, "gap_mm");
  again->reject();
}

TEST_F(ListImportTest, AFileThatIsNoListSaysWhy) {
  SeamImportDialog* dialog = opened(file("list.xlsx", "%PDF-1.7\n"));
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(dialog->list());
  EXPECT_FALSE(importButton(*dialog)->isEnabled());
  bool says = false;
  for (const QLabel* label : dialog->findChildren<QLabel*>()) says = says || label->text().contains("a PDF");
  EXPECT_TRUE(says);
  dialog->reject();
}

TEST_F(ListImportTest, AListIsToldFromAnArcLogByItsHeads) {
  EXPECT_TRUE(is_seam_list(file("a.csv", "id;joint;leg\nS1;tee;6\n")));
  EXPECT_FALSE(
      is_seam_list(file("b.csv", "time_s,weldment,seam,pass,robot,current_A,voltage_V\n0,BD,S1,1,R1,5,6\n")));
  EXPECT_FALSE(is_seam_list(demo_log()));
  EXPECT_TRUE(is_seam_list("some.XLSX"));
}

TEST_F(ListImportTest, ADroppedListOpensTheDialog) {
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(file("list.csv", "weldment,id,leg_mm\nBD,S02,5\n"))});
  // A drag enters before it drops.
  QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &enter);
  QDropEvent drop(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &drop);
  auto* dialog = window->findChild<SeamImportDialog*>();
  ASSERT_NE(dialog, nullptr);
  settle(*dialog);
  dialog->reject();
}

}  // namespace
}  // namespace seamtakt::desk
