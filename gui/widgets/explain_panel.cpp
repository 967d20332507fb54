#include "widgets/explain_panel.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QResizeEvent>
#include <QTextBrowser>
#include <QToolButton>
#include <algorithm>

#include "document/plan_address.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/state_html.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

/// Shows text alone: whatever it says, no file and no address is opened for it.
class ExplanationBrowser : public QTextBrowser {
 public:
  using QTextBrowser::QTextBrowser;

 protected:
  QVariant loadResource(int, const QUrl&) override { return no_picture(); }
};

}  // namespace

ExplainPanel::ExplainPanel(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Explain"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(unit_px * 2, unit_px, unit_px, unit_px);
  auto* head = new QHBoxLayout;
  auto* title = new QLabel(tr("Explain"), this);
  title->setProperty("role", "title");
  auto* close = new QToolButton(this);
  close->setText(QStringLiteral("✕"));
  close->setAccessibleName(tr("Close Explain"));
  close->setToolTip(tr("Close (F1)"));
  close->setProperty("flat", true);
  connect(close, &QToolButton::clicked, this, &ExplainPanel::closed);
  head->addWidget(title, 1);
  head->addWidget(close);
  browser_ = new ExplanationBrowser(this);
  browser_->setAccessibleName(tr("Explanation"));
  browser_->setOpenLinks(false);
  column->addLayout(head);
  column->addWidget(browser_, 1);
  setMinimumWidth(240);
  render();
}

void ExplainPanel::show(const QString& place, const QString& key) {
  if (place == place_ && key == key_ && !made_) return;
  place_ = place;
  key_ = key;
  made_ = nullptr;
  if (isVisible()) render();
}

void ExplainPanel::showMade(const std::function<QString(int)>& html) {
  made_ = html;
  if (isVisible()) render();
}

void ExplainPanel::setResults(const ResultsPtr& results) {
  results_ = results;
  if (isVisible()) render();
}

void ExplainPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  render();
}

void ExplainPanel::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (isVisible() && event->size().width() != event->oldSize().width()) render();
}

QString ExplainPanel::text() const {
  return browser_->toPlainText();
}

void ExplainPanel::render() {
  if (made_) return browser_->setHtml(made_(mostLetters()));
  // A place that the plan hasn't got any more (removed, renamed, another plan) explains nothing.
  if (place_.isEmpty() || !results_ || address_of_finding(*results_->plan, place_.toStdString()).empty()) {
    browser_->setHtml(QStringLiteral("<p>%1</p>")
                          .arg(tr("Choose a derived value, such as a leg obtained or a cooling time: here "
                                  "stand its formula, the numbers put in, "
                                  "the source and where it holds.")));
    return;
  }
  if (key_ == QStringLiteral("mark")) return browser_->setHtml(state_html(*results_, place_));
  browser_->setHtml(explanation_html(*results_->plan, place_, key_, mostLetters()));
}

/// Digits and signs are about so wide; the formula's margins take three.
int ExplainPanel::mostLetters() const {
  const int letter_px = std::max(1, fontMetrics().horizontalAdvance(QStringLiteral("0123456789")) / 10);
  return std::max(24, browser_->viewport()->width() / letter_px - 3);
}

}  // namespace seamtakt::desk
