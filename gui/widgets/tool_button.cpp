#include "widgets/tool_button.hpp"

#include <QShortcut>

namespace seamtakt::desk {

QPushButton* tool_button(const QString& text, const QString& tip, const QKeySequence& keys, QWidget* parent) {
  auto* made = new QPushButton(text, parent);
  made->setAccessibleName(text);
  if (keys.isEmpty()) {
    made->setToolTip(tip);
    return made;
  }
  made->setToolTip(tip + QStringLiteral(" (") + keys.toString(QKeySequence::NativeText) +
                   QStringLiteral(")"));
  // A button's own shortcut would act after the animation of a click.
  QObject::connect(new QShortcut(keys, made), &QShortcut::activated, made, &QPushButton::click);
  return made;
}

}  // namespace seamtakt::desk
