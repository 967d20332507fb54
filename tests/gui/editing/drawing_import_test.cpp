// A drawing on the desk: looked at before it is taken, taken as one step, compared when it comes again. The
// program that reads STEP files is a script here that prints a result of it: the real one is tested where
// OpenCASCADE is (tests/drawing).
#include <QComboBox>
#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QTableWidget>
#include <QTemporaryDir>
#include <cstdlib>

#include "app/drawing_dialog.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/axonometric_view.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {
namespace {

enum Column { seam, part, other_part, joint, length, size, state };

/// The first side of stiffened.json that isn't left out: the two before it are ends of a plate.
constexpr int first_taken = 2;

class DrawingImportAtDesk : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    useResult("stiffened.json");
    window->document().start(starting_plan());
    DeskTest::settle();
  }
  void TearDown() override {
    unsetenv("SEAMTAKT_DRAWING_PROGRAM");
    DeskTest::TearDown();
  }
  QString file(const QString& name, const QByteArray& bytes) {
    QFile made(folder_.filePath(name));
    EXPECT_TRUE(made.open(QIODevice::WriteOnly));
    made.write(bytes);
    return made.fileName();
  }
  void useProgram(const QByteArray& script) {
    const QString program = file("program.sh", "#!/bin/sh\n" + script + "\n");
    QFile::setPermissions(program, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    setenv("SEAMTAKT_DRAWING_PROGRAM", program.toUtf8().constData(), 1);
  }
  void useResult(const std::string& name) {
    useProgram("cat '" + QByteArray::fromStdString(source_path("/tests/data/drawing/" + name)) + "'");
  }
  DrawingDialog* opened(const QString& name = "frame.step") {
    window->importDrawing(file(name, "ISO-10303-21;"));
    DrawingDialog* dialog = shown();
    if (dialog) settle(*dialog);
    return dialog;
  }
  DrawingDialog* shown() const {
    for (DrawingDialog* each : window->findChildren<DrawingDialog*>())
      if (each->isVisible()) return each;
    return nullptr;
  }
  static void settle(DrawingDialog& dialog) {
    dialog.reading().wait();
    QApplication::processEvents();
  }
  template <class Field>
  static Field* field(DrawingDialog& dialog, const QString& name) {
    for (Field* each : dialog.findChildren<Field*>())
      if (each->accessibleName() == name) return each;
    return nullptr;
  }
  static bool can_import(DrawingDialog& dialog) { return field<QPushButton>(dialog, "Import")->isEnabled(); }
  static QString texts(DrawingDialog& dialog) {
    QStringList texts;
    for (QLabel* label : dialog.findChildren<QLabel*>())
      if (label->isVisible()) texts << label->text();
    return texts.join('\n');
  }
  static QString cell(DrawingDialog& dialog, int row, int column) {
    return dialog.sides().item(row, column)->text().simplified();
  }
  void import(DrawingDialog& dialog) {
    ASSERT_TRUE(can_import(dialog)) << texts(dialog).toStdString();
    UserActions(*window).press(dialog, "Import");
    DeskTest::settle();
  }
  void chooseScheduleOfAll(DrawingDialog& dialog) {
    field<QComboBox>(dialog, "Schedule of the others")->setCurrentText("F1");
    settle(dialog);
  }
  const Plan& plan() const { return *window->document().plan(); }

  QTemporaryDir folder_;
};

TEST_F(DrawingImportAtDesk, WhatLacksSomethingIsListedWithItsReasonAndNotTaken) {
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  ASSERT_EQ(dialog->sides().rowCount(), 11);
  EXPECT_EQ(cell(*dialog, first_taken, state), "lacks schedule")
      << "the starting plan's only schedule states no use";
  EXPECT_EQ(cell(*dialog, first_taken, part), "assembly/flange");
  EXPECT_EQ(cell(*dialog, first_taken, size), "throat 4 mm");
  EXPECT_TRUE(texts(*dialog).contains("0 new, 0 moved, 0 unchanged, 7 lack something, 4 left out, 0 lost"))
      << texts(*dialog).toStdString();
  field<QComboBox>(*dialog, "Base metal")->setCurrentIndex(0);
  settle(*dialog);
  EXPECT_EQ(cell(*dialog, first_taken, state), "lacks metal, schedule");
  dialog->reject();
}

