#pragma once

#include "pages/page.hpp"

class QComboBox;
class QLabel;
class QPushButton;

namespace seamtakt::desk {

class FieldForm;
class GridView;
class ScheduleModel;
class ValueModel;

/// Schedules: the table, the form of one, its difference to another, and where it is used.
class SchedulesPage : public Page {
  Q_OBJECT

 public:
  explicit SchedulesPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  bool goTo(const QString& address, const QString& key) override;
  GridView& table() { return *table_; }
  FieldForm& form() { return *form_; }
  GridView& difference() { return *difference_table_; }
  /// Offers the schedules of another plan file to compare with, the one of the same id first.
  void compareWith(const QString& path);
  /// Ids of the chosen schedules, those of all rows that the selection touches.
  QStringList chosen() const;

 signals:
  void sheetsAsked(const QStringList& schedules);

 public slots:
  void addSchedule();
  /// A copy with the next revision's number as a draft; the present one stays in force.
  void reviseSchedule();
  void removeSchedule();
  /// Asks whether a reviewed or approved schedule shall be a draft again.
  void withdrawApproval();

 private:
  QWidget* makeWhat();
  QWidget* makeWhy();
  void makeTools();
  void refresh();
  void showSchedule();
  void showLock();
  void showDifference();
  void showUses();
  /// The schedule that the chosen one is compared with; nullptr where there is none.
  const Schedule* compared() const;
  void chooseSameInOther();
  void append(Schedule schedule, const QString& what);

  ScheduleModel* model_;
  ValueModel *difference_, *uses_;
  GridView *table_, *difference_table_, *uses_table_;
  FieldForm* form_;
  QComboBox* other_;
  PlanPtr other_plan_;
  QString other_name_;
  QLabel *uses_title_, *lock_note_;
  QPushButton* withdraw_;
};

}  // namespace seamtakt::desk
