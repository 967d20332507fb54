#include "widgets/plain_text.hpp"

#include <QApplication>
#include <QEvent>
#include <QImage>
#include <QLabel>

namespace seamtakt::desk {

namespace {

/// Tooltips are labels too. Each is polished before it lays out its text for the first time.
class PlainTextOnly : public QObject {
 public:
  using QObject::QObject;
  bool eventFilter(QObject* object, QEvent* event) override {
    if (event->type() == QEvent::Polish)
      if (auto* label = qobject_cast<QLabel*>(object); label && label->textFormat() == Qt::AutoText)
        label->setTextFormat(Qt::PlainText);
    return QObject::eventFilter(object, event);
  }
};

}  // namespace

void show_plain_text_only() {
  static const QString name = QStringLiteral("plain text only");
  if (qApp->findChild<QObject*>(name, Qt::FindDirectChildrenOnly)) return;
  auto* only = new PlainTextOnly(qApp);
  only->setObjectName(name);
  qApp->installEventFilter(only);
}

QVariant no_picture() {
  QImage empty(1, 1, QImage::Format_ARGB32_Premultiplied);
  empty.fill(Qt::transparent);
  return empty;
}

QMessageBox::StandardButton message_box(QWidget* parent, QMessageBox::Icon icon, const QString& title,
                                        const QString& text, QMessageBox::StandardButtons buttons) {
  QMessageBox box(icon, title, {}, buttons, parent);
  box.setTextFormat(Qt::PlainText);
  box.setText(text);
  return static_cast<QMessageBox::StandardButton>(box.exec());
}

QString menu_text(QString text) {
  return text.replace('&', QStringLiteral("&&"));
}

QString title_text(QString text) {
  return text.replace(QStringLiteral("[*]"), QStringLiteral("[*][*]"));
}

}  // namespace seamtakt::desk
