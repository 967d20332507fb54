#include "widgets/plan_data_dialog.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>
#include <QVBoxLayout>
#include <set>

#include "document/plan_address.hpp"
#include "document/plan_items.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "widgets/field_form.hpp"
#include "widgets/plan_data_tree.hpp"
#include "widgets/rename_dialog.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

enum NodeRole { PointerRole = Qt::UserRole, KindRole, ItemRole };

using NodeKind = PlanNode::Kind;

std::string pointer_of(const QTreeWidgetItem* item) {
  return item ? item->data(0, PointerRole).toString().toStdString() : std::string();
}

NodeKind kind_of(const QTreeWidgetItem* item) {
  return static_cast<NodeKind>(item->data(0, KindRole).toInt());
}

/// The list that an item is in, or the object that a key is of.
std::string above(const std::string& pointer) {
  return pointer.substr(0, pointer.rfind('/'));
}

/// An object's own fields, and below them those of the small objects in it.
std::vector<FieldGroup> groups_of(const Plan& plan, const std::string& pointer) {
  std::vector<FieldGroup> groups;
  const auto object = object_at(plan, pointer);
  if (!object) return groups;
  const auto keys = shown_keys(object->table());
  if (!keys.empty()) groups.push_back({PlanDataDialog::tr("Fields"), {}, keys});
  if (pointer.empty()) return groups;
  for (const FieldInfo& field : object->table().fields)
    if (field.kind == FieldKind::object && !is_compound(field.nested()))
      groups.push_back({core_label(field.label), std::string(field.key), {}});
  return groups;
}

void append_shown(const PlanNode& node, std::string& shown) {
  shown += node.pointer + "=" + node.text.toStdString() + ";" + std::to_string(static_cast<int>(node.kind));
  for (const PlanNode& below : node.below) append_shown(below, shown);
}

constexpr int most_expanded = 12;

void add_nodes(QTreeWidgetItem* parent, const PlanNode& node, const std::set<std::string>& expanded,
               bool is_first) {
  for (const PlanNode& below : node.below) {
    auto* item = new QTreeWidgetItem(parent);
    const bool counts = below.kind == NodeKind::list && !below.below.empty();
    item->setText(
        0, counts ? PlanDataDialog::tr("%1 (%2)").arg(below.text).arg(below.below.size()) : below.text);
    item->setData(0, PointerRole, QString::fromStdString(below.pointer));
    item->setData(0, KindRole, static_cast<int>(below.kind));
    item->setData(0, ItemRole, below.is_item);
    if (below.kind == NodeKind::absent || (below.kind == NodeKind::list && below.below.empty()))
      item->setForeground(0, Palette::current().quiet);
    add_nodes(item, below, expanded, is_first);
    const bool opens = is_first && node.pointer.empty() && below.below.size() <= most_expanded;
    item->setExpanded(opens || expanded.contains(below.pointer));
  }
}

}  // namespace

PlanDataDialog::PlanDataDialog(Document& document, QWidget* parent) : QDialog(parent), document_(document) {
  setWindowTitle(tr("Plan data"));
  setAccessibleName(tr("Plan data"));
  resize(960, 600);
  auto* row = new QHBoxLayout(this);
  auto* left = new QVBoxLayout;
  makeTree();
  makeButtons();
  refusal_ = new QLabel(this);
  refusal_->setProperty("role", "refusal");
  refusal_->setWordWrap(true);
  refusal_->setTextFormat(Qt::PlainText);
  left->addWidget(tree_, 1);
  left->addWidget(refusal_);
  auto* buttons = new QHBoxLayout;
  for (QPushButton* button : {add_, duplicate_, remove_, rename_}) buttons->addWidget(button);
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
  connect(&document_, &Document::planChanged, this, [this] {
    if (isVisible()) fill();
  });
  fill();
}

void PlanDataDialog::makeTree() {
  tree_ = new QTreeWidget(this);
  tree_->setHeaderHidden(true);
  tree_->setAccessibleName(tr("Plan data"));
  tree_->setMinimumWidth(300);
  connect(tree_, &QTreeWidget::currentItemChanged, this, &PlanDataDialog::showChosen);
}

void PlanDataDialog::makeButtons() {
  const auto button = [this](const QString& text, auto slot) {
    auto* made = new QPushButton(text, this);
    made->setAccessibleName(text);
    // Enter ends an entry of the form; it must not press the first button of the dialog as well.
    made->setAutoDefault(false);
    connect(made, &QPushButton::clicked, this, slot);
    return made;
  };
  add_ = button(tr("Add"), &PlanDataDialog::add);
  duplicate_ = button(tr("Duplicate"), &PlanDataDialog::duplicate);
  remove_ = button(tr("Remove"), &PlanDataDialog::remove);
  rename_ = button(tr("Rename …"), &PlanDataDialog::rename);
}

void PlanDataDialog::showEvent(QShowEvent* event) {
  QDialog::showEvent(event);
  fill();
}