TEST_F(DrawingImportAtDesk, AcceptedSidesBecomeSeamsInOneStepOfUndo) {
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  chooseScheduleOfAll(*dialog);
  const int steps = window->document().undo().count();
  const std::string before = write_plan(plan());
  import(*dialog);
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  const Weldment& weldment = plan().weldments.at(0);
  EXPECT_EQ(weldment.id, "W1") << "the only one, which had no seams";
  ASSERT_EQ(weldment.seams.size(), 7u);
  EXPECT_EQ(weldment.plates.size(), 3u);
  ASSERT_TRUE(weldment.seams[0].drawing);
  EXPECT_EQ(weldment.seams[0].drawing->parts, (std::vector<std::string>{"assembly/flange", "assembly/web"}));
  ASSERT_TRUE(weldment.drawing_file);
  EXPECT_EQ(weldment.drawing_file->path, "frame.step");
  EXPECT_EQ(window->currentPage(), DeskPage::seams);
  window->document().undo().undo();
  EXPECT_EQ(write_plan(plan()), before);
}

TEST_F(DrawingImportAtDesk, ASideIsChosenInTheListAndInThePicture) {
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  AxonometricView& picture = dialog->picture();
  EXPECT_EQ(picture.scene().seam_count(), 11u);
  EXPECT_EQ(picture.scene().solids().size(), 3u);
  EXPECT_FALSE(picture.scene().is_guess());
  dialog->sides().setCurrentCell(5, 0);
  ASSERT_EQ(picture.labelTexts().size(), 1);
  EXPECT_TRUE(picture.labelTexts()[0].startsWith(cell(*dialog, 5, seam)))
      << picture.labelTexts()[0].toStdString();
  QTest::mouseClick(&picture, Qt::LeftButton, Qt::NoModifier, picture.pointOf(0).toPoint());
  QApplication::processEvents();
  const int row = dialog->sides().currentRow();
  EXPECT_NE(row, 5) << "a click on a bead chooses its row";
  EXPECT_TRUE(picture.labelTexts()[0].startsWith(cell(*dialog, row, seam)));
  dialog->reject();
}

TEST_F(DrawingImportAtDesk, ASideIsTakenOrLeftOutByItsCheck) {
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  chooseScheduleOfAll(*dialog);
  int end = 0;
  while (end < dialog->sides().rowCount() && cell(*dialog, end, state) != "left out: end of a plate, flush")
    ++end;
  ASSERT_LT(end, dialog->sides().rowCount());
  EXPECT_EQ(dialog->sides().item(end, seam)->checkState(), Qt::Unchecked) << "off by default";
  dialog->sides().item(first_taken, seam)->setCheckState(Qt::Unchecked);
  settle(*dialog);
  EXPECT_EQ(cell(*dialog, first_taken, state), "left out: not wanted");
  dialog->sides().item(end, seam)->setCheckState(Qt::Checked);
  settle(*dialog);
  EXPECT_TRUE(texts(*dialog).contains("4 left out")) << texts(*dialog).toStdString();
  EXPECT_NE(cell(*dialog, end, state), "left out: end of a plate, flush");
  dialog->reject();
}

