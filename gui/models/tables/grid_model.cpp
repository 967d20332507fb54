#include "models/tables/grid_model.hpp"

#include "document/document.hpp"
#include "document/shown_text.hpp"
#include "models/tables/typed_edit.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

QString severity_word(std::optional<Severity> severity) {
  if (!severity) return shown_word("ok"_word.english());
  switch (*severity) {
    case Severity::fail:
      return shown_word("fail"_word.english());
    case Severity::warn:
      return shown_word("warning"_word.english());
    case Severity::note:
      return shown_word("note"_word.english());
  }
  return {};
}

QString core_text(std::string_view text) {
  return shown_word(text);
}

QString core_label(const char* text) {
  QString label = shown_word(text);
  // "t8/5" is a symbol and stays as it is.
  if (label.size() > 1 && !label[1].isDigit()) label[0] = label[0].toUpper();
  return label;
}

std::optional<int> fraction_digits_of(const QString& text) {
  qsizetype sign = -1, digits = 0;
  for (qsizetype i = 0; i < text.size(); ++i) {
    const QChar letter = text[i];
    if (letter.isDigit()) {
      ++digits;
    } else if ((letter == '.' || letter == ',') && sign < 0 && digits > 0) {
      sign = i;
    } else if (i > 0 || (letter != '-' && letter != QChar(0x2212))) {
      return std::nullopt;
    }
  }
  if (digits == 0 || sign == text.size() - 1) return std::nullopt;
  return sign < 0 ? 0 : static_cast<int>(text.size() - sign - 1);
}

GridModel::GridModel(QObject* parent, Document* edited) : QAbstractTableModel(parent), edited_(edited) {
  const auto forget = [this] { fractions_.clear(); };
  connect(this, &QAbstractItemModel::dataChanged, this, forget);
  connect(this, &QAbstractItemModel::modelReset, this, forget);
  connect(this, &QAbstractItemModel::headerDataChanged, this, forget);
}

int GridModel::fractionDigits(int column) const {
  constexpr int most_rows = 200;
  if (!columns_[static_cast<std::size_t>(column)].is_number) return 0;
  fractions_.resize(columns_.size(), -1);
  int& digits = fractions_[static_cast<std::size_t>(column)];
  if (digits >= 0) return digits;
  digits = 0;
  for (int row = 0; row < std::min(rowCount(), most_rows); ++row) {
    digits = std::max(digits, fraction_digits_of(cellText(row, column)).value_or(0));
  }
  return digits;
}

int GridModel::columnNamed(std::string_view key) const {
  for (std::size_t column = 0; column < columns_.size(); ++column)
    if (columns_[column].key == key) return static_cast<int>(column);
  return -1;
}

int GridModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

QString GridModel::headingText(int column) const {
  const GridColumn& about = columns_[static_cast<std::size_t>(column)];
  const QString unit = UnitView::shared().unitText(about.unit);
  return unit.isEmpty() ? about.label : about.label + QStringLiteral(", ") + unit;
}

QString GridModel::cellTip(int row, int column) const {
  const GridColumn& about = columns_[static_cast<std::size_t>(column)];
  const QString text = cellText(row, column);
  return about.help.isEmpty() ? text : text + QStringLiteral("\n") + about.help;
}

QVariant GridModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const int row = index.row(), column = index.column();
  const GridColumn& about = columns_[static_cast<std::size_t>(column)];
  switch (role) {
    case Qt::DisplayRole:
      // A choice is shown in the user's language; it is edited, copied and pasted as the file has it.
      if (about.field && about.field->kind == FieldKind::choice)
        return core_text(cellText(row, column).toStdString());
      return cellText(row, column);
    case Qt::EditRole:
      return cellText(row, column);
    case Qt::ToolTipRole: {
      const QString place = plan() ? cellPlace(row, column) : QString();
      const QString explained =
          place.isEmpty() ? QString() : explanation_tip(*plan(), place, QString::fromStdString(about.key));
      return explained.isEmpty() ? cellTip(row, column)
                                 : cellTip(row, column) + QStringLiteral("\n") + explained;
    }
    case Qt::AccessibleTextRole:
      return headingText(column) + QStringLiteral(": ") + cellText(row, column);
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::AlignVCenter | (about.is_number ? Qt::AlignRight : Qt::AlignLeft));
    case SortRole: {
      const auto number = cellNumber(row, column);
      if (number) return *number;
      return cellText(row, column);
    }
    case AddressRole:
      return rowAddress(row);
    case KeyRole:
      return QString::fromStdString(about.key);
    case PlaceRole:
      return cellPlace(row, column);
    case SeverityRole: {
      const auto severity = rowSeverity(row);
      return severity ? QVariant(static_cast<int>(*severity)) : QVariant();
    }
    case BeyondRole: {
      const auto severity = rowBeyond(row);
      return severity ? QVariant(static_cast<int>(*severity)) : QVariant();
    }
    case PartlyJudgedRole:
      return rowPartlyJudged(row);
    case FractionRole:
      return fractionDigits(column);
    case FieldRole:
      return about.field ? QVariant::fromValue(reinterpret_cast<quintptr>(about.field)) : QVariant();
    default:
      return {};
  }
}

QVariant GridModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
  const GridColumn& about = columns_[static_cast<std::size_t>(section)];
  switch (role) {
    case Qt::DisplayRole: {
      const QString unit = UnitView::shared().unitText(about.unit);
      return about.label + QStringLiteral("\n") + unit;
    }
    case Qt::ToolTipRole:
      return about.help;
    case Qt::AccessibleTextRole:
      return headingText(section);
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::AlignBottom | (about.is_number ? Qt::AlignRight : Qt::AlignLeft));
    default:
      return {};
  }
}

Qt::ItemFlags GridModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = QAbstractTableModel::flags(index);
  // An id is changed by a command alone: no stray key renames what others refer to.
  if (index.isValid() && columns_[static_cast<std::size_t>(index.column())].field && !isId(index.column()))
    flags |= Qt::ItemIsEditable;
  return flags;
}

bool GridModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  const GridColumn& about = columns_[static_cast<std::size_t>(index.column())];
  if (role != Qt::EditRole || !about.field || isId(index.column()) || !edited_) return false;
  edited_->endTyping();
  const auto refusal =
      set_typed(*edited_, rowAddress(index.row()).toStdString(), about.key, value.toString());
  if (refusal) emit refused(index, refusal->text);
  return !refusal;
}

void GridModel::unitsChanged() {
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

}  // namespace seamtakt::desk
