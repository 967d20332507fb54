#pragma once

#include <QAbstractTableModel>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "plan/fields/field.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

class Document;

/// What a table's cell says beside its text.
enum GridRole {
  SortRole = Qt::UserRole + 1,  ///< the number (or text) that rows are sorted by
  AddressRole,                  ///< QString: pointer of the row's object
  KeyRole,                      ///< QString: key of the field or derived value
  PlaceRole,                    ///< QString: where `explain` finds the derived value; empty for a field
  SeverityRole,                 ///< int of the worst finding of the row; absent where there is none
  FieldRole,                    ///< quintptr of the FieldInfo of an editable cell
  BeyondRole,                   ///< int of a worse finding on the row that another page lists; absent without
  FractionRole,                 ///< int: digits after the decimal sign that the column's numbers have
  PartlyJudgedRole              ///< bool: no finding doesn't mean that the row is in order
};

/// A column of a table: a field that a person drafts, or a value derived from it.
struct GridColumn {
  std::string key;
  QString label;
  const char* unit = "";
  QString help;
  bool is_number = false;
  bool is_derived = false;
  const FieldInfo* field = nullptr;  ///< of an editable column
};

/// A table of rows that all have the same columns. Derived classes supply the content of a cell; this one
/// converts it to what views ask for.
class GridModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  /// `edited`: the plan whose fields are in editable cells; nullptr: nothing can be edited.
  explicit GridModel(QObject* parent = nullptr, Document* edited = nullptr);

  const std::vector<GridColumn>& columns() const { return columns_; }
  int columnNamed(std::string_view key) const;

  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  /// Heading with its unit: "Leg, mm".
  QString headingText(int column) const;

  /// The most digits after the decimal sign among a column's numbers (of its first rows).
  int fractionDigits(int column) const;

  /// The plan whose fields are in editable cells; nullptr: nothing can be edited.
  Document* edited() const { return edited_; }
  /// Whether the column has the ids of its rows' objects.
  bool isId(int column) const {
    const GridColumn& about = columns_[static_cast<std::size_t>(column)];
    return about.field && about.key == "id";
  }
  /// Pointer of the row's object.
  QString addressOf(int row) const { return rowAddress(row); }
  /// Adds an object like the last row's to a plan; its pointer. Empty where the table takes no more rows.
  virtual std::string appendRow(Plan&) const { return {}; }

 signals:
  /// A typed value was refused: where and why.
  void refused(const QModelIndex& index, const QString& reason);

 protected:
  void setColumns(std::vector<GridColumn> columns) { columns_ = std::move(columns); }
  void unitsChanged();

  virtual QString cellText(int row, int column) const = 0;
  /// The number of a cell; nothing for text.
  virtual std::optional<double> cellNumber(int, int) const { return std::nullopt; }
  virtual QString cellTip(int row, int column) const;
  virtual QString rowAddress(int) const { return {}; }
  virtual QString cellPlace(int, int) const { return {}; }
  /// The plan whose values are explained in tooltips; nullptr: none.
  virtual const Plan* plan() const { return nullptr; }
  virtual std::optional<Severity> rowSeverity(int) const { return std::nullopt; }
  virtual std::optional<Severity> rowBeyond(int) const { return std::nullopt; }
  virtual bool rowPartlyJudged(int) const { return false; }

 private:
  std::vector<GridColumn> columns_;
  Document* edited_;
  mutable std::vector<int> fractions_;  ///< by column; -1: not counted yet
};

/// Digits after the decimal sign of a text that is one number and nothing else; nothing for other texts.
std::optional<int> fraction_digits_of(const QString& text);

/// "fail", "warn", "note" or "ok" in the user's language.
QString severity_word(std::optional<Severity> severity);

/// A label of the core's tables in the user's language, first letter upper case.
QString core_label(const char* text);
/// A help text or choice of the core's tables in the user's language, as it is.
QString core_text(std::string_view text);

}  // namespace seamtakt::desk
