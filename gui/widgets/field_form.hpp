#pragma once

#include <QWidget>
#include <string>
#include <vector>

#include "document/document.hpp"

class QGridLayout;
class QLabel;

namespace seamtakt::desk {

class FieldCell;

/// Fields of one object (and of objects within it) under one heading.
struct FieldGroup {
  QString title;
  std::string nested;             ///< key of the nested object; empty: the object itself
  std::vector<std::string> keys;  ///< empty: all plain fields of it
};

/// A form made from the plan's field tables: a label above each field, the reason below where it refuses.
/// Fields flow into as many columns as there is room for.
class FieldForm : public QWidget {
  Q_OBJECT

 public:
  explicit FieldForm(Document& document, QWidget* parent = nullptr);

  /// The object that is edited ("/schedules/2"); empty: none.
  void setObject(const std::string& pointer, const std::vector<FieldGroup>& groups);
  const std::string& pointer() const { return pointer_; }
  /// Puts the cursor into the field; false where the form hasn't got it.
  bool focusField(const QString& key);
  /// The same of the id of something that was just made: it may be typed until the field is left.
  bool nameNew();
  /// The widget that edits a field ("limits.heat_input_kJ_mm" or "leg_mm"); nullptr where there is none.
  QWidget* editorOf(const QString& key) const;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  FieldCell* cellOf(const QString& key) const;
  void rebuild();
  void refresh();
  void arrange();
  void addGroup(const FieldGroup& group);

  Document& document_;
  std::string pointer_;
  std::vector<FieldGroup> groups_;
  struct Section {
    QWidget* heading = nullptr;
    std::string nested;
    std::vector<FieldCell*> cells;
  };
  std::vector<Section> sections_;
  std::string present_;  ///< which nested objects are there: a change rebuilds the form
  QGridLayout* grid_;
  int columns_ = 0;
};

}  // namespace seamtakt::desk
