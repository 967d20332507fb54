#pragma once

#include <QObject>
#include <QString>

#include "base/units/unit_system.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/fields/field.hpp"

namespace seamtakt::desk {

/// How numbers are shown and typed: files and results stay in their own unit, the view may be US. The whole
/// desk shares one.
class UnitView : public QObject {
  Q_OBJECT

 public:
  static UnitView& shared();

  UnitSystem system() const { return system_; }
  void setSystem(UnitSystem system);
  /// Whether the decimal sign of the view's language is a comma. A dot is taken in every language.
  bool hasDecimalComma() const { return has_decimal_comma_; }
  void setDecimalComma(bool comma) { has_decimal_comma_ = comma; }

  /// The unit in which values of `unit` are shown; `unit` itself where the view has no other.
  const Unit& shown(const Unit& unit) const;
  /// Name of the unit in which values given in `unit` are shown, as in a column head.
  QString unitText(const char* unit) const;
  /// The unit's name as people read it: superscripts, degree sign.
  static QString readable(const char* unit);

  /// A number of the program, with a point, with the decimal sign of the view's language.
  QString decimal(QString number) const;
  /// A number without unit, rounded to so many significant digits.
  QString rounded(double value, int digits) const;
  /// "253 to 309".
  QString rangeText(const QString& lower, const QString& upper) const;
  /// A number given in `unit` with so many significant digits, without the unit.
  QString numberText(double value, const char* unit, int digits) const;
  /// The same with its unit.
  QString quantityText(double value, const char* unit, int digits) const;
  QString columnText(const ColumnValue& value, const char* unit, int digits) const;

  /// A field's text (numbers in the field's unit) in the view's unit, and back. Typed numbers may carry any
  /// unit that fits. InputError where one doesn't.
  QString fieldShown(const std::string& text, const FieldInfo& field) const;
  std::string fieldTyped(const QString& text, const FieldInfo& field) const;

  double toShown(double value, const char* unit) const;
  double fromShown(double value, const char* unit) const;

 signals:
  void changed();

 private:
  std::string inShownUnit(const std::string& text, const FieldInfo& field) const;

  UnitSystem system_ = UnitSystem::si;
  bool has_decimal_comma_ = false;
};

}  // namespace seamtakt::desk
