#include "pages/findings_page.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QSortFilterProxyModel>
#include <QVBoxLayout>

#include "document/shown_text.hpp"
#include "models/tables/finding_model.hpp"
#include "models/words/place_text.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

FindingsPage::FindingsPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::seams, tr("Findings"),
           tr("A finding is accepted by a person, with name, day and reason; it stays in the plan and in its "
              "reports."),
           parent) {
  findings().hide();
  model_ = new FindingModel(this);
  table_ = new GridView(*model_, tr("Findings"), this);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setRoomTaker(2);
  table_->keepColumns(QStringLiteral("findings"));
  setWhat(table_);
  setWhy(makeDetail());
  setShares(3, 1);
  makeTools();
  connect(table_, &GridView::rowChosen, this, &FindingsPage::showFinding);
  connect(table_, &GridView::opened, this, &FindingsPage::openRow);
  connect(&desk_.document, &Document::replaced, table_, [this] { table_->selectRow(-1); });
  showFinding(-1);
  showFirstStep();
}

void FindingsPage::showFirstStep() {
  setEmptyStep(desk_.document.isEmpty() ? tr("Findings come from a plan: open the demo to see some.")
                                        : QString());
}

void FindingsPage::makeTools() {
  severity_ = new QComboBox(this);
  severity_->setAccessibleName(tr("Severity shown"));
  severity_->addItem(tr("All"), QString());
  for (const Severity severity : {Severity::fail, Severity::warn, Severity::note})
    severity_->addItem(severity_word(severity), severity_word(severity));
  words_ = new QLineEdit(this);
  words_->setPlaceholderText(tr("Words, seam or rule"));
  words_->setAccessibleName(tr("Filter findings"));
  words_->setClearButtonEnabled(true);
  words_->setMaximumWidth(280);
  table_->setFilterBox(words_);
  grouped_ = new QCheckBox(tr("By cause"), this);
  grouped_->setAccessibleName(grouped_->text());
  grouped_->setToolTip(tr("Findings of one rule are one row; Enter opens it"));
  connect(grouped_, &QCheckBox::toggled, this, &FindingsPage::group);
  auto* hint = new QLabel(tr("Enter goes to the field"), this);
  hint->setProperty("role", "quiet");
  tools().addWidget(severity_);
  tools().addWidget(words_, 1);
  tools().addWidget(grouped_);
  tools().addStretch(1);
  tools().addWidget(hint);
  connect(severity_, &QComboBox::currentIndexChanged, this, &FindingsPage::filter);
  connect(words_, &QLineEdit::textChanged, this, &FindingsPage::filter);
}

/// Groups keep the order of their findings: they aren't sorted by a column.
void FindingsPage::group(bool grouped) {
  if (grouped) table_->sortByColumn(-1, Qt::AscendingOrder);
  table_->setSortingEnabled(!grouped);
  model_->setGrouped(grouped);
  table_->fitColumns();
  showFinding(table_->currentRow());
}

void FindingsPage::openRow(int row) {
  if (!model_->isGroup(row))
    return desk_.selection.goTo(model_->target(row).address, model_->target(row).key);
  model_->toggle(row);
  table_->selectRow(row);
}

void FindingsPage::chooseAt(const QString& place) {
  words_->clear();
  severity_->setCurrentIndex(0);
  const int row = model_->rowAt(place.toStdString());
  if (row < 0) return;
  if (model_->isGroup(row)) {
    model_->toggle(row);
    table_->selectRow(model_->rowAt(place.toStdString()));
  } else {
    table_->selectRow(row);
  }
  table_->setFocus(Qt::OtherFocusReason);
}

void FindingsPage::filter() {
  const bool by_words = !words_->text().isEmpty();
  table_->proxy().setFilterKeyColumn(by_words ? -1 : 0);
  table_->proxy().setFilterFixedString(by_words ? words_->text() : severity_->currentData().toString());
}