TEST_F(DrawingImportAtDesk, AFileThatComesAgainIsComparedBeforeAnythingIsTaken) {
  DrawingDialog* first = opened();
  ASSERT_NE(first, nullptr);
  chooseScheduleOfAll(*first);
  import(*first);
  DrawingDialog* same = opened();
  ASSERT_NE(same, nullptr);
  EXPECT_TRUE(texts(*same).contains("7 unchanged")) << texts(*same).toStdString();
  EXPECT_TRUE(texts(*same).contains("the same as before"));
  EXPECT_FALSE(can_import(*same));
  same->reject();
  QByteArray changed =
      QByteArray::fromStdString(read_file(source_path("/tests/data/drawing/stiffened.json"), 1u << 20));
  const qsizetype at = changed.indexOf("[[0, 56, 12]");
  ASSERT_GE(at, 0);
  changed.insert(at + 2, "1");
  changed.replace("\"sha256\": \"", "\"sha256\": \"0");
  useProgram("cat '" + file("changed.json", changed).toUtf8() + "'");
  DrawingDialog* again = opened();
  ASSERT_NE(again, nullptr);
  EXPECT_TRUE(texts(*again).contains("1 moved, 6 unchanged")) << texts(*again).toStdString();
  EXPECT_TRUE(texts(*again).contains("The file has changed."));
  const std::vector<Point_mm> before = plan().weldments[0].seams[0].path_mm;
  import(*again);
  EXPECT_NE(plan().weldments[0].seams[0].path_mm, before);
}

TEST_F(DrawingImportAtDesk, WithoutTheProgramTheDialogSaysWhatToInstall) {
  setenv("SEAMTAKT_DRAWING_PROGRAM", folder_.filePath("absent").toUtf8().constData(), 1);
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  EXPECT_TRUE(texts(*dialog).contains("packaging/setup drawing")) << texts(*dialog).toStdString();
  EXPECT_FALSE(can_import(*dialog));
  dialog->reject();
}

TEST_F(DrawingImportAtDesk, ARefusalOfTheProgramOrOfAnEntryIsShownInOneLine) {
  DrawingDialog* dialog = opened();
  ASSERT_NE(dialog, nullptr);
  chooseScheduleOfAll(*dialog);
  QLineEdit* throat = field<QLineEdit>(*dialog, "Throat of fillets");
  throat->setText("half");
  settle(*dialog);
  EXPECT_TRUE(texts(*dialog).contains("\"half\"")) << texts(*dialog).toStdString();
  EXPECT_FALSE(can_import(*dialog));
  throat->setText("0.7t");
  settle(*dialog);
  EXPECT_EQ(cell(*dialog, first_taken, size), "throat 6 mm");
  EXPECT_TRUE(can_import(*dialog));
  dialog->reject();
  useProgram("echo 'frame.step: found only surfaces, expected solid parts' >&2; exit 2");
  DrawingDialog* refused = opened();
  ASSERT_NE(refused, nullptr);
  EXPECT_TRUE(texts(*refused).contains("only surfaces")) << texts(*refused).toStdString();
  refused->reject();
}

