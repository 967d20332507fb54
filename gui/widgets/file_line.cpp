#include "widgets/file_line.hpp"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

QLineEdit* add_file_line(QWidget& form, QBoxLayout& column, const QString& name, const QString& hint,
                         const QString& filter, const std::function<QString(const QString&)>& chosen) {
  auto* caption = new QLabel(name, &form);
  auto* line = new QLineEdit(&form);
  line->setAccessibleName(name);
  line->setPlaceholderText(hint);
  caption->setBuddy(line);
  QPushButton* choose = tool_button(QObject::tr("File …"), QObject::tr("Chooses a file"), {}, &form);
  choose->setAutoDefault(false);
  QObject::connect(choose, &QPushButton::clicked, line, [line, name, filter, chosen, form = &form] {
    const QString path = QFileDialog::getOpenFileName(form, name, {}, filter);
    if (!path.isEmpty()) line->setText(chosen ? chosen(path) : path);
  });
  auto* row = new QHBoxLayout;
  row->addWidget(line, 1);
  row->addWidget(choose);
  column.addWidget(caption);
  column.addLayout(row);
  return line;
}

}  // namespace seamtakt::desk