void PlanDataDialog::fill() {
  const PlanNode root = plan_tree(*document_.plan());
  std::string shown;
  append_shown(root, shown);
  if (shown == shown_) return;
  const bool is_first = shown_.empty();
  const QTreeWidgetItem* current = tree_->currentItem();
  const std::string before = current ? pointer_of(current) : "/base_metals/0";
  shown_ = shown;
  std::set<std::string> expanded;
  for (QTreeWidgetItemIterator at(tree_); *at; ++at)
    if ((*at)->isExpanded()) expanded.insert(pointer_of(*at));
  const QSignalBlocker quiet(tree_);
  tree_->clear();
  auto* plan = new QTreeWidgetItem(tree_);
  plan->setText(0, tr("The plan"));
  plan->setData(0, PointerRole, QString());
  plan->setData(0, KindRole, static_cast<int>(NodeKind::object));
  add_nodes(tree_->invisibleRootItem(), root, expanded, is_first);
  QTreeWidgetItem* again = itemAt(before);
  // Of something that was removed, its list.
  if (!again) again = itemAt(above(before));
  tree_->setCurrentItem(again ? again : plan);
  showChosen();
}

QTreeWidgetItem* PlanDataDialog::itemAt(const std::string& pointer) const {
  for (QTreeWidgetItemIterator at(tree_); *at; ++at)
    if (pointer_of(*at) == pointer) return *at;
  return nullptr;
}

bool PlanDataDialog::choose(const std::string& pointer) {
  QTreeWidgetItem* item = itemAt(pointer);
  if (!item) return false;
  tree_->setCurrentItem(item);
  tree_->scrollToItem(item);
  return true;
}

void PlanDataDialog::showChosen() {
  const QTreeWidgetItem* item = tree_->currentItem();
  refusal_->clear();
  if (!item) return;
  const std::string pointer = pointer_of(item);
  const bool is_item = item->data(0, ItemRole).toBool();
  const bool is_there = kind_of(item) == NodeKind::object;
  const auto object = object_at(*document_.plan(), pointer);
  add_->setEnabled(is_item || !is_there);
  duplicate_->setEnabled(is_item);
  remove_->setEnabled(is_there && !pointer.empty());
  rename_->setEnabled(is_there && object && object->table().id_field != nullptr);
  form_->setVisible(is_there);
  if (is_there) form_->setObject(pointer, groups_of(*document_.plan(), pointer));
}

void PlanDataDialog::addBy(const QString& what, const std::function<std::string(Plan&)>& make) {
  document_.endTyping();
  std::string made;
  const auto refusal = document_.edit(what, {}, [&](Plan& plan) { made = make(plan); });
  if (refusal) return refusal_->setText(tr("It can't be added: %1").arg(refusal->text));
  if (!choose(made)) return;
  if (!form_->nameNew()) tree_->setFocus(Qt::OtherFocusReason);
}

void PlanDataDialog::add() {
  const QTreeWidgetItem* item = tree_->currentItem();
  if (!item) return;
  const std::string pointer = pointer_of(item);
  if (kind_of(item) == NodeKind::absent) {
    const auto blank = [pointer](Plan& plan) {
      set_nested(plan, above(pointer), std::string_view(pointer).substr(above(pointer).size() + 1), true);
      return pointer;
    };
    if (pointer != "/cell") return addBy(tr("Add"), blank);
    auto* ways = new QMenu(this);
    ways->setAttribute(Qt::WA_DeleteOnClose);
    ways->addAction(tr("Two robots, a positioner, two stations"), this, [this] {
      addBy(tr("Add a starter cell"), [](Plan& plan) {
        plan.cell = starter_cell(plan);
        return std::string("/cell");
      });
    });
    ways->addAction(tr("Blank"), this, [this, blank] { addBy(tr("Add"), blank); });
    return ways->popup(add_->mapToGlobal(QPoint(0, add_->height())));
  }
  const std::string list = item->data(0, ItemRole).toBool() ? above(pointer) : pointer;
  const auto blank = [list](Plan& plan) { return add_item(plan, list); };
  const auto rows = catalogue_of(list);
  if (rows.empty()) return addBy(tr("Add"), blank);
  auto* ways = new QMenu(this);
  ways->setAttribute(Qt::WA_DeleteOnClose);
  ways->addAction(tr("Blank"), this, [this, blank] { addBy(tr("Add"), blank); });
  ways->addSeparator();
  for (const std::string& row : rows)
    ways->addAction(QString::fromStdString(row), this, [this, list, row] {
      addBy(tr("Add"), [list, row](Plan& plan) { return add_from_catalogue(plan, list, row); });
    });
  ways->popup(add_->mapToGlobal(QPoint(0, add_->height())));
}

void PlanDataDialog::duplicate() {
  const std::string pointer = pointer_of(tree_->currentItem());
  addBy(tr("Duplicate"), [pointer](Plan& plan) { return duplicate_item(plan, pointer); });
}

void PlanDataDialog::remove() {
  const QTreeWidgetItem* item = tree_->currentItem();
  if (!item) return;
  const std::string pointer = pointer_of(item);
  const bool is_item = item->data(0, ItemRole).toBool();
  document_.endTyping();
  const auto refusal = document_.edit(tr("Remove"), {}, [&](Plan& plan) {
    if (is_item)
      remove_item(plan, pointer);
    else
      set_nested(plan, above(pointer), std::string_view(pointer).substr(above(pointer).size() + 1), false);
  });
  if (refusal) refusal_->setText(tr("It can't go: %1").arg(refusal->text));
}

void PlanDataDialog::rename() {
  if (const QTreeWidgetItem* item = tree_->currentItem())
    RenameDialog::ask(document_, pointer_of(item), this);
}

}  // namespace seamtakt::desk