TEST_F(DrawingImportAtDesk, CancellingKillsTheProgram) {
  useProgram("exec sleep 60");
  window->importDrawing(file("frame.step", ""));
  DrawingDialog* dialog = shown();
  ASSERT_NE(dialog, nullptr);
  EXPECT_TRUE(dialog->reading().isRunning());
  QElapsedTimer clock;
  clock.start();
  QTest::keyClick(dialog, Qt::Key_Escape);
  QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  QApplication::processEvents();
  EXPECT_EQ(shown(), nullptr);
  EXPECT_LT(clock.elapsed(), 20'000);
  EXPECT_TRUE(plan().weldments.at(0).seams.empty());
}

/// What the program prints of a base with 19 ribs that stand on it, each with a weld on both sides.
QByteArray twenty_plates() {
  const QString plate = QStringLiteral(
      R"({"name": "%1", "path": "frame/%1", "form": "plate", "thickness_mm": %2, "is_hardware": false,
          "plate": {"origin_mm": [%3, 50, 12], "u": %4, "v": %5, "thickness_mm": %2, "holes_mm": [],
                    "outline_mm": [[0, 0], [300, 0], [300, 100], [0, 100]]}})");
  const QString side = QStringLiteral(
      R"({"id": "%1", "path_mm": [[%2, 50, 12], [%2, 350, 12]], "closed": false, "length_mm": 300,
          "dihedral_deg": [90, 90, 90], "thickness_mm": [12, 8], "gap_mm": [0, 0], "outward": [1, 0, 0],
          "position": "PB", "flags": []})");
  QStringList parts = {plate.arg("base", "12", "0", "[1, 0, 0]", "[0, 1, 0]")}, joints;
  for (int i = 1; i <= 19; ++i) {
    parts << plate.arg(QStringLiteral("rib%1").arg(i), "8", QString::number(50 * i), "[0, 1, 0]",
                       "[0, 0, 1]");
    joints << QStringLiteral(R"({"id": "J%1", "part_a": 0, "part_b": %1, "type": "tee", "sides": [%2, %3]})")
                  .arg(QString::number(i), side.arg("1", QString::number(50 * i)),
                       side.arg("2", QString::number(50 * i + 8)));
  }
  return QStringLiteral(
             R"({"format": "seamtakt-drawing", "version": 1, "gap_mm": 1, "up": [0, 0, 1], "notes": [],
             "source": {"path": "frame.step", "sha256": "00", "schema": "AP214", "unit": "mm"},
             "parts": [%1], "joints": [%2]})")
      .arg(parts.join(','), joints.join(','))
      .toUtf8();
}

TEST_F(DrawingImportAtDesk, FromTwentyPlatesToSeamsSchedulesAndACycleTakesAtMostTwentyFiveActions) {
  useProgram("cat '" + file("frame.json", twenty_plates()).toUtf8() + "'");
  const QString path = file("frame.step", "ISO-10303-21;");
  UserActions by(*window);
  int drops = 0;
  by.key(Qt::Key_N, Qt::ControlModifier);
  QMimeData mime;
  mime.setUrls({QUrl::fromLocalFile(path)});
  QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &enter);
  QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &drop);
  ++drops;
  DrawingDialog* dialog = shown();
  ASSERT_NE(dialog, nullptr);
  settle(*dialog);
  // Into a list by the tabulator's place, then its letter: a list takes what is typed.
  const auto choose = [&](const char* name, const QString& typed) {
    field<QComboBox>(*dialog, name)->setFocus();
    ++by.clicks;
    by.type(typed);
    settle(*dialog);
  };
  choose("Up", "+Z");
  choose("Schedule of the others", "F1");
  EXPECT_TRUE(texts(*dialog).contains("38 new")) << texts(*dialog).toStdString();
  QDir().mkpath(QString::fromStdString(build_path("/screenshots")));
  EXPECT_TRUE(dialog->grab().save(QString::fromStdString(build_path("/screenshots/import-drawing.png"))));
  by.press(*dialog, "Import");
  DeskTest::settle();
  bring_to_front(*window);
  by.clicks += 2;  // the menu and its line
  for (QAction* action : window->findChildren<QAction*>())
    if (action->text() == "Add a starter &cell") action->trigger();
  DeskTest::settle();
  ASSERT_EQ(plan().weldments.size(), 1u);
  ASSERT_EQ(plan().weldments[0].seams.size(), 38u);
  EXPECT_EQ(plan().weldments[0].plates.size(), 20u);
  for (const Seam& each : plan().weldments[0].seams) {
    EXPECT_EQ(each.throat_mm, 4);
    EXPECT_EQ(each.schedules, std::vector<std::string>{"F1"});
    EXPECT_EQ(each.position, "PB");
    ASSERT_EQ(each.path_mm.size(), 2u);
  }
  ASSERT_TRUE(window->evaluator().results());
  ASSERT_FALSE(window->evaluator().results()->cycles.empty());
  EXPECT_LE(by.keys + by.clicks + drops, 25);
  by.report("from a STEP file of 20 plates to seams, schedules and a cycle");
}

}  // namespace
}  // namespace seamtakt::desk
