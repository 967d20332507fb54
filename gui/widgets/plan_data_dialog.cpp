#include "widgets/plan_data_dialog.hpp"

#include <algorithm>

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "document/plan_address.hpp"
#include "models/tables/grid_model.hpp"
#include "widgets/field_form.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

struct DataList {
  const char* pointer;
  const char* label;  ///< of the core's tables
};

constexpr DataList lists[] = {{"/base_metals", "base metals"},
                              {"/wires", "wires"},
                              {"/gases", "gases"},
                              {"/power_sources", "power sources"},
                              {"/qualifications", "qualifications"},
                              {"/instruments", "instruments"},
                              {"/cell/robots", "robots"},
                              {"/cell/orientations", "orientations"},
                              {"/cell/zones", "zones"},
                              {"/line/stages", "stages"}};
constexpr DataList objects[] = {
    {"/cell", "cell"}, {"/line", "line"}, {"/costs", "costs"}, {"/measuring", "measuring"}};

/// Nested objects of each kind of item, shown below its own fields.
std::vector<FieldGroup> groups_of(const std::string& pointer) {
  std::vector<FieldGroup> groups = {{PlanDataDialog::tr("Fields"), {}, {}}};
  if (pointer.starts_with("/cell/robots")) groups.push_back({core_label("loaded"), "loaded", {}});
  if (pointer.starts_with("/qualifications")) groups.push_back({core_label("tested weld"), "tested", {}});
  if (pointer == "/cell") {
    groups.push_back({core_label("torch service"), "torch_service", {}});
    groups.push_back({core_label("hand welding"), "manual", {}});
  }
  return groups;
}

}  // namespace

PlanDataDialog::PlanDataDialog(Document& document, QWidget* parent) : QDialog(parent), document_(document) {
  setWindowTitle(tr("Plan data"));
  setAccessibleName(tr("Plan data"));
  resize(900, 560);
  auto* row = new QHBoxLayout(this);
  auto* left = new QVBoxLayout;
  tree_ = new QTreeWidget(this);
  tree_->setHeaderHidden(true);
  tree_->setAccessibleName(tr("Plan data"));
  tree_->setMinimumWidth(220);
  duplicate_ = new QPushButton(tr("Duplicate"), this);
  remove_ = new QPushButton(tr("Remove"), this);
  for (QPushButton* button : {duplicate_, remove_}) {
    button->setAccessibleName(button->text());
    // Enter ends an entry of the form; it must not press the first button of the dialog as well.
    button->setAutoDefault(false);
  }
  refusal_ = new QLabel(this);
  refusal_->setProperty("role", "refusal");
  refusal_->setWordWrap(true);
  refusal_->setTextFormat(Qt::PlainText);
  left->addWidget(tree_, 1);
  left->addWidget(refusal_);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(duplicate_);
  buttons->addWidget(remove_);
  left->addLayout(buttons);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setAccessibleName(tr("Fields"));
  form_ = new FieldForm(document_, scroll);
  form_->setAccessibleName(tr("Fields"));
  scroll->setWidget(form_);
  row->addLayout(left);
  row->addWidget(scroll, 1);
  connect(tree_, &QTreeWidget::currentItemChanged, this, &PlanDataDialog::choose);
  connect(duplicate_, &QPushButton::clicked, this, &PlanDataDialog::duplicate);
  connect(remove_, &QPushButton::clicked, this, &PlanDataDialog::remove);
  connect(&document_, &Document::planChanged, this, &PlanDataDialog::fill);
  fill();
}

void PlanDataDialog::fill() {
  const Plan& plan = *document_.plan();
  std::string shown;
  std::vector<std::pair<QString, std::vector<std::pair<std::string, std::string>>>> branches;
  for (const DataList& list : lists) {
    auto items = items_of(plan, list.pointer);
    for (const auto& [pointer, id] : items) shown += pointer + "=" + id + ";";
    branches.emplace_back(core_label(list.label), std::move(items));
  }
  if (shown == shown_) return;
  const std::string before = chosen();
  shown_ = shown;
  const QSignalBlocker quiet(tree_);
  tree_->clear();
  QTreeWidgetItem* again = nullptr;
  const auto add = [&](QTreeWidgetItem* parent, const QString& text, const std::string& pointer) {
    auto* item = parent ? new QTreeWidgetItem(parent) : new QTreeWidgetItem(tree_);
    item->setText(0, text);
    item->setData(0, Qt::UserRole, QString::fromStdString(pointer));
    if (!pointer.empty() && pointer == before) again = item;
    return item;
  };
  for (const auto& [label, items] : branches) {
    if (items.empty()) continue;
    QTreeWidgetItem* branch = add(nullptr, label, {});
    for (const auto& [pointer, id] : items) add(branch, QString::fromStdString(id), pointer);
    branch->setExpanded(true);
  }
  for (const DataList& object : objects)
    if (has_nested(plan, {}, std::string_view(object.pointer).substr(1)))
      add(nullptr, core_label(object.label), object.pointer);
  tree_->setCurrentItem(again ? again
                        : tree_->topLevelItem(0) && tree_->topLevelItem(0)->childCount()
                            ? tree_->topLevelItem(0)->child(0)
                            : nullptr);
  choose();
}

std::string PlanDataDialog::chosen() const {
  const QTreeWidgetItem* item = tree_->currentItem();
  return item ? item->data(0, Qt::UserRole).toString().toStdString() : std::string();
}

void PlanDataDialog::choose() {
  const std::string pointer = chosen();
  refusal_->clear();
  const bool is_item = std::count(pointer.begin(), pointer.end(), '/') > 1;
  duplicate_->setEnabled(is_item);
  remove_->setEnabled(is_item);
  if (!pointer.empty()) form_->setObject(pointer, groups_of(pointer));
}

void PlanDataDialog::duplicate() {
  std::string made;
  const auto refusal =
      document_.edit(tr("Duplicate"), {}, [&](Plan& plan) { made = duplicate_item(plan, chosen()); });
  if (refusal) return refusal_->setText(refusal->text);
  for (QTreeWidgetItem* item : tree_->findItems(QStringLiteral("*"), Qt::MatchWildcard | Qt::MatchRecursive))
    if (item->data(0, Qt::UserRole).toString().toStdString() == made) tree_->setCurrentItem(item);
  form_->focusField("id");
}

void PlanDataDialog::remove() {
  const auto refusal = document_.edit(tr("Remove"), {}, [&](Plan& plan) { remove_item(plan, chosen()); });
  if (refusal) refusal_->setText(tr("It can't go: %1").arg(refusal->text));
}

}  // namespace seamtakt::desk
