#include "app/handbook_window.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QPushButton>
#include <QShortcut>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "widgets/plain_text.hpp"

namespace seamtakt::desk {

namespace {

/// Where handbooks may be, below the folder of the program.
QStringList places(const QString& language) {
  const QDir programs(QCoreApplication::applicationDirPath());
  return {QDir::cleanPath(programs.filePath("../share/doc/seamtakt/handbook/" + language)),
          QDir::cleanPath(programs.filePath("../packaging/handbook/" + language))};
}

}  // namespace

QString HandbookWindow::firstPage(const QString& language) {
  for (const QString& folder : places(language))
    if (const QString page = folder + "/index.html"; QFileInfo::exists(page)) return page;
  return {};
}

HandbookWindow* HandbookWindow::open(QWidget* parent) {
  auto* window = parent->findChild<HandbookWindow*>();
  const QString page = firstPage(tr("en", "the language of the handbook: en or de"));
  if (page.isEmpty()) {
    message_box(parent, QMessageBox::Information, tr("Handbook"),
                tr("The handbook isn't installed: it was looked for in %1.")
                    .arg(places(QStringLiteral("en")).first()));
    return nullptr;
  }
  if (!window) window = new HandbookWindow(parent);
  window->browser().setSource(QUrl::fromLocalFile(page));
  window->show();
  window->raise();
  window->activateWindow();
  window->browser().setFocus(Qt::OtherFocusReason);
  return window;
}

HandbookWindow::HandbookWindow(QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Handbook"));
  resize(860, 760);
  auto* column = new QVBoxLayout(this);
  browser_ = new QTextBrowser(this);
  browser_->setAccessibleName(tr("Handbook"));
  browser_->setOpenExternalLinks(false);
  auto* row = new QHBoxLayout;
  const auto add = [&](const QString& text, auto slot) {
    auto* button = new QPushButton(text, this);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, browser_, slot);
    row->addWidget(button);
    return button;
  };
  QPushButton* back = add(tr("&Back"), &QTextBrowser::backward);
  add(tr("&Contents"), &QTextBrowser::home);
  back->setEnabled(false);
  connect(browser_, &QTextBrowser::backwardAvailable, back, &QWidget::setEnabled);
  row->addStretch(1);
  auto* close = new QPushButton(tr("C&lose"), this);
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::close);
  row->addWidget(close);
  column->addLayout(row);
  column->addWidget(browser_, 1);
  connect(new QShortcut(QKeySequence(Qt::ALT | Qt::Key_Left), this), &QShortcut::activated, browser_,
          &QTextBrowser::backward);
}

}  // namespace seamtakt::desk
