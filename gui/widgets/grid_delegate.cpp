#include "widgets/grid_delegate.hpp"

#include <QComboBox>
#include <QHeaderView>
#include <QPainter>
#include <QTableView>

#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

const FieldInfo* field_of(const QModelIndex& index) {
  return reinterpret_cast<const FieldInfo*>(index.data(FieldRole).value<quintptr>());
}

std::optional<Severity> severity_of(const QModelIndex& index, int role = SeverityRole) {
  const QVariant severity = index.data(role);
  return severity.isValid() ? std::optional(static_cast<Severity>(severity.toInt())) : std::nullopt;
}

/// The column beside a cell as it is seen; invalid at the table's end.
QModelIndex column_beside(const QTableView& table, const QModelIndex& index, int step) {
  const QHeaderView& header = *table.horizontalHeader();
  int visual = header.visualIndex(index.column()) + step;
  while (visual >= 0 && visual < header.count() && header.isSectionHidden(header.logicalIndex(visual)))
    visual += step;
  if (visual < 0 || visual >= header.count()) return {};
  return index.sibling(index.row(), header.logicalIndex(visual));
}

/// The edge of what is selected.
void draw_outline(QPainter& painter, const QTableView& table, const QRect& rect, const QModelIndex& index) {
  const QItemSelectionModel& selection = *table.selectionModel();
  if (!selection.isSelected(index)) return;
  const auto is_edge = [&](const QModelIndex& other) {
    return !other.isValid() || !selection.isSelected(other);
  };
  painter.setPen(QPen(Palette::current().accent, 1));
  if (is_edge(index.sibling(index.row() - 1, index.column())))
    painter.drawLine(rect.topLeft(), rect.topRight());
  if (is_edge(index.sibling(index.row() + 1, index.column())))
    painter.drawLine(rect.bottomLeft(), rect.bottomRight());
  if (is_edge(column_beside(table, index, -1))) painter.drawLine(rect.topLeft(), rect.bottomLeft());
  if (is_edge(column_beside(table, index, 1))) painter.drawLine(rect.topRight(), rect.bottomRight());
}

}  // namespace

QString GridDelegate::aligned(const QString& number, int fraction_digits) {
  constexpr QChar digit_wide(0x2007), sign_wide(0x2008);
  const auto own = fraction_digits_of(number);
  if (fraction_digits <= 0 || !own) return number;
  QString text = number;
  if (*own == 0) text += sign_wide;
  return text + QString(std::max(0, fraction_digits - *own), digit_wide);
}

void GridDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
  QStyledItemDelegate::initStyleOption(option, index);
  option->text = aligned(option->text, index.data(FractionRole).toInt());
}

void GridDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const auto* table = qobject_cast<const QTableView*>(option.widget);
  const bool is_current =
      table && table->currentIndex().isValid() && table->currentIndex().row() == index.row();
  if (is_current) painter->fillRect(option.rect, Palette::current().selection);
  paintCell(painter, option, index);
  if (!table) return;
  painter->save();
  if (is_current && !column_beside(*table, index, -1).isValid())
    painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                      Palette::current().accent);
  draw_outline(*painter, *table, option.rect.adjusted(0, 0, -1, -1), index);
  painter->restore();
}

void GridDelegate::paintCell(QPainter* painter, const QStyleOptionViewItem& option,
                             const QModelIndex& index) const {
  const QString key = index.data(KeyRole).toString();
  if (key != "mark" && key != "severity") return QStyledItemDelegate::paint(painter, option, index);
  QStyleOptionViewItem shifted = option;
  initStyleOption(&shifted, index);
  // A finding of another page is a second mark; the cell's tip and Explain have its words.
  const std::optional<Severity> beyond = severity_of(index, BeyondRole);
  const QString word = shifted.text.section(QStringLiteral("; "), 0, 0);
  shifted.text.clear();
  option.widget->style()->drawControl(QStyle::CE_ItemViewItem, &shifted, painter, option.widget);
  if (word.isEmpty()) return;
  const QRect box(option.rect.left() + 8, option.rect.center().y() - 6, 13, 13);
  const std::optional<Severity> own = severity_of(index);
  const bool is_partly_judged = !own && index.data(PartlyJudgedRole).toBool();
  if (is_partly_judged)
    draw_partly_mark(*painter, box);
  else
    draw_mark(*painter, box, own);
  painter->setPen(is_partly_judged ? Palette::current().quiet : Palette::current().of(own));
  painter->drawText(option.rect.adjusted(27, 0, -2, 0), Qt::AlignVCenter | Qt::AlignLeft, word);
  if (!beyond) return;
  const int after = box.right() + 6 + painter->fontMetrics().horizontalAdvance(word) + 8;
  draw_mark(*painter, box.translated(after - box.left(), 0), beyond);
}

QWidget* GridDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
  const FieldInfo* field = field_of(index);
  if (!field) return nullptr;
  if (field->kind == FieldKind::choice) {
    auto* choice = new QComboBox(parent);
    choice->setAccessibleName(core_label(field->label));
    if (!field->required) choice->addItem(QStringLiteral("–"), QString());
    for (std::string_view item : field->choices)
      choice->addItem(core_text(item), QString::fromUtf8(item.data(), static_cast<qsizetype>(item.size())));
    return choice;
  }
  auto* line = new QuantityEdit(parent);
  line->setField(field);
  return line;
}

void GridDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  const QString text = index.data(Qt::EditRole).toString();
  if (auto* choice = qobject_cast<QComboBox*>(editor))
    choice->setCurrentIndex(std::max(0, choice->findData(text)));
  // An evaluation that ends meanwhile changes the cell; the text being typed is kept.
  if (auto* line = qobject_cast<QuantityEdit*>(editor); line && !line->isModified()) line->setText(text);
}

void GridDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
  if (auto* choice = qobject_cast<QComboBox*>(editor)) model->setData(index, choice->currentData());
  if (auto* line = qobject_cast<QuantityEdit*>(editor)) model->setData(index, line->text());
}

}  // namespace seamtakt::desk
