// The window's drawings: seams out of a model, looked over before they are taken.
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

#include "app/drawing_dialog.hpp"
#include "app/main_window.hpp"

namespace seamtakt::desk {

void MainWindow::askForDrawing() {
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Import drawing"), QFileInfo(document_.path()).path(),
                                   tr("Drawings (*.step *.stp *.p21);;All files (*)"));
  if (!path.isEmpty()) importDrawing(path);
}

void MainWindow::importDrawing(const QString& path) {
  // As the plan keeps it: beside the plan it stays found where both are copied.
  const QString kept =
      document_.path().isEmpty()
          ? QFileInfo(path).fileName()
          : QFileInfo(document_.path()).dir().relativeFilePath(QFileInfo(path).absoluteFilePath());
  auto* dialog = new DrawingDialog(document_.plan(), path, kept, this);
  ask(dialog, [this, dialog] { takeDrawing(dialog->drawing()); });
}

/// All seams and solids are one step of undo.
void MainWindow::takeDrawing(const ReadDrawingPtr& drawing) {
  if (!drawing) return;
  if (drawing->plan != document_.plan()) return say(tr("The plan has changed meanwhile: nothing is done."));
  document_.endTyping();
  const auto refusal =
      document_.edit(tr("Import drawing"), {}, [&](Plan& plan) { plan = drawing->import.plan; });
  if (refusal) return say(refusal->text);
  using State = DrawingCandidate::State;
  const auto count = [&](State state) { return QString::number(drawing->import.count(state)); };
  showPage(DeskPage::seams);
  say(tr("Imported: %1 seams new, %2 moved; %3 lack something and weren't taken.")
          .arg(count(State::added), count(State::moved), count(State::open)));
}

}  // namespace seamtakt::desk
