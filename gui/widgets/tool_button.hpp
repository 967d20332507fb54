#pragma once

#include <QKeySequence>
#include <QPushButton>

namespace seamtakt::desk {

/// A button that says what it does in `tip`, with its key: the key clicks it while its page is in front.
QPushButton* tool_button(const QString& text, const QString& tip, const QKeySequence& keys, QWidget* parent);

}  // namespace seamtakt::desk