QWidget* FindingsPage::makeDetail() {
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(unit_px * 2, 0, 0, 0);
  const auto label = [&](const char* role) {
    auto* made = new QLabel(side);
    made->setWordWrap(true);
    made->setTextFormat(Qt::PlainText);
    if (*role) made->setProperty("role", role);
    column->addWidget(made);
    return made;
  };
  figures_ = label("figure");
  text_ = label("");
  source_ = label("quiet");
  for (QLabel* selectable : {text_, source_}) selectable->setTextInteractionFlags(Qt::TextSelectableByMouse);
  text_->setAccessibleName(tr("Finding"));
  source_->setAccessibleName(tr("Source"));
  jump_ = new QPushButton(tr("Go to the field"), side);
  jump_->setAccessibleName(jump_->text());
  connect(jump_, &QPushButton::clicked, this, [this] {
    if (const int row = table_->currentRow(); row >= 0) emit table_->opened(row);
  });
  column->addWidget(jump_, 0, Qt::AlignLeft);
  column->addSpacing(unit_px * 2);
  auto* title = new QLabel(tr("Accept this finding"), side);
  title->setProperty("role", "section");
  column->addWidget(title);
  const auto line = [&](const QString& name, const QString& hint) {
    auto* caption = new QLabel(name, side);
    caption->setProperty("role", "quiet");
    auto* made = new QLineEdit(side);
    made->setAccessibleName(name);
    made->setPlaceholderText(hint);
    caption->setBuddy(made);
    column->addWidget(caption);
    column->addWidget(made);
    connect(made, &QLineEdit::returnPressed, this, &FindingsPage::accept);
    return made;
  };
  reason_ = line(tr("Reason"), tr("why the limit may be passed here"));
  by_ = line(tr("Accepted by"), tr("name"));
  by_->setText(QSettings().value("accepted_by").toString());
  refusal_ = label("refusal");
  accept_ = new QPushButton(tr("Accept with this reason"), side);
  accept_->setAccessibleName(accept_->text());
  connect(accept_, &QPushButton::clicked, this, &FindingsPage::accept);
  column->addWidget(accept_, 0, Qt::AlignLeft);
  column->addStretch(1);
  return side;
}

void FindingsPage::showFinding(int row) {
  const bool any = row >= 0 && row < model_->rowCount() && !model_->isGroup(row);
  for (QWidget* widget : {static_cast<QWidget*>(jump_), static_cast<QWidget*>(accept_),
                          static_cast<QWidget*>(reason_), static_cast<QWidget*>(by_)})
    widget->setEnabled(any);
  refusal_->clear();
  if (!any) {
    figures_->clear();
    text_->setText(tr("Choose a finding to see what it says."));
    source_->clear();
    return;
  }
  const Finding& finding = model_->finding(row);
  const UnitView& units = UnitView::shared();
  QString figures;
  if (finding.value && finding.limit)
    figures = tr("%1 against %2")
                  .arg(units.quantityText(*finding.value, finding.unit.c_str(), 4),
                       units.quantityText(*finding.limit, finding.unit.c_str(), 4));
  else if (finding.value)
    figures = units.quantityText(*finding.value, finding.unit.c_str(), 4);
  figures_->setText(figures);
  figures_->setVisible(!figures.isEmpty());
  text_->setText(shown_text(finding.sentence));
  source_->setText(tr("%1\nRule %2\nSource: %3")
                       .arg(place_text(finding.where), QString::fromStdString(finding.rule),
                            shown_source(finding.source)));
}

void FindingsPage::accept() {
  const int row = table_->currentRow();
  if (row < 0 || model_->isGroup(row)) return;
  const QString reason = reason_->text().trimmed(), by = by_->text().trimmed();
  if (reason.isEmpty() || by.isEmpty()) {
    refusal_->setText(tr("found nothing, expected a reason and a name"));
    (reason.isEmpty() ? reason_ : by_)->setFocus();
    return;
  }
  const Finding finding = model_->finding(row);
  if (acceptance_of(*desk_.document.plan(), finding))
    return refusal_->setText(tr("This finding is accepted already."));
  const auto refusal = desk_.document.edit(tr("Accept finding"), {}, [&](Plan& plan) {
    Acceptance accepted;
    accepted.rule = finding.rule;
    accepted.where = finding.where;
    accepted.by = by.toStdString();
    accepted.date = date_of_today();
    accepted.why = reason.toStdString();
    plan.accepted.push_back(std::move(accepted));
  });
  if (refusal) return refusal_->setText(refusal->text);
  QSettings().setValue("accepted_by", by);
  reason_->clear();
  emit message(tr("Accepted: %1").arg(place_text(finding.where)));
}

void FindingsPage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  findings().hide();
  showFirstStep();
  model_->setFindings(*results->plan, results->findings);
  table_->fitColumns();
  if (table_->currentRow() < 0 && model_->rowCount() > 0) table_->selectRow(0);
  showFinding(table_->currentRow());
}

}  // namespace seamtakt::desk
