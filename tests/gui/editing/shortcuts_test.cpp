#include <QAction>
#include <QKeySequence>
#include <QMap>
#include <QMenu>
#include <QMenuBar>
#include <QShortcut>

#include "pages/seams_page.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"

/// A key that edits text does nothing else, and a key of the desk edits no text.
namespace seamtakt::desk {
namespace {

/// Keys by which lines of text are edited on one platform or another (Qt's table of standard keys, read).
QList<QKeySequence> editing_keys() {
  QList<QKeySequence> keys;
  for (const auto standard :
       {QKeySequence::Copy, QKeySequence::Cut, QKeySequence::Paste, QKeySequence::SelectAll,
        QKeySequence::DeleteStartOfWord, QKeySequence::DeleteEndOfWord, QKeySequence::DeleteEndOfLine,
        QKeySequence::DeleteCompleteLine, QKeySequence::MoveToStartOfLine, QKeySequence::MoveToEndOfLine,
        QKeySequence::MoveToNextWord, QKeySequence::MoveToPreviousWord, QKeySequence::Backspace,
        QKeySequence::Delete})
    keys += QKeySequence::keyBindings(standard);
  for (const char* key : {"Ctrl+U", "Ctrl+K", "Ctrl+E", "Ctrl+H", "Ctrl+A", "Ctrl+C", "Ctrl+X", "Ctrl+V",
                          "Ctrl+Del", "Ctrl+Backspace", "Ctrl+Left", "Ctrl+Right", "Ctrl+Home", "Ctrl+End",
                          "Shift+Ins", "Ctrl+Ins", "Shift+Del"})
    keys << QKeySequence(QString::fromLatin1(key));
  return keys;
}

TEST_F(DeskTest, NoKeyOfTheDeskEditsText) {
  const QList<QKeySequence> editing = editing_keys();
  int seen = 0;
  const auto expect_free = [&](const QKeySequence& key, const QString& of) {
    if (key.isEmpty()) return;
    ++seen;
    EXPECT_FALSE(editing.contains(key)) << of.toStdString() << ": " << key.toString().toStdString();
  };
  for (QAction* action : window->findChildren<QAction*>())
    for (const QKeySequence& key : action->shortcuts()) expect_free(key, action->text());
  for (QAbstractButton* button : window->findChildren<QAbstractButton*>())
    expect_free(button->shortcut(), button->text());
  for (QShortcut* shortcut : window->findChildren<QShortcut*>()) expect_free(shortcut->key(), "shortcut");
  EXPECT_GT(seen, 20);
}

TEST_F(DeskTest, NoKeyOfTheDeskHasTwoMeaningsInTheMenus) {
  QMap<QString, QString> of;
  for (QMenu* menu : window->menuBar()->findChildren<QMenu*>())
    for (QAction* action : menu->actions())
      for (const QKeySequence& key : action->shortcuts()) {
        if (key.isEmpty()) continue;
        EXPECT_FALSE(of.contains(key.toString()))
            << key.toString().toStdString() << ": " << action->text().toStdString() << " and "
            << of.value(key.toString()).toStdString();
        of[key.toString()] = action->text();
      }
  EXPECT_GT(of.size(), 15);
}

TEST_F(DeskTest, TheKeyThatDeletesAWordRemovesNoSeam) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  const std::size_t seams = window->document().plan()->weldments[0].seams.size();
  FieldForm& form = page_of<SeamsPage>(*window, DeskPage::seams).form();
  ASSERT_TRUE(form.focusField("after"));
  actions.key(Qt::Key_Delete, Qt::ControlModifier);
  EXPECT_EQ(window->document().plan()->weldments[0].seams.size(), seams);
  page_of<SeamsPage>(*window, DeskPage::seams).table().setFocus();
  actions.key(Qt::Key_Delete, Qt::ControlModifier);
  EXPECT_EQ(window->document().plan()->weldments[0].seams.size(), seams);
}

}  // namespace
}  // namespace seamtakt::desk
