#include "widgets/field_form.hpp"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QResizeEvent>

#include "document/plan_address.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "widgets/field_cell.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr int cell_width_px = 148;

bool is_nested(const FieldInfo& field) {
  return field.kind == FieldKind::object || field.kind == FieldKind::object_list;
}

const FieldTable* table_at(const Plan& plan, const std::string& pointer) {
  const auto object = object_at(plan, pointer);
  return object ? &object->table() : nullptr;
}

}  // namespace

FieldForm::FieldForm(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  grid_ = new QGridLayout(this);
  grid_->setContentsMargins(unit_px, 0, unit_px, unit_px);
  grid_->setHorizontalSpacing(unit_px * 2);
  grid_->setVerticalSpacing(6);
  connect(&document_, &Document::planChanged, this, &FieldForm::refresh);
  connect(&UnitView::shared(), &UnitView::changed, this, &FieldForm::refresh);
}

void FieldForm::setObject(const std::string& pointer, const std::vector<FieldGroup>& groups) {
  if (pointer == pointer_ && !sections_.empty()) return;
  document_.endTyping();
  pointer_ = pointer;
  groups_ = groups;
  rebuild();
}

void FieldForm::rebuild() {
  for (const Section& section : sections_) {
    section.heading->hide();
    section.heading->deleteLater();
    for (FieldCell* cell : section.cells) {
      cell->hide();
      cell->deleteLater();
    }
  }
  sections_.clear();
  present_.clear();
  if (table_at(*document_.plan(), pointer_))
    for (const FieldGroup& group : groups_) addGroup(group);
  columns_ = 0;
  arrange();
}

void FieldForm::addGroup(const FieldGroup& group) {
  Section section;
  section.nested = group.nested;
  const bool here = group.nested.empty() || has_nested(*document_.plan(), pointer_, group.nested);
  present_ += here ? '1' : '0';
  if (group.nested.empty()) {
    auto* heading = new QLabel(group.title, this);
    heading->setProperty("role", "section");
    section.heading = heading;
  } else {
    auto* heading = new QCheckBox(group.title, this);
    heading->setChecked(here);
    heading->setAccessibleName(group.title);
    heading->setStyleSheet("font-weight: 600; padding-top: 8px;");
    connect(heading, &QCheckBox::clicked, this,
            [this, nested = group.nested, title = group.title, heading](bool on) {
              const QString what = on ? tr("Add %1").arg(title) : tr("Remove %1").arg(title);
              const auto refusal =
                  document_.edit(what, {}, [&](Plan& plan) { set_nested(plan, pointer_, nested, on); });
              if (refusal) {
                heading->setChecked(!on);
                heading->setToolTip(refusal->text);
              }
            });
    section.heading = heading;
  }
  section.heading->show();
  const std::string pointer = group.nested.empty() ? pointer_ : pointer_ + "/" + group.nested;
  if (const FieldTable* table = here ? table_at(*document_.plan(), pointer) : nullptr)
    for (const FieldInfo& field : table->fields) {
      const bool wanted =
          group.keys.empty() ? !is_nested(field)
                             : std::find(group.keys.begin(), group.keys.end(), field.key) != group.keys.end();
      if (!wanted) continue;
      auto* cell = new FieldCell(document_, pointer, field, this);
      cell->show();
      section.cells.push_back(cell);
    }
  sections_.push_back(std::move(section));
}

void FieldForm::refresh() {
  std::string present;
  const bool exists = table_at(*document_.plan(), pointer_) != nullptr;
  for (const FieldGroup& group : groups_)
    present +=
        exists && (group.nested.empty() || has_nested(*document_.plan(), pointer_, group.nested)) ? '1' : '0';
  if (!exists || present != present_) return rebuild();
  for (const Section& section : sections_)
    for (FieldCell* cell : section.cells) cell->refresh();
}

void FieldForm::arrange() {
  const int columns = std::max(1, (width() - unit_px) / (cell_width_px + unit_px * 2));
  if (columns == columns_) return;
  columns_ = columns;
  while (QLayoutItem* item = grid_->takeAt(0)) delete item;
  for (int row = 0; row < grid_->rowCount(); ++row) grid_->setRowStretch(row, 0);
  for (int column = 0; column < grid_->columnCount(); ++column) grid_->setColumnStretch(column, 0);
  int row = 0;
  for (const Section& section : sections_) {
    grid_->addWidget(section.heading, row++, 0, 1, columns);
    int column = 0;
    for (FieldCell* cell : section.cells) {
      const FieldKind kind = cell->field().kind;
      const bool wide = kind == FieldKind::path || kind == FieldKind::number_pairs ||
                        kind == FieldKind::text_pairs || kind == FieldKind::composition;
      const int span = wide ? columns : 1;
      if (column + span > columns) {
        ++row;
        column = 0;
      }
      grid_->addWidget(cell, row, column, 1, span);
      column += span;
    }
    ++row;
  }
  for (int column = 0; column < columns; ++column) grid_->setColumnStretch(column, 1);
  grid_->setRowStretch(row, 1);
}

void FieldForm::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  arrange();
}

FieldCell* FieldForm::cellOf(const QString& key) const {
  for (const Section& section : sections_)
    for (FieldCell* cell : section.cells) {
      const std::string name = section.nested.empty() ? std::string(cell->field().key)
                                                      : section.nested + "." + std::string(cell->field().key);
      if (name == key.toStdString()) return cell;
    }
  return nullptr;
}

QWidget* FieldForm::editorOf(const QString& key) const {
  const FieldCell* cell = cellOf(key);
  return cell ? cell->editor() : nullptr;
}

bool FieldForm::focusField(const QString& key) {
  QWidget* editor = editorOf(key);
  if (!editor) return false;
  editor->setFocus(Qt::ShortcutFocusReason);
  return true;
}

bool FieldForm::nameNew() {
  FieldCell* cell = cellOf(QStringLiteral("id"));
  if (!cell) return false;
  cell->openId();
  return true;
}

}  // namespace seamtakt::desk
